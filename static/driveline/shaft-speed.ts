// How fast the shaft turns: from the engine through the gears, or from the road through
// the tyre and the axle.
import type { Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface ShaftSpeedInput {
  engine: number; // greatest engine speed, rad/s
  gear: number; // ratio of the highest gear, engine over gearbox output: 0.75 is an overdrive
  transfer: number; // ratio of the transfer case, 1 without one
}

/** The greatest speed of the shaft behind gearbox and transfer case, rad/s. */
export function shaftSpeedFromEngine(input: ShaftSpeedInput): Outcome<{ speed: number }> {
  return unwritten(input);
}

export interface RoadSpeedInput {
  road: number; // m/s
  tyre: number; // rolling radius, m
  axle: number; // ratio of the axle, shaft over wheel
}

/** The speed of the shaft at a road speed, rad/s: v / r times the axle's ratio. */
export function shaftSpeedFromRoad(input: RoadSpeedInput): Outcome<{ speed: number }> {
  return unwritten(input);
}

export interface RoadFromEngineInput extends ShaftSpeedInput {
  tyre: number; // rolling radius, m
  axle: number; // ratio of the axle
}

/** The road speed at an engine speed (m/s), and the shaft's speed there (rad/s). */
export function roadSpeedFromEngine(input: RoadFromEngineInput): Outcome<{ road: number; speed: number }> {
  return unwritten(input);
}
