// Whether a joint floats or binds between its clips, and which clips would do.
//
// Outside clips: the yoke's figure is from groove to groove over the ears, the joint's
// over its caps. Inside clips: the yoke's is from ear to ear over the inner faces, the
// joint's between the inner groove faces of its caps. Either way
//
//   float = yoke - joint - clip - clip
//
// and a float below zero binds.
import { normalCdf } from "../matcher/gum";
import { answer, check, conflict, refuse } from "./check";
import * as given from "./given-fit";
import * as range from "./given-ranges";
import type { Ground, Limit, MeasuredLength, Outcome, Ranges } from "./types";

export type ClipHold = "outside-clip" | "inside-clip";

export interface FloatInput {
  hold: ClipHold;
  yoke: MeasuredLength;
  joint: MeasuredLength;
  clip: MeasuredLength; // thickness of one clip
  other: MeasuredLength | null; // of the clip on the other side, null: the same as `clip`
}

export interface Float {
  float: number; // m; below zero it binds
  uncertainty: number; // expanded, about 95 %, m
  least: number; // float - uncertainty, m
  most: number; // float + uncertainty, m
  state: "floats" | "binds" | "not-known"; // not-known: zero lies within the uncertainty
  bindProbability: number; // that it binds, by the normal distribution
  offCentre: number; // by how much unequal clips push the joint off the middle, m
  limits: Limit[]; // of float, by source
}

const holds = { words: ["outside-clip", "inside-clip"] };
const span = { ...range.acrossYoke, measured: true } as const;
const thickness = { ...range.clip, measured: true } as const;

export const clipFloatRanges: Ranges<FloatInput> = {
  hold: holds,
  yoke: span,
  joint: span,
  clip: thickness,
  other: { ...thickness, none: true },
};

/** What is left between yoke, joint and clips. */
export function clipFloat(input: FloatInput): Outcome<Float> {
  const wrong = check(input, clipFloatRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { yoke, joint, clip } = input;
  const other = input.other ?? clip;
  const float = yoke.value - joint.value - clip.value - other.value;
  const uncertainty = Math.hypot(yoke.uncertainty, joint.uncertainty, clip.uncertainty + other.uncertainty);
  const least = float - uncertainty;
  const most = float + uncertainty;
  return answer(
    {
      float,
      uncertainty,
      least,
      most,
      state: least >= 0 ? "floats" : most < 0 ? "binds" : "not-known",
      bindProbability: below(-float, uncertainty),
      offCentre: (other.value - clip.value) / 2,
      limits: given.floatLimits,
    },
    [formulaOf(input.hold), given.uncertaintyFormula],
  );
}

function formulaOf(hold: ClipHold) {
  return hold === "outside-clip" ? given.outsideFormula : given.insideFormula;
}

/** Probability that a quantity whose estimate is `-x` and whose expanded uncertainty (95 %) is U lies below zero. */
export function below(x: number, expanded: number): number {
  if (expanded > 0) return normalCdf((x / expanded) * coverage95);
  return x > 0 ? 1 : 0;
}

const coverage95 = 1.959963984540054; // of the normal distribution, JCGM 100 table G.2

export interface ClipForInput {
  hold: ClipHold;
  yoke: MeasuredLength;
  joint: MeasuredLength;
  float: number; // wanted, m; 0 or more
}

/** A published set of clips, and the one of it that comes nearest without binding. */
export interface ClipSet extends Ground {
  id: string;
  thicknesses: number[]; // m; empty where only a range is printed
  least: number; // m
  most: number; // m
  choice: number | null; // the thickest that does not bind; null: none of the set
  float: number | null; // with it on both sides, m
}

export interface ClipFor {
  thickness: number; // of each of two equal clips, m
  uncertainty: number; // of that, expanded, m
  sets: ClipSet[];
  limits: Limit[]; // of float, by source
}

export const clipForRanges: Ranges<ClipForInput> = { hold: holds, yoke: span, joint: span, float: range.float };

/** The thickness of two equal clips for a float, and the published clips nearest to it. */
export function clipFor(input: ClipForInput): Outcome<ClipFor> {
  const wrong = check(input, clipForRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { yoke, joint, float } = input;
  const room = yoke.value - joint.value;
  const thickness = (room - float) / 2;
  const bound = { unit: "m" as const };
  if (thickness < range.clip.least || thickness > range.clip.most)
    return refuse([
      conflict("joint", "yoke", {
        ...bound,
        bound: yoke.value - float - 2 * (thickness < range.clip.least ? range.clip.least : range.clip.most),
      }),
    ]);
  return answer(
    {
      thickness,
      uncertainty: Math.hypot(yoke.uncertainty, joint.uncertainty) / 2,
      sets: given.clipSets.map((s) => ({ ...s, ...chosen(s.thicknesses, room) })),
      limits: given.floatLimits,
    },
    [formulaOf(input.hold)],
  );
}

// Of a set the thickest that does not bind; none when even that leaves the play at which a
// maker says to renew.
function chosen(set: readonly number[], room: number): { choice: number | null; float: number | null } {
  const slack = 1e-9; // m: what decimals lose on their way, not a clip's size
  const choice = set.reduce<number | null>(
    (best, t) => (2 * t <= room + slack && (best === null || t > best) ? t : best),
    null,
  );
  const float = choice === null ? null : room - 2 * choice;
  return float === null || float > given.renew.value ? { choice: null, float: null } : { choice, float };
}
