// How much unbalance a shaft may have.
//
//   U = G M / w     G the speed of the mass centre: grade 16 is 0.016 m/s
import { answer, check, refuse } from "./check";
import * as given from "./given-balance";
import * as range from "./given-ranges";
import type { Ground, Outcome, Ranges } from "./types";

export interface BalanceInput {
  grade: number; // G, mm/s as the standard names its grades: 16
  mass: number; // of the shaft, kg
  speed: number; // greatest, rad/s
}

export interface Balance {
  unbalance: number; // permissible, of the whole shaft, kg·m
  plane: number; // in each of two planes when the shaft is alike at both ends, kg·m
  eccentricity: number; // of the mass centre, m
  grades: (Ground & { id: string; says: string; grade: number; unbalance: number })[]; // those in print for drive shafts
  speedBelow: Ground & { value: number }; // below this speed balancing is normally not needed, rad/s
}

export const permissibleUnbalanceRanges: Ranges<BalanceInput> = {
  grade: range.grade,
  mass: range.mass,
  speed: range.turning,
};

/** The unbalance a shaft may have by grade, mass and speed. */
export function permissibleUnbalance(input: BalanceInput): Outcome<Balance> {
  const wrong = check(input, permissibleUnbalanceRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { mass, speed } = input;
  const eccentricity = (grade: number) => grade / 1000 / speed;
  const unbalance = eccentricity(input.grade) * mass;
  return answer(
    {
      unbalance,
      plane: unbalance / 2,
      eccentricity: eccentricity(input.grade),
      grades: given.grades.map((g) => ({ ...g, unbalance: eccentricity(g.grade) * mass })),
      speedBelow: given.balanceBelow,
    },
    [given.balanceFormula],
  );
}

export interface GradeInput {
  unbalance: number; // kg·m
  mass: number; // kg
  speed: number; // rad/s
}

export const gradeOfUnbalanceRanges: Ranges<GradeInput> = {
  unbalance: range.unbalance,
  mass: range.mass,
  speed: range.speed,
};

/** The grade an unbalance amounts to, mm/s. */
export function gradeOfUnbalance(input: GradeInput): Outcome<{ grade: number }> {
  const wrong = check(input, gradeOfUnbalanceRanges);
  if (wrong.length > 0) return refuse(wrong);
  return answer({ grade: (1000 * input.unbalance * input.speed) / input.mass }, [given.balanceFormula]);
}
