// A cap in its bore: by the tolerance classes of ISO 286, and as measured.
import type { Ground, Limit, MeasuredLength, Outcome } from "./types";
import { unwritten } from "./unwritten";

export type CapClass = "h6" | "h7";
export type BoreClass = "H7";

export interface FitInput {
  size: number; // nominal diameter, m; the printed limits reach from 18 to 80 mm
  cap: CapClass;
  bore: BoreClass;
}

/** Limits of a fit, m. A clearance below zero is interference. */
export interface Fit {
  step: [over: number, to: number]; // the step of nominal sizes, m
  cap: [least: number, most: number]; // diameter, m
  bore: [least: number, most: number];
  clearance: [least: number, most: number];
  ground: Ground; // of the tolerance values
  use: Ground; // that makers use this fit
}

export function isoFit(input: FitInput): Outcome<Fit> {
  return unwritten(input);
}

export interface CapInBoreInput {
  cap: MeasuredLength; // diameter
  bores: MeasuredLength[]; // of the yoke's ears, 1 to 4
}

export interface CapInBore {
  bores: {
    clearance: number; // bore - cap, m; below zero the cap is larger
    uncertainty: number; // expanded, m
    tightProbability: number; // that the cap is larger than the bore
  }[];
  limits: Limit[];
}

export function capInBore(input: CapInBoreInput): Outcome<CapInBore> {
  return unwritten(input);
}
