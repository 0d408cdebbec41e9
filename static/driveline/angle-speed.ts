// The greatest joint angle at a speed, by the charts and rules in print. They disagree,
// so each stands by itself.
import { answer, check, refuse } from "./check";
import * as given from "./given-charts";
import * as range from "./given-ranges";
import type { Ground, Limit, Outcome, Ranges } from "./types";

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

export const angleAtSpeedRanges: Ranges<AngleAtSpeedInput> = { speed: range.turning };

/** What each chart and series allows at a speed. */
export function angleAtSpeed(input: AngleAtSpeedInput): Outcome<AngleAtSpeed> {
  const wrong = check(input, angleAtSpeedRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { speed } = input;
  return answer(
    {
      charts: given.charts.map(({ points, ...c }) => ({ ...c, ...read(points, speed) })),
      series: given.series.map(({ id, speedMost, product }) => ({
        id,
        speedMost,
        angle: speed > speedMost ? null : product / speed,
        source: given.seriesGround,
      })),
      limits: given.solidShaftSpeed,
    },
    [],
  );
}

// A printed speed within this share counts as that speed, whatever unit it was typed in.
const same = 1e-9;

function read(
  points: given.Chart["points"],
  speed: number,
): { angle: number | null; between: [number, number] | null } {
  const next = points.findIndex(([s]) => s >= speed * (1 - same));
  const above = points[next];
  if (above === undefined) return { angle: null, between: null };
  if (above[0] <= speed * (1 + same)) return { angle: above[1], between: [above[0], above[0]] };
  const below = points[next - 1];
  if (below === undefined) return { angle: null, between: null };
  return { angle: Math.min(below[1], above[1]), between: [below[0], above[0]] };
}

export interface AngleAtLengthInput {
  length: number; // of the shaft, m
}

export const angleAtLengthRanges: Ranges<AngleAtLengthInput> = { length: range.length };

/** A trade rule: the greatest angle for a shaft's length, of parallel and of intersecting ends, rad. */
export function angleAtLength(
  input: AngleAtLengthInput,
): Outcome<{ parallel: number; intersecting: number; ground: Ground }> {
  const wrong = check(input, angleAtLengthRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { value: parallel, says: _, ...ground } = given.parallelPerLength;
  return answer(
    { parallel: input.length * parallel, intersecting: input.length * given.intersectingPerLength.value, ground },
    [],
  );
}
