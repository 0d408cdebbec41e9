// How long a joint's needles last, by the two forms in use. Their ratings mean different
// things and must never be put into each other's form, so each is a function of its own
// with inputs of its own.
import type { Ground, Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface LifeRatedInput {
  rating: number; // torque that gives 5000 h (B10) at 3 degrees and 100 rev/min, N·m
  torque: number; // that is carried, N·m
  angle: number; // rad; under 3 degrees counts as 3
  speed: number; // rad/s
  shock: number; // factor on the torque; 1 without shock
}

export interface Sensitivity {
  halfAngle: number; // life with half the angle over life now
  halfTorque: number;
  halfSpeed: number;
}

export interface Life {
  life: number; // that nine joints of ten reach (B10), s
  mean: number; // about five times that, s
  angle: number; // that was counted with, rad
  torque: number; // that was counted with, N·m
  sensitivity: Sensitivity;
  cubic: number; // life with an exponent of 3 instead of 10/3, s
  shocks: (Ground & { id: string; says: string; value: number })[]; // factors in print
}

/** By the rating at 5000 h, 3 degrees and 100 rev/min: L = 1.5e6 / (A N) (Tc / Ta)^(10/3) hours. */
export function lifeByRating(input: LifeRatedInput): Outcome<Life> {
  return unwritten(input);
}

export interface LifeCapacityInput {
  capacity: number; // CR, from the bearing's capacity times its arm, N·m
  torque: number; // N·m
  angle: number; // rad
  speed: number; // rad/s
  shock: number; // K; 1 without shock
}

/** By the capacity of the bearings: L = 1.5e7 / (n b) (CR / (K M))^(10/3) hours. The form is from memory. */
export function lifeByCapacity(input: LifeCapacityInput): Outcome<Life> {
  return unwritten(input);
}

export interface RatingForInput {
  life: number; // wanted, s
  torque: number; // N·m
  angle: number; // rad
  speed: number; // rad/s
  shock: number;
}

/** What a joint must be rated for, in each of the two bases, N·m. They are not comparable. */
export function ratingForLife(input: RatingForInput): Outcome<{ rating: number; capacity: number }> {
  return unwritten(input);
}
