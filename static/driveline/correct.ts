// What to change so that less unevenness is left: one change at a time, each the least
// that will do.
//
//   wedge     a taper under one end: the change of its angle is the wedge's own
//   shim      under one mount, `base` from the other: base times tan of the change
//   bearing   the hanger between two shafts up or down: both shafts turn
//   yokes     the yokes of a shaft turned against each other
//
// The joint centres are taken to stay where they are; after a change the angles are to be
// measured again.
import type { ShaftInput } from "./shaft";
import type { Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface CorrectInput extends ShaftInput {
  most: number; // residual angle that may be left, rad; 0 asks for the least there is
  bases: (number | null)[]; // for each member: between its two mounts or along its spring seat, m; null: not known
  lengths: (number | null)[]; // for each member: a shaft's length between joint centres, m; null: not known
}

export interface Change {
  kind: "side" | "plan" | "yokes" | "bearing";
  at: number; // member (side, plan), shaft with two joints (yokes, counted from 0), or hanger (bearing, from 0)
  from: number; // rad; of a bearing 0
  to: number; // rad; of a bearing m, down is positive
  change: number; // to - from, rad or m
  shim: number | null; // height over the base for that change, m; null without a base, or for yokes and bearing
  residual: number; // angle left after it, rad
  reaches: boolean; // residual is at most what was asked for, or zero when zero was asked
  angles: number[]; // of the joints after it, rad
}

export interface Corrections {
  residual: number; // as it stands, rad
  changes: Change[]; // those that reach it first, each kind's least change
}

/** Each single change within 20 degrees (yokes: 90) that brings the residual down to `most`, or as low as it goes. */
export function corrections(input: CorrectInput): Outcome<Corrections> {
  return unwritten(input);
}
