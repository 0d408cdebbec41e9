// One Hooke joint: how the driven side runs faster and slower while the driving side
// turns steadily.
//
// Rotation is counted from the position in which the driving yoke lies in the plane of
// the two shafts; counted from the yoke square to that plane, cos and sin change places.
import type { Limit, Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface SingleJointInput {
  angle: number; // of the joint, rad, 0 to 60 degrees
  speed: number; // of the driving side, rad/s
  inertia: number; // of what the driven side turns, kg·m²; 0 when it does not matter
}

export interface SingleJoint {
  ratioMost: number; // fastest driven over driving speed: 1/cos b, at rotation 0 and half a turn
  ratioLeast: number; // slowest: cos b, a quarter turn later
  fluctuation: number; // (fastest - slowest) / driving speed: tan b · sin b
  speedMost: number; // rad/s
  speedLeast: number; // rad/s
  equalAt: number; // rotation at which both run alike, rad: tan t = sqrt(cos b)
  acceleration: number; // greatest driven acceleration, exact, rad/s²
  accelerationAt: number; // rotation at which that is, rad (and the mirror image of it)
  accelerationAtShop: number; // the same by the textbook's cos 2t = 2 sin² b / (2 - sin² b), rad
  accelerationSmall: number; // by the small-angle w² b², rad/s²
  inertiaTorque: number; // inertia times the greatest acceleration, N·m
  torqueMost: number; // driven over driving torque at most, without losses: 1/cos b
  torqueLeast: number; // and at least: cos b
  limits: Limit[]; // of the joint's angle, of fluctuation and of acceleration
}

export function singleJoint(input: SingleJointInput): Outcome<SingleJoint> {
  return unwritten(input);
}

export interface FluctuationInput {
  fluctuation: number; // (fastest - slowest) / driving speed, 0 to 1
}

/** The joint angle (rad) that gives a fluctuation: cos b = (-U + sqrt(U² + 4)) / 2. */
export function angleForFluctuation(input: FluctuationInput): Outcome<{ angle: number }> {
  return unwritten(input);
}

export interface RotationInput {
  angle: number; // of the joint, rad
  speed: number; // of the driving side, rad/s
  rotation: number; // of the driving side, rad
}

/** Where the driven side is at a rotation (rad, on the same turn), how fast (ratio and rad/s) and
 *  with what acceleration (rad/s²). */
export function jointAt(
  input: RotationInput,
): Outcome<{ rotation: number; ratio: number; speed: number; acceleration: number }> {
  return unwritten(input);
}
