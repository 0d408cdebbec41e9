// Measuring again what a slip names. Nothing is put right by itself: the readings are taken out, can be put back, and
// the person measures.
import type { Measurand, SlipFound } from "../../matcher/types";
import { quantities, type EndState } from "./state";
import { words } from "words:identify";
import { quantityWords } from "words:terms";

/** Takes the readings out that the slip is about and says so. How it is held is looked at, not measured: nothing is
 *  taken out for that. */
export function again(end: EndState, look: SlipFound["look"]): string {
  if (look === "hold") return words.lookAtHold;
  const about: Measurand[] = look === "unit" ? quantities : [look];
  const taken = about.filter((quantity) => end[quantity].length > 0);
  for (const quantity of taken) {
    end.out[quantity] = [...(end.out[quantity] ?? []), ...end[quantity]];
    end[quantity] = [];
  }
  return words.again(taken.map((quantity) => quantityWords[quantity]));
}
