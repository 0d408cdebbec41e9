// The next measurement, taken where the verdict is read: one field under the verdict for just the quantity the
// answer asks for next, or a button to the pictures when it asks how the joint is held.
import type { Answer, Estimate } from "../../matcher/types";
import { part } from "./element";
import { readingField, type FieldOptions, type Target } from "./field";
import { hasClips, quantities, type State } from "./state";
import { words } from "words:identify";

/** What the answer asks for next. */
export type Asked = Target | { end: number; quantity: "hold" };

export interface OnwardPart {
  show(answer: Answer | null): void;
}

export interface OnwardOptions extends Pick<FieldOptions, "root" | "complaint" | "changed"> {
  state: () => State;
  look: (end: number) => void; // goes to the pictures of the holds
}

/** What to measure next: what parts the sizes left, then what is missing, then what would settle most. Nothing while
 *  something that was taken has to be put right first. */
function askedNext(answer: Answer, state: State): Asked | null {
  if (answer.complaints.length > 0 || answer.slips.length > 0) return null;
  const apart = answer.tellApart[0];
  if (apart) return { end: apart.end, quantity: apart.measure };
  const places = state.ends.flatMap((own, end) =>
    quantities
      .filter((q) => q === "cap" || own.taken === "joint" || CapspanCore.yokeOf(own.hold ?? "unknown").across !== null)
      .map((quantity) => ({ end, quantity, taken: own[quantity].length })),
  );
  const missing = places.find((p) => p.taken === 0);
  if (missing) return missing;
  const clip = state.ends.findIndex((own) => hasClips(own) && own.clip.length === 0);
  if (clip >= 0) return { end: clip, quantity: "clip" };
  const unheld = state.ends.findIndex((own) => (own.hold ?? "unknown") === "unknown");
  if (unheld >= 0) return { end: unheld, quantity: "hold" };
  if (answer.verdict === "measure-again") return widest(answer.readings);
  return places.find((p) => p.taken === 1) ?? null;
}

function widest(readings: Estimate[]): Target | null {
  const [first] = [...readings].sort((a, b) => b.uncertainty - a.uncertainty);
  return first ? { end: first.end, quantity: first.quantity } : null;
}

export function onwardPart(options: OnwardOptions): OnwardPart {
  const { root, state } = options;
  const title = part(root, "onward-title");
  const look = part(root, "onward-look");
  const add = part(root, "onward-add");
  let target: Target = { end: 0, quantity: "cap" };
  let end = 0;
  const input = readingField({
    ...options,
    name: "onward",
    unit: () => state().unit,
    take: (reading) => state().ends[target.end]?.[target.quantity].push(reading),
  });
  look.addEventListener("click", () => options.look(end));

  return {
    show(answer) {
      const asked = answer && askedNext(answer, state());
      // A field that is being used stays until it is left.
      root.hidden = !asked && !root.contains(document.activeElement);
      if (!asked) return;
      end = asked.end;
      const hold = asked.quantity === "hold";
      look.hidden = !hold;
      add.hidden = hold;
      if (asked.quantity !== "hold") target = asked;
      const label = words.addReading(state(), target);
      title.textContent = hold ? words.onwardHold : label;
      input.setAttribute("aria-label", label);
    },
  };
}
