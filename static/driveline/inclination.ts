// How a shaft or a component lies, from what was measured of it, and the direction it
// points in.
//
// Seen from the driving end, along the flow of power: x ahead, y to the right, z down. So
// a positive side inclination falls towards the driven end (front high, as at most
// engines), and a positive plan inclination runs to the right.
import { answer, check, conflict, refuse } from "./check";
import * as range from "./given-ranges";
import { derived, formula } from "./ground";
import type { Outcome, Ranges } from "./types";
import { directionOf } from "./vector";

/** How a component or shaft lies.
 *
 *  level       `side` was read with a level or inclinometer laid along it: the true
 *              inclination. `plan` is its heading seen from above.
 *  projected   `side` and `plan` were taken from a side view and a plan, or from offsets
 *              over the distance ahead: the two projections. */
export interface Attitude {
  side: number; // rad, falling towards the driven end is positive
  plan: number; // rad, running to the right is positive
  read: "level" | "projected";
}

/** A unit vector in (ahead, right, down). */
export type Direction = readonly [ahead: number, right: number, down: number];

export interface RiseInput {
  rise: number; // m, between the two ends; falling or to the right is positive
  run: number; // m, between the same two ends
  along: "level" | "shaft"; // run measured level (ahead), or along the shaft itself
}

export const inclinationFromRiseRanges: Ranges<RiseInput> = {
  rise: range.rise,
  run: range.run,
  along: { words: ["level", "shaft"] },
};

const riseFormula = formula(
  "inclination-from-rise",
  "arctan(rise/run), run level; arcsin(rise/run), run along the shaft",
  derived,
  "Between two points of the shaft's own axis.",
);

/** An inclination (rad) from rise over run: arctan for a level run, arcsin along the shaft. */
export function inclinationFromRise(input: RiseInput): Outcome<{ angle: number }> {
  const wrong = check(input, inclinationFromRiseRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { rise, run, along } = input;
  if (along === "shaft" && Math.abs(rise) > run) return refuse([conflict("rise", "run", { bound: run, unit: "m" })]);
  return answer({ angle: along === "shaft" ? Math.asin(rise / run) : Math.atan(rise / run) }, [riseFormula]);
}

export const directionRanges: Ranges<Attitude> = {
  side: range.inclination,
  plan: range.plan,
  read: { words: ["level", "projected"] },
};

/** The direction a component points in. */
export function direction(input: Attitude): Outcome<{ direction: Direction }> {
  const wrong = check(input, directionRanges);
  return wrong.length > 0 ? refuse(wrong) : answer({ direction: directionOf(input) }, []);
}
