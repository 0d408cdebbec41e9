// What a joint at an angle does beside passing torque on: it bends both shafts twice a
// turn, loads its trunnions, and pushes on the bearings.
import type { Ground, Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface CoupleInput {
  torque: number; // on the driving shaft, N·m
  angle: number; // of the joint, rad
  radius: number; // from the middle of the cross to the middle of a cap's needles, m
}

export interface Couple {
  onDriving: number; // greatest secondary couple on the driving shaft: T tan b, driving yoke square to the plane, N·m
  onDriven: number; // on the driven shaft: T sin b, driving yoke in the plane, N·m
  trunnion: number; // greatest load on one trunnion: T / (2 R cos b), N
  torqueMost: number; // in the driven shaft: T / cos b, N·m
  torqueLeast: number; // T cos b, N·m
}

export function secondaryCouple(input: CoupleInput): Outcome<Couple> {
  return unwritten(input);
}

export interface SupportInput {
  torque: number; // on the driving shaft, N·m
  layout: "Z" | "W"; // Z: ends parallel; W: ends meet
  first: number; // angle of the driving joint, rad
  second: number; // of the driven joint, rad
  length: number; // between joint centres, m
  a: number; // between the two bearings of the driving end, m
  b: number; // from its nearer bearing to the joint, m
  e: number; // from the driven joint to its nearer bearing, m
  f: number; // between the two bearings of the driven end, m
}

/** Forces on the bearings, N, from the driving end: A, B (nearer the joint), E (nearer the joint), F. */
export interface Support {
  zero: { a: number; b: number; e: number; f: number }; // driving yoke in the plane
  quarter: { a: number; b: number; e: number; f: number }; // a quarter turn later
}

export function supportForces(input: SupportInput): Outcome<Support> {
  return unwritten(input);
}

export interface ThrustInput {
  torque: number; // N·m
  radius: number; // pitch radius of the spline, m
  angle: number; // of the joint, rad
}

/** The push of a slip spline along the shaft, by its friction: T mu cos b / r, N. */
export function splineThrust(
  input: ThrustInput,
): Outcome<{ by: (Ground & { id: "greased" | "coated"; friction: number; thrust: number })[] }> {
  return unwritten(input);
}

export interface AngleFactorInput {
  torque: number; // to be carried, N·m
  angle: number; // rad
  bearing: "needle" | "plain"; // of a machine joint to DIN 808
}

/** What a machine joint must be rated for at an angle. Only the printed points are known: the factor
 *  is that of the next printed angle at or above, null beyond the last. */
export function angleFactor(input: AngleFactorInput): Outcome<{
  factor: number | null;
  at: number | null;
  torque: number | null;
  points: { angle: number; factor: number; ground: Ground }[];
}> {
  return unwritten(input);
}
