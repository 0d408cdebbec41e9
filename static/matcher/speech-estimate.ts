// What is said of repeated readings: what was set aside and why, and how good the rest is.
import type { Quantity } from "./types";
import { both, capital, offBy } from "./speech-words";

/** Names of the lines of an uncertainty budget. */
export const sources = {
  repeat: "repeating the reading",
  tool: "the tool's limit of error",
  step: "the last digit read",
  condition: "the condition of the part",
};

export function why(
  quantity: Quantity,
  used: number,
  uncertainty: number,
  largest: string,
  aside: readonly number[],
): string {
  const good = `${used === 1 ? "One reading" : `Mean of ${used} readings`}, good to about ±${both(uncertainty)}; most of that is ${largest}.`;
  return [
    ...aside.map((off) => `Set aside: ${offBy(off, quantity)} than the others. ${reason(quantity, off)}`),
    good,
  ].join(" ");
}

// Which way a bad reading errs tells what to look for.
function reason(quantity: Quantity, off: number): string {
  if (quantity === "across") {
    return off > 0
      ? "A cap that is not pushed home, dirt or a tilted caliper reads wide."
      : "Jaws that miss the face, or a slip in reading the scale, read narrow.";
  }
  return off > 0
    ? "Dirt, rust or a tilted caliper reads large."
    : "A worn or flat spot, or a slip in reading the scale, reads small.";
}

export function secondSize(quantity: Quantity, text: string): string {
  return quantity === "cap"
    ? `The reading ${text} is far off for dirt. If it is right, this cross has two cap diameters: measure all four caps.`
    : `The reading ${text} is far off for a loose cap. If it is right, it is the other pair of caps: measure it as a second end.`;
}

export function twoDisagree(quantity: Quantity, apart: number): string {
  return quantity === "cap"
    ? `The two cap readings are ${both(apart)} apart. Clean the caps and measure again; if they stay apart, the cross has two cap diameters and each pair is an end of its own.`
    : `The two across readings are ${both(apart)} apart. Push the caps home and take a third; if one is from the other pair of caps, enter it as a second end.`;
}

export function twoGroups(quantity: Quantity, groups: readonly [number, number]): string {
  const where = `${capital(quantity)} readings fall into two groups, near ${both(groups[0])} and near ${both(groups[1])}.`;
  return quantity === "cap"
    ? `${where} A cross with two cap diameters may be a conversion joint: enter each pair of caps as an end of its own.`
    : `${where} If they come from the two pairs of caps, enter each pair as an end of its own; if not, push the caps home and measure again.`;
}

export function spreadTooFar(quantity: Quantity, apart: number): string {
  return `The ${quantity} readings spread over ${both(apart)}, too far to take a mean. ${
    quantity === "cap"
      ? "Clean the caps and measure each across two directions."
      : "Clean the faces, push the caps home and take three readings again."
  }`;
}
