// A tube or bar in torsion: stress, twist, and the torque at which it begins to yield.
import { answer, check, refuse } from "./check";
import * as range from "./given-ranges";
import { thinFormula, torsionFormula, yieldFormula } from "./given-torque";
import { checkTube, insideOf } from "./tube";
import type { Outcome, Ranges } from "./types";

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

export const torsionRanges: Ranges<TorsionInput> = {
  outside: range.outside,
  wall: range.wall,
  length: range.length,
  torque: range.torque,
  shearModulus: range.modulus,
  yield: range.strength,
};

/** Stress, twist and yield of a tube or bar under a torque. */
export function torsion(input: TorsionInput): Outcome<Torsion> {
  const wrong = checkTube(input, check(input, torsionRanges));
  if (wrong.length > 0) return refuse(wrong);
  const { outside, wall, torque } = input;
  const inside = insideOf(outside, wall);
  const polar = polarMoment(outside, inside);
  const stress = (torque * outside) / 2 / polar;
  const middle = (outside - wall) / 2;
  const shearMises = input.yield / Math.sqrt(3);
  const shearTresca = input.yield / 2;
  return answer(
    {
      inside,
      stress,
      stressInside: (torque * inside) / 2 / polar,
      stressThin: torque / (2 * Math.PI * middle * middle * wall),
      twist: (torque * input.length) / (input.shearModulus * polar),
      shearMises,
      shearTresca,
      torqueMises: (shearMises * polar) / (outside / 2),
      torqueTresca: (shearTresca * polar) / (outside / 2),
      shareMises: stress / shearMises,
      shareTresca: stress / shearTresca,
    },
    [torsionFormula, thinFormula, yieldFormula],
  );
}

// Polar second moment of area, m^4.
function polarMoment(outside: number, inside: number): number {
  return (Math.PI / 32) * (outside ** 4 - inside ** 4);
}

export interface TorqueAtInput {
  outside: number; // m
  wall: number; // m
  stress: number; // shear at the outer wall, Pa
}

export const torqueAtStressRanges: Ranges<TorqueAtInput> = {
  outside: range.outside,
  wall: range.wall,
  stress: range.stress,
};

/** The torque that gives a shear stress at the outer wall, N·m. */
export function torqueAtStress(input: TorqueAtInput): Outcome<{ torque: number }> {
  const wrong = checkTube(input, check(input, torqueAtStressRanges));
  if (wrong.length > 0) return refuse(wrong);
  const polar = polarMoment(input.outside, insideOf(input.outside, input.wall));
  return answer({ torque: (input.stress * polar) / (input.outside / 2) }, [torsionFormula]);
}

export interface TorqueTwistInput {
  outside: number; // m
  wall: number; // m
  length: number; // m
  shearModulus: number; // Pa
  twist: number; // rad
}

export const torqueAtTwistRanges: Ranges<TorqueTwistInput> = {
  outside: range.outside,
  wall: range.wall,
  length: range.length,
  shearModulus: range.modulus,
  twist: range.jointAngle,
};

/** The torque that twists a shaft by an angle, N·m. */
export function torqueAtTwist(input: TorqueTwistInput): Outcome<{ torque: number }> {
  const wrong = checkTube(input, check(input, torqueAtTwistRanges));
  if (wrong.length > 0) return refuse(wrong);
  const polar = polarMoment(input.outside, insideOf(input.outside, input.wall));
  return answer({ torque: (input.twist * input.shearModulus * polar) / input.length }, [torsionFormula]);
}
