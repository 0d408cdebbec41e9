// One Hooke joint: how the driven side runs faster and slower while the driving side
// turns steadily.
//
// Rotation is counted from the position in which the driving yoke lies in the plane of
// the two shafts; counted from the yoke square to that plane, cos and sin change places.
import { answer, check, refuse } from "./check";
import * as given from "./given-angles";
import * as range from "./given-ranges";
import * as hooke from "./hooke";
import type { Limit, Outcome, Ranges } from "./types";

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
  /** The same by the textbook's cos 2t = 2 sin² b / (2 - sin² b), rad; null past 54.7 degrees, where that has no answer. */
  accelerationAtShop: number | null;
  accelerationSmall: number; // by the small-angle w² b², rad/s²
  inertiaTorque: number; // inertia times the greatest acceleration, N·m
  torqueMost: number; // driven over driving torque at most, without losses: 1/cos b
  torqueLeast: number; // and at least: cos b
  limits: Limit[]; // of the joint's angle, of fluctuation and of acceleration
}

export const singleJointRanges: Ranges<SingleJointInput> = {
  angle: range.jointAngle,
  speed: range.speed,
  inertia: range.inertia,
};

/** One joint at an angle, its driving side turning at a speed. */
export function singleJoint(input: SingleJointInput): Outcome<SingleJoint> {
  const wrong = check(input, singleJointRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { angle, speed, inertia } = input;
  const cos = Math.cos(angle);
  const s2 = Math.sin(angle) ** 2;
  const acceleration = hooke.peakAcceleration(angle) * speed * speed;
  return answer(
    {
      ratioMost: 1 / cos,
      ratioLeast: cos,
      fluctuation: hooke.fluctuation(angle),
      speedMost: speed / cos,
      speedLeast: speed * cos,
      equalAt: Math.atan(Math.sqrt(cos)),
      acceleration,
      accelerationAt: hooke.peakRotation(angle),
      accelerationAtShop: 3 * s2 <= 2 ? Math.acos((2 * s2) / (2 - s2)) / 2 : null,
      accelerationSmall: (speed * angle) ** 2,
      inertiaTorque: inertia * acceleration,
      torqueMost: 1 / cos,
      torqueLeast: cos,
      limits: [
        ...given.jointAngleLeast,
        ...given.jointAngleMost,
        ...given.singleShaftMost,
        ...given.residualFluctuation,
        ...given.residualAcceleration,
      ],
    },
    [given.ratioFormula, given.fluctuationFormula, given.accelerationFormula, given.smallAngleFormula],
  );
}

export interface FluctuationInput {
  fluctuation: number; // (fastest - slowest) / driving speed, 0 to 1
}

export const angleForFluctuationRanges: Ranges<FluctuationInput> = { fluctuation: range.fluctuation };

/** The joint angle (rad) that gives a fluctuation: cos b = (-U + sqrt(U² + 4)) / 2, and so
 *  sin(b/2)² = (1 - cos b) / 2, which loses nothing where U is small. */
export function angleForFluctuation(input: FluctuationInput): Outcome<{ angle: number }> {
  const wrong = check(input, angleForFluctuationRanges);
  if (wrong.length > 0) return refuse(wrong);
  const u = input.fluctuation;
  // 1 - cos b = (2 + U - sqrt(U² + 4)) / 2 = 2 U / (2 + U + sqrt(U² + 4))
  const versine = (2 * u) / (2 + u + Math.sqrt(u * u + 4));
  return answer({ angle: 2 * Math.asin(Math.sqrt(versine / 2)) }, [given.inverseFormula]);
}

export interface RotationInput {
  angle: number; // of the joint, rad
  speed: number; // of the driving side, rad/s
  rotation: number; // of the driving side, rad
}

export const jointAtRanges: Ranges<RotationInput> = {
  angle: range.jointAngle,
  speed: range.speed,
  rotation: range.rotation,
};

/** Where the driven side is at a rotation (rad, on the same turn), how fast (ratio and rad/s) and
 *  with what acceleration (rad/s²). */
export function jointAt(
  input: RotationInput,
): Outcome<{ rotation: number; ratio: number; speed: number; acceleration: number }> {
  const wrong = check(input, jointAtRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { angle, speed, rotation } = input;
  // Driven minus driving rotation stays within a quarter turn, so no turn is lost or won.
  const lead = Math.atan2(
    Math.sin(rotation) * Math.cos(rotation) * (1 - Math.cos(angle)),
    Math.cos(angle) * Math.cos(rotation) ** 2 + Math.sin(rotation) ** 2,
  );
  const ratio = hooke.ratioAt(hooke.joint(angle), rotation);
  return answer(
    {
      rotation: rotation + lead,
      ratio,
      speed: speed * ratio,
      acceleration: hooke.accelerationAt(angle, rotation) * speed * speed,
    },
    [given.ratioFormula, given.accelerationFormula],
  );
}
