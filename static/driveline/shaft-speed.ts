// How fast the shaft turns: from the engine through the gears, or from the road through
// the tyre and the axle.
import { answer, check, refuse } from "./check";
import * as range from "./given-ranges";
import { derived, formula, published } from "./ground";
import type { Outcome, Ranges } from "./types";

const engineFormula = formula(
  "shaft-speed-engine",
  "w = w_engine / (gear x transfer)",
  derived,
  "No slip of clutch or converter.",
);
const roadFormula = formula(
  "shaft-speed-road",
  "w = v axle / r; v[km/h] = 0.06 n U / (i_G i_V i_A)",
  published("man-calc"),
  "r is the radius the tyre rolls on under load, U = 2 pi r; a tyre grows at speed and shrinks as it wears.",
);

export interface ShaftSpeedInput {
  engine: number; // greatest engine speed, rad/s
  gear: number; // ratio of the highest gear, engine over gearbox output: 0.75 is an overdrive
  transfer: number; // ratio of the transfer case, 1 without one
}

export const shaftSpeedFromEngineRanges: Ranges<ShaftSpeedInput> = {
  engine: range.speed,
  gear: range.ratio,
  transfer: range.ratio,
};

/** The greatest speed of the shaft behind gearbox and transfer case, rad/s. */
export function shaftSpeedFromEngine(input: ShaftSpeedInput): Outcome<{ speed: number }> {
  const wrong = check(input, shaftSpeedFromEngineRanges);
  if (wrong.length > 0) return refuse(wrong);
  return answer({ speed: behindGears(input) }, [engineFormula]);
}

function behindGears(input: ShaftSpeedInput): number {
  return input.engine / (input.gear * input.transfer);
}

export interface RoadSpeedInput {
  road: number; // m/s
  tyre: number; // rolling radius, m
  axle: number; // ratio of the axle, shaft over wheel
}

export const shaftSpeedFromRoadRanges: Ranges<RoadSpeedInput> = {
  road: range.road,
  tyre: range.tyre,
  axle: range.ratio,
};

/** The speed of the shaft at a road speed, rad/s: v / r times the axle's ratio. */
export function shaftSpeedFromRoad(input: RoadSpeedInput): Outcome<{ speed: number }> {
  const wrong = check(input, shaftSpeedFromRoadRanges);
  if (wrong.length > 0) return refuse(wrong);
  return answer({ speed: (input.road / input.tyre) * input.axle }, [roadFormula]);
}

export interface RoadFromEngineInput extends ShaftSpeedInput {
  tyre: number; // rolling radius, m
  axle: number; // ratio of the axle
}

export const roadSpeedFromEngineRanges: Ranges<RoadFromEngineInput> = {
  ...shaftSpeedFromEngineRanges,
  tyre: range.tyre,
  axle: range.ratio,
};

/** The road speed at an engine speed (m/s), and the shaft's speed there (rad/s). */
export function roadSpeedFromEngine(input: RoadFromEngineInput): Outcome<{ road: number; speed: number }> {
  const wrong = check(input, roadSpeedFromEngineRanges);
  if (wrong.length > 0) return refuse(wrong);
  const speed = behindGears(input);
  return answer({ road: (speed / input.axle) * input.tyre, speed }, [engineFormula, roadFormula]);
}
