// Whether a joint floats or binds between its clips, and which clips would do.
//
// Outside clips: the yoke's figure is from groove to groove over the ears, the joint's
// over its caps. Inside clips: the yoke's is from ear to ear over the inner faces, the
// joint's between the inner groove faces of its caps. Either way
//
//   float = yoke - joint - clip - clip
//
// and a float below zero binds.
import type { SourceKey } from "./sources";
import type { Limit, MeasuredLength, Outcome } from "./types";
import { unwritten } from "./unwritten";

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

export function clipFloat(input: FloatInput): Outcome<Float> {
  return unwritten(input);
}

export interface ClipForInput {
  hold: ClipHold;
  yoke: MeasuredLength;
  joint: MeasuredLength;
  float: number; // wanted, m; 0 or more
}

/** A published set of clips, and the one of it that comes nearest without binding. */
export interface ClipSet {
  id: string;
  source: SourceKey;
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

export function clipFor(input: ClipForInput): Outcome<ClipFor> {
  return unwritten(input);
}
