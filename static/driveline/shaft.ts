// A shaft of one, two or three joints: the angle of each, and what is left of their
// unevenness at the driven end.
//
// The chain is exact. A joint turns the driving vector (cos t, sin t) into a multiple of
// (cos b cos t, sin t), and the next joint sees it turned by how its plane and its yoke
// lie: the product of such matrices is again one joint with two turns, whose angle is the
// residual angle. So everything that holds for a single joint holds for what is left,
// coplanar or not. With coplanar joints it is the product of cosines.
import type { Attitude } from "./inclination";
import type { Limit, Outcome } from "./types";
import { unwritten } from "./unwritten";

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
   *  from -pi to pi; the yokes would have to be turned by it to cancel. Null where a joint is straight. */
  planes: (number | null)[];
  residual: Residual; // of the driven end
  residualShop: number; // by the root of squares, turned by planes and yokes, rad; good below about 10 degrees
  /** For each shaft between two joints, driven from the driving end (drive) and from the driven
   *  end (coast): its own unevenness. Of a shaft with two joints these are the first and the last joint's. */
  inertia: { drive: Residual; coast: Residual }[];
  inertiaTorque: number; // inertia times the residual acceleration, N·m
  limits: Limit[]; // of each joint's angle, of their equality, of residual, of accelerations
}

export function shaftAngles(input: ShaftInput): Outcome<ShaftAngles> {
  return unwritten(input);
}

export interface ShaftCurveInput extends Omit<ShaftInput, "inertia"> {
  points: number; // over a whole turn of the driving end, 2 to 720
}

export interface ShaftCurve {
  rotation: number[]; // of the driving end, rad, from 0 to a whole turn, both included
  ratios: number[][]; // speed over driving speed, for each member after the first
}

/** Speeds over one turn of the driving end, which starts with its yoke in the plane of the first joint. */
export function shaftCurve(input: ShaftCurveInput): Outcome<ShaftCurve> {
  return unwritten(input);
}
