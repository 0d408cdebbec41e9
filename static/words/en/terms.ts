// The words of the trade that several parts use. What pages made by Go call them is in templates/words/en.
import type { Basis, Hold, Measurand, Verdict } from "../../matcher/types";

export const verdictWords: Record<Verdict, string> = {
  identified: "Identified",
  possible: "Possible",
  between: "Between sizes",
  "not-in-chart": "Not in the chart",
  "measure-again": "Measure again",
};

export const basisWords: Record<Basis, string> = {
  published: "published",
  measured: "measured",
  "common-practice": "common practice",
  memory: "memory",
};

export const holdWords: Record<Hold, string> = {
  "outside-clip": "clip outside",
  "inside-clip": "clip inside",
  plate: "bolted plate",
  strap: "strap or U-bolt",
  wing: "bolted wing",
  injected: "injected plastic",
  staked: "staked",
  unknown: "hold not known",
};

export const quantityWords: Record<Measurand, string> = { cap: "cap", across: "across", clip: "clip" };

export function endTitle(n: number): string {
  return n === 0 ? "First end" : "The other end";
}
