// The greatest joint angle at a speed, by the charts and rules in print. They disagree,
// so each stands by itself.
import type { Ground, Limit, Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface AngleAtSpeedInput {
  speed: number; // of the shaft, rad/s
}

/** What one chart says at a speed. */
export interface ChartAngle extends Ground {
  id: string;
  says: string;
  angle: number | null; // rad; null where the chart does not reach
  /** Printed speeds beside which the angle was read, rad/s. Between two of them it is the
   *  lower of the two angles, never a value in between. */
  between: [number, number] | null;
}

export interface AngleAtSpeed {
  charts: ChartAngle[];
  /** By series of one maker: greatest speed and greatest speed times angle. */
  series: { id: string; speedMost: number; angle: number | null; source: Ground }[];
  limits: Limit[]; // of speed, for solid shafts
}

export function angleAtSpeed(input: AngleAtSpeedInput): Outcome<AngleAtSpeed> {
  return unwritten(input);
}

export interface AngleAtLengthInput {
  length: number; // of the shaft, m
}

/** A trade rule: the greatest angle for a shaft's length, of parallel and of intersecting ends, rad. */
export function angleAtLength(
  input: AngleAtLengthInput,
): Outcome<{ parallel: number; intersecting: number; ground: Ground }> {
  return unwritten(input);
}
