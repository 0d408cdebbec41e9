// How long a joint's needles last, by the two forms in use. Their ratings mean different
// things and must never be put into each other's form, so each is a function of its own
// with inputs of its own.
import { answer, check, refuse } from "./check";
import * as given from "./given-life";
import * as range from "./given-ranges";
import type { Ground, Outcome, Ranges } from "./types";

/** A factor of shock in print. */
export interface Shock extends Ground {
  id: string;
  says: string;
  value: number;
}

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
  shocks: readonly Shock[]; // factors in print
}

export const lifeByRatingRanges: Ranges<LifeRatedInput> = {
  rating: range.torqueAbove,
  torque: range.torqueAbove,
  angle: range.jointAngle,
  speed: range.turning,
  shock: range.shock,
};

/** By the rating at 5000 h, 3 degrees and 100 rev/min: L = 1.5e6 / (A N) (Tc / Ta)^(10/3) hours. */
export function lifeByRating(input: LifeRatedInput): Outcome<Life> {
  const wrong = check(input, lifeByRatingRanges);
  if (wrong.length > 0) return refuse(wrong);
  const load = input.torque * input.shock;
  const counted = (angle: number) => Math.max(angle, given.leastAngle.value);
  const life = (angle: number, exponent: number) =>
    (given.ratedProduct.value / (counted(angle) * input.speed)) * (input.rating / load) ** exponent;
  return answer(lifeOf(life, input.angle, counted(input.angle), load), [given.ratedFormula]);
}

export interface LifeCapacityInput {
  capacity: number; // CR, from the bearing's capacity times its arm, N·m
  torque: number; // N·m
  angle: number; // rad
  speed: number; // rad/s
  shock: number; // K; 1 without shock
}

export const lifeByCapacityRanges: Ranges<LifeCapacityInput> = {
  capacity: range.torqueAbove,
  torque: range.torqueAbove,
  angle: range.bentAngle,
  speed: range.turning,
  shock: range.shock,
};

/** By the capacity of the bearings: L = 1.5e7 / (n b) (CR / (K M))^(10/3) hours. The form is from memory. */
export function lifeByCapacity(input: LifeCapacityInput): Outcome<Life> {
  const wrong = check(input, lifeByCapacityRanges);
  if (wrong.length > 0) return refuse(wrong);
  const load = input.torque * input.shock;
  const life = (angle: number, exponent: number) =>
    (given.capacityProduct.value / (angle * input.speed)) * (input.capacity / load) ** exponent;
  return answer(lifeOf(life, input.angle, input.angle, load), [given.capacityFormula]);
}

function lifeOf(life: (angle: number, exponent: number) => number, asked: number, angle: number, torque: number): Life {
  const exponent = given.exponent.value;
  const now = life(asked, exponent);
  return {
    life: now,
    mean: now * given.meanFactor.value,
    angle,
    torque,
    sensitivity: { halfAngle: life(asked / 2, exponent) / now, halfTorque: 2 ** exponent, halfSpeed: 2 },
    cubic: life(asked, given.cubicExponent.value),
    shocks: given.shocks,
  };
}

export interface RatingForInput {
  life: number; // wanted, s
  torque: number; // N·m
  angle: number; // rad
  speed: number; // rad/s
  shock: number;
}

export const ratingForLifeRanges: Ranges<RatingForInput> = {
  life: range.life,
  torque: range.torqueAbove,
  angle: range.bentAngle,
  speed: range.turning,
  shock: range.shock,
};

/** What a joint must be rated for, in each of the two bases, N·m. They are not comparable. */
export function ratingForLife(input: RatingForInput): Outcome<{ rating: number; capacity: number }> {
  const wrong = check(input, ratingForLifeRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { life, speed } = input;
  const load = input.torque * input.shock;
  const root = 1 / given.exponent.value;
  const counted = Math.max(input.angle, given.leastAngle.value);
  return answer(
    {
      rating: load * ((life * counted * speed) / given.ratedProduct.value) ** root,
      capacity: load * ((life * input.angle * speed) / given.capacityProduct.value) ** root,
    },
    [given.ratedFormula, given.capacityFormula],
  );
}
