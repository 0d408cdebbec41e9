// What a joint at an angle does beside passing torque on: it bends both shafts twice a
// turn, loads its trunnions, and pushes on the bearings.
import { answer, check, refuse } from "./check";
import * as range from "./given-ranges";
import * as given from "./given-torque";
import type { Ground, Outcome, Ranges } from "./types";

export interface CoupleInput {
  torque: number; // on the driving shaft, N·m
  angle: number; // of the joint, rad
  radius: number; // from the middle of the cross to the middle of a cap's needles, m
}

export interface Couple {
  onDriving: number; // greatest secondary couple on the driving shaft: T tan b, driving yoke square to the plane, N·m
  /** On the driven shaft: T sin b with the driving yoke in the plane, N·m. Past 45 degrees it is more on the way to
   *  the other position: T / (2 cos b), where T tan b cos t sqrt(1 - sin² b cos² t) is greatest. */
  onDriven: number;
  trunnion: number; // greatest load on one trunnion: T / (2 R cos b), N
  torqueMost: number; // in the driven shaft: T / cos b, N·m
  torqueLeast: number; // T cos b, N·m
}

export const secondaryCoupleRanges: Ranges<CoupleInput> = {
  torque: range.torque,
  angle: range.jointAngle,
  radius: range.armRadius,
};

/** The couples a joint puts on its shafts, and the load of a trunnion. */
export function secondaryCouple(input: CoupleInput): Outcome<Couple> {
  const wrong = check(input, secondaryCoupleRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { torque, angle, radius } = input;
  const cos = Math.cos(angle);
  return answer(
    {
      onDriving: torque * Math.tan(angle),
      onDriven: angle > Math.PI / 4 ? torque / (2 * cos) : torque * Math.sin(angle),
      trunnion: torque / (2 * radius * cos),
      torqueMost: torque / cos,
      torqueLeast: torque * cos,
    },
    [given.coupleFormula, given.trunnionFormula],
  );
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

export const supportForcesRanges: Ranges<SupportInput> = {
  torque: range.torque,
  layout: { words: ["Z", "W"] },
  first: range.jointAngle,
  second: range.jointAngle,
  length: range.length,
  a: range.base,
  b: range.lengthOrNone,
  e: range.lengthOrNone,
  f: range.base,
};

/** Bearing forces of the two ends in the two positions a quarter turn apart. */
export function supportForces(input: SupportInput): Outcome<Support> {
  const wrong = check(input, supportForcesRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { torque, layout, first, second, length, a, b, e, f } = input;
  const sum = Math.tan(first) + (layout === "W" ? Math.tan(second) : -Math.tan(second));
  const across = (torque * Math.cos(first) * sum) / length; // at each joint, N
  const driving = (torque * Math.tan(first)) / a;
  const driven = (torque * Math.sin(second)) / (f * Math.cos(first));
  return answer(
    {
      zero: {
        a: (across * b) / a,
        b: (across * (a + b)) / a,
        e: (across * (e + f)) / f,
        f: (across * e) / f,
      },
      quarter: { a: driving, b: driving, e: driven, f: driven },
    },
    [given.supportFormula],
  );
}

export interface ThrustInput {
  torque: number; // N·m
  radius: number; // pitch radius of the spline, m
  angle: number; // of the joint, rad
}

export const splineThrustRanges: Ranges<ThrustInput> = {
  torque: range.torque,
  radius: range.armRadius,
  angle: range.jointAngle,
};

/** The push of a slip spline along the shaft, by its friction: T mu cos b / r, N. */
export function splineThrust(
  input: ThrustInput,
): Outcome<{ by: (Ground & { id: "greased" | "coated"; friction: number; thrust: number })[] }> {
  const wrong = check(input, splineThrustRanges);
  if (wrong.length > 0) return refuse(wrong);
  const push = (input.torque / input.radius) * Math.cos(input.angle);
  const by = given.splineFriction.map(({ value, says: _, ...rest }) => ({
    ...rest,
    friction: value,
    thrust: push * value,
  }));
  return answer({ by }, [given.thrustFormula]);
}

export const bearings = ["needle", "plain"] as const;

export interface AngleFactorInput {
  torque: number; // to be carried, N·m
  angle: number; // rad
  bearing: "needle" | "plain"; // of a machine joint to DIN 808
}

/** The factor that is asked for, with the printed points beside it. */
export interface AngleFactor {
  factor: number | null;
  at: number | null; // the printed angle it stands at, rad
  torque: number | null; // to be rated for, N·m
  points: { angle: number; factor: number; ground: Ground }[]; // for that bearing, rad
}

export const angleFactorRanges: Ranges<AngleFactorInput> = {
  torque: range.torque,
  angle: range.jointAngle,
  bearing: { words: bearings },
};

/** What a machine joint must be rated for at an angle. Only the printed points are known: the factor
 *  is that of the next printed angle at or above, null beyond the last. */
export function angleFactor(input: AngleFactorInput): Outcome<AngleFactor> {
  const wrong = check(input, angleFactorRanges);
  if (wrong.length > 0) return refuse(wrong);
  const points = given.machineJoint
    .filter((p) => p.bearing === "" || p.bearing === input.bearing)
    .map(({ angle, factor, bearing: _, ...ground }) => ({ angle, factor, ground }));
  // Degrees go through radians and back: the printed angle itself must still count as reached.
  const next = points.find((p) => p.angle >= input.angle * (1 - 1e-9));
  return answer(
    {
      factor: next?.factor ?? null,
      at: next?.angle ?? null,
      torque: next === undefined ? null : next.factor * input.torque,
      points,
    },
    [given.factorFormula],
  );
}
