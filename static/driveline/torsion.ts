// A tube or bar in torsion: stress, twist, and the torque at which it begins to yield.
import type { Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface TorsionInput {
  outside: number; // diameter, m
  wall: number; // m; half of `outside` is a solid bar
  length: number; // m
  torque: number; // N·m
  shearModulus: number; // G, Pa
  yield: number; // tensile yield strength, Pa
}

export interface Torsion {
  inside: number; // diameter, m
  stress: number; // shear at the outer wall, exact, Pa
  stressInside: number; // at the inner wall; 0 in the middle of a bar, Pa
  stressThin: number; // by T / (2 pi r² t) at mid wall, Pa
  twist: number; // over the length, rad
  shearMises: number; // shear stress at yield by von Mises: yield / sqrt 3, Pa
  shearTresca: number; // by Tresca: yield / 2, Pa
  torqueMises: number; // torque at which the outer wall begins to yield, N·m
  torqueTresca: number; // N·m
  shareMises: number; // stress over shear stress at yield
  shareTresca: number;
}

export function torsion(input: TorsionInput): Outcome<Torsion> {
  return unwritten(input);
}

export interface TorqueAtInput {
  outside: number; // m
  wall: number; // m
  stress: number; // shear at the outer wall, Pa
}

/** The torque that gives a shear stress at the outer wall, N·m. */
export function torqueAtStress(input: TorqueAtInput): Outcome<{ torque: number }> {
  return unwritten(input);
}

export interface TorqueTwistInput {
  outside: number; // m
  wall: number; // m
  length: number; // m
  shearModulus: number; // Pa
  twist: number; // rad
}

/** The torque that twists a shaft by an angle, N·m. */
export function torqueAtTwist(input: TorqueTwistInput): Outcome<{ torque: number }> {
  return unwritten(input);
}
