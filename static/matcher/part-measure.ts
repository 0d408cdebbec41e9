// From the readings of one column to one value with its uncertainty: the estimate that is
// made of a cap (estimate.ts), for an outside as it is, for an inside the other way round.
import type { Measured, How } from "./estimate";
import { estimate } from "./estimate";
import * as given from "./given-measuring";
import * as gum from "./gum";
import type { Reading } from "./reading";

/** A length as it was measured, mm. */
export interface Length {
  mm: number; // put right for the condition of the part
  standard: number;
  dof: number;
  estimate: Measured["estimate"];
  largest: string; // the largest line of the budget
  trouble: boolean; // the readings cannot be of one length
  doubt: boolean; // a reading that was set aside may be right
  spread: number; // of all readings
}

export function measureOutside(readings: readonly Reading[], how: How): Length {
  return lengthOf(estimate(0, "cap", readings, how, "over-caps"), readings);
}

/** A bore or recess: wear and dirt work the other way, and inside jaws err more (DIN 862). */
export function measureInside(readings: readonly Reading[], how: How): Length {
  const outside = estimate(0, "cap", readings, how, "over-caps");
  const length = lengthOf(outside, readings);
  const jaws = how.tool === "steel-rule" || how.tool === "tape" ? 0 : gum.rectangular(given.grooveReading);
  const standard = length.standard + jaws; // limits add up: the sum, not the root of squares
  return { ...length, mm: outside.mm + 2 * outside.shift, standard, dof: freer(length.dof, length.standard, standard) };
}

/** A distance whose ends wear alike: nothing is put right. */
export function measurePitch(readings: readonly Reading[], how: How): Length {
  const outside = estimate(0, "cap", readings, how, "over-caps");
  return { ...lengthOf(outside, readings), mm: outside.mm + outside.shift };
}

function lengthOf(m: Measured, readings: readonly Reading[]): Length {
  const all = readings.map((r) => r.mm);
  const { budget } = m.estimate;
  return {
    mm: m.mm,
    standard: m.standard,
    dof: m.dof,
    estimate: m.estimate,
    largest: budget.reduce((a, b) => (b.standard > a.standard ? b : a)).source,
    trouble: m.trouble !== undefined,
    doubt: m.doubt !== undefined,
    spread: Math.max(...all) - Math.min(...all),
  };
}

/** Effective degrees of freedom once more that is known for certain has come in (JCGM 100 G.4.1). */
export function freer(dof: number, before: number, after: number): number {
  return dof === Infinity ? dof : dof * (after / before) ** 4;
}

/** The sum or difference of two lengths, or one of them scaled. */
export function combined(parts: readonly { standard: number; dof: number }[]): { standard: number; dof: number } {
  return { standard: gum.combine(parts), dof: gum.welchSatterthwaite(parts) };
}
