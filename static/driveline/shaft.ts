// A shaft of one, two or three joints: the angle of each, and what is left of their
// unevenness at the driven end.
//
// The chain is exact. A joint turns the driving vector (cos t, sin t) into a multiple of
// (cos b cos t, sin t), and the next joint sees it turned by how its plane and its yoke
// lie: the product of such matrices is again one joint with two turns, whose angle is the
// residual angle. So everything that holds for a single joint holds for what is left,
// coplanar or not. With coplanar joints it is the product of cosines.
import { answer, check, refuse } from "./check";
import * as given from "./given-angles";
import * as range from "./given-ranges";
import * as hooke from "./hooke";
import type { Attitude } from "./inclination";
import { type Chain, chainOf, checkShaft, product, quarter, residualOf, rootOfSquares } from "./shaft-chain";
import type { Limit, Outcome, Ranges } from "./types";
import { directionOf } from "./vector";

export interface ShaftInput {
  /** From the driving end: gearbox, shaft (or shafts), axle: 2, 3 or 4, with one joint between each two. */
  members: Attitude[];
  /** For each shaft that has a joint at both ends: how far its driven-end yoke is turned
   *  against its driving-end yoke, rad; 0 is in line, positive is clockwise seen from the
   *  driving end. One fewer than there are joints. */
  yokes: number[];
  speed: number; // of the driving end, rad/s
  inertia: number; // of what the driven end turns, kg·m²; 0 when it does not matter
}

export interface JointOfShaft {
  angle: number; // exact, rad
  side: number; // difference in side view, rad
  plan: number; // difference in plan, rad
  fluctuation: number; // of this joint alone
  acceleration: number; // greatest of this joint alone at the shaft's speed, rad/s²
}

/** The unevenness a chain leaves: that of one joint at `angle`. */
export interface Residual {
  angle: number; // rad
  fluctuation: number; // (fastest - slowest) / driving speed
  ratioMost: number;
  ratioLeast: number;
  acceleration: number; // greatest, exact, rad/s²
  accelerationSmall: number; // by w² b², rad/s²
}

export interface ShaftAngles {
  joints: JointOfShaft[];
  /** For each shaft with two joints: the angle between the planes of its joints about it, rad,
   *  within a quarter turn; equal joints cancel with the yokes turned by it. Null where a joint is straight. */
  planes: (number | null)[];
  /** How far the yokes of each such shaft are turned from there, rad, within a quarter turn. */
  phase: (number | null)[];
  /** Difference of the last two joints' angles, rad; 0 of a single joint. Of a set of shafts it is the last shaft whose
   *  joints are to be alike; those before it run at a small angle each. */
  equality: number;
  residual: Residual; // of the driven end
  residualShop: number; // by the root of squares, turned by planes and yokes, rad; good below about 10 degrees
  /** For each shaft between two joints, driven from the driving end (drive) and from the driven
   *  end (coast): its own unevenness. Of a shaft with two joints these are the first and the last joint's. */
  inertia: { drive: Residual; coast: Residual }[];
  inertiaTorque: number; // inertia times the residual acceleration, N·m
  limits: Limit[]; // of each joint's angle, of their equality, of residual, of accelerations
}

export const shaftAnglesRanges: Ranges<ShaftInput> = {
  members: null,
  yokes: { ...range.yokeTurn, count: [0, 2] },
  speed: range.speed,
  inertia: range.inertia,
};

/** The joints of a shaft, and what they leave at its driven end. */
export function shaftAngles(input: ShaftInput): Outcome<ShaftAngles> {
  const wrong = [...checkShaft(input), ...check(input, { ...shaftAnglesRanges, yokes: null })];
  if (wrong.length > 0) return refuse(wrong);
  const { members, yokes, speed, inertia } = input;
  const chain = chainOf(members.map(directionOf), yokes);
  const n = chain.angles.length;
  const residual = left(residualOf(chain), speed);
  return answer(
    {
      joints: jointsOf(members, chain, speed),
      planes: chain.planes,
      phase: chain.planes.map((p, i) => (p === null ? null : quarter((yokes[i] ?? 0) - p))),
      equality: n < 2 ? 0 : Math.abs((chain.angles[n - 1] ?? 0) - (chain.angles[n - 2] ?? 0)),
      residual,
      residualShop: rootOfSquares(chain, yokes),
      inertia: yokes.map((_, i) => ({
        drive: left(hooke.residualAngle(product(chain, 0, i + 1)), speed),
        coast: left(hooke.residualAngle(product(chain, i + 1, n)), speed),
      })),
      inertiaTorque: inertia * residual.acceleration,
      limits: limitsOf(n),
    },
    [
      given.compoundFormula,
      given.chainFormula,
      given.residualShopFormula,
      given.fluctuationFormula,
      given.accelerationFormula,
      given.smallAngleFormula,
    ],
  );
}

function jointsOf(members: readonly Attitude[], chain: Chain, speed: number): JointOfShaft[] {
  return chain.angles.map((angle, i) => ({
    angle,
    side: (members[i + 1] as Attitude).side - (members[i] as Attitude).side,
    plan: (members[i + 1] as Attitude).plan - (members[i] as Attitude).plan,
    fluctuation: hooke.fluctuation(angle),
    acceleration: hooke.peakAcceleration(angle) * speed * speed,
  }));
}

function left(angle: number, speed: number): Residual {
  return {
    angle,
    fluctuation: hooke.fluctuation(angle),
    ratioMost: 1 / Math.cos(angle),
    ratioLeast: Math.cos(angle),
    acceleration: hooke.peakAcceleration(angle) * speed * speed,
    accelerationSmall: (speed * angle) ** 2,
  };
}

function limitsOf(joints: number): Limit[] {
  const each = [...given.jointAngleLeast, ...given.jointAngleMost];
  const rest = [...given.residualFluctuation, ...given.residualAcceleration];
  if (joints === 1) return [...each, ...given.singleShaftMost, ...rest];
  return [
    ...each,
    ...(joints === 3 ? given.singleShaftMost.filter((l) => l.id !== "angle-most-chrysler-single") : []),
    ...given.equality,
    ...given.yokePhase,
    ...rest,
    ...given.driveInertia,
    ...given.coastInertia,
  ];
}

export interface ShaftCurveInput extends Omit<ShaftInput, "speed" | "inertia"> {
  points: number; // over a whole turn of the driving end, 2 to 720
}

export interface ShaftCurve {
  rotation: number[]; // of the driving end, rad, from 0 to a whole turn, both included
  ratios: number[][]; // speed over driving speed, for each member after the first
}

export const shaftCurveRanges: Ranges<ShaftCurveInput> = {
  members: null,
  yokes: shaftAnglesRanges.yokes,
  points: range.points,
};

/** Speeds over one turn of the driving end, which starts with its yoke in the plane of the first joint. */
export function shaftCurve(input: ShaftCurveInput): Outcome<ShaftCurve> {
  const wrong = [...checkShaft(input), ...check(input, { ...shaftCurveRanges, yokes: null })];
  if (wrong.length > 0) return refuse(wrong);
  const chain = chainOf(input.members.map(directionOf), input.yokes);
  const n = Math.floor(input.points);
  const rotation = Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / (n - 1));
  const ratios = chain.matrices.map((_, i) => {
    const m = product(chain, 0, i + 1);
    return rotation.map((t) => hooke.ratioAt(m, t));
  });
  return answer({ rotation, ratios }, [given.ratioFormula, given.chainFormula]);
}
