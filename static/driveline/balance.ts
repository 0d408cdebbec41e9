// How much unbalance a shaft may have.
//
//   U = G M / w     G the speed of the mass centre: grade 16 is 0.016 m/s
import type { Ground, Outcome } from "./types";
import { unwritten } from "./unwritten";

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

export function permissibleUnbalance(input: BalanceInput): Outcome<Balance> {
  return unwritten(input);
}

export interface GradeInput {
  unbalance: number; // kg·m
  mass: number; // kg
  speed: number; // rad/s
}

/** The grade an unbalance amounts to, mm/s. */
export function gradeOfUnbalance(input: GradeInput): Outcome<{ grade: number }> {
  return unwritten(input);
}
