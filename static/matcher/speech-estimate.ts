// What is said of repeated readings: what was set aside and why, and how good the rest is.
import type { Quantity, Unit } from "./types";
import type { How } from "./estimate";
import { both, capital, isNothing, offBy, toolWords } from "./speech-words";

/** Names of the lines of an uncertainty budget. */
export const sources = {
  repeat: "repeating the reading",
  tool: "the tool's limit of error",
  step: "the last digit read",
  condition: "the condition of the part",
};

/** What became of repeated readings; lengths in mm. */
export interface Became {
  used: number;
  shift: number; // taken off the mean for the condition of the part
  uncertainty: number;
  largest: string; // the largest line of the budget
  aside: readonly number[]; // how far each reading set aside is off the others
  spread?: number; // of readings that spread more than expected
  expected?: number;
}

export function why(quantity: Quantity, how: How, became: Became): string {
  const { lead } = how;
  const mean = became.used === 1 ? "One reading" : `Mean of ${became.used} readings`;
  const right = putRight(quantity, how, became.shift, became.uncertainty).map(
    (p) => ` ${capital(p)}: that is put right.`,
  );
  return [
    ...became.aside.map((off) => `Set aside: ${offBy(off, quantity, lead)} than the others. ${reason(quantity, off)}`),
    `${mean}, good to about ±${both(became.uncertainty, lead)}; most of that is ${became.largest}.${right.join("")}`,
    ...(became.spread === undefined || became.expected === undefined
      ? []
      : [
          `The readings spread over ${both(became.spread, lead)}; with ${toolWords[how.tool]} they should stay within ${both(became.expected, lead)}. ${look[quantity]}`,
        ]),
  ].join(" ");
}

/** "a used cap reads about 0.01 mm (0.0004 in) small"; nothing when that is lost in what is not known. */
export function putRight(quantity: Quantity, how: How, shift: number, uncertainty: number): string[] {
  if (isNothing(shift) || Math.abs(shift) < uncertainty / 10) return [];
  const way = quantity === "cap" ? (shift < 0 ? "small" : "large") : shift < 0 ? "narrow" : "wide";
  const part = `a ${how.condition} ${quantity === "cap" ? "cap" : "joint"}`;
  return [`${part} reads about ${both(Math.abs(shift), how.lead)} ${way}`];
}

const look: Record<Quantity, string> = {
  cap: "Look for dirt, a tilted tool or a cap that is not round.",
  across: "Look for a cap that is not pushed home, dirt or tilted jaws.",
};

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

export function twoDisagree(quantity: Quantity, apart: number, lead: Unit): string {
  return quantity === "cap"
    ? `The two cap readings are ${both(apart, lead)} apart. Clean the caps and measure again; if they stay apart, the cross has two cap diameters and each pair is an end of its own.`
    : `The two across readings are ${both(apart, lead)} apart. Push the caps home and take a third; if one is from the other pair of caps, enter it as a second end.`;
}

export function twoGroups(quantity: Quantity, groups: readonly [number, number], lead: Unit): string {
  const where = `${capital(quantity)} readings fall into two groups, near ${both(groups[0], lead)} and near ${both(groups[1], lead)}.`;
  return quantity === "cap"
    ? `${where} A cross with two cap diameters may be a conversion joint: enter each pair of caps as an end of its own.`
    : `${where} If they come from the two pairs of caps, enter each pair as an end of its own; if not, push the caps home and measure again.`;
}

export function spreadTooFar(quantity: Quantity, apart: number, lead: Unit): string {
  return `The ${quantity} readings spread over ${both(apart, lead)}, too far to take a mean. ${
    quantity === "cap"
      ? "Clean the caps and measure each across two directions."
      : "Clean the faces, push the caps home and take three readings again."
  }`;
}
