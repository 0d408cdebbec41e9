// The speed at which a tube between two joints begins to whirl in its first bending mode.
//
//   w = (pi / L)² sqrt(E I / m'),   I / m' = (D² + d²) / (16 rho)
//
// with the mass spread over the length. Lumping it at mid-span, as some worked examples in
// print do, gives 0.702 of that and is wrong.
import type { Ground, Limit, Outcome } from "./types";
import { unwritten } from "./unwritten";

export type Material = "steel" | "aluminium";

export interface Tube {
  outside: number; // diameter, m
  wall: number; // thickness, m; half of `outside` is a solid bar
  material: Material;
}

export interface CriticalInput extends Tube {
  length: number; // between joint centres, or from a joint to the hanger bearing, m
  speed: number; // greatest speed of the shaft, rad/s; 0 when it is not known
}

/** The critical speed with one published or recalled constant. */
export interface CriticalBy extends Ground {
  id: string;
  says: string;
  speed: number; // rad/s
}

export interface Allowed extends Limit {
  speed: number; // the fraction times the critical speed, rad/s
}

export interface Critical {
  speed: number; // first bending critical, rad/s
  half: number; // half of it, at which a joint's two beats a turn meet it, rad/s
  fraction: number; // working speed over critical speed
  allowed: Allowed[]; // fractions of the critical speed, by source
  constants: CriticalBy[]; // the same tube with the constants others print
  inside: number; // diameter, m
  mass: number; // of the tube alone, kg
}

export function criticalSpeed(input: CriticalInput): Outcome<Critical> {
  return unwritten(input);
}

export interface LongestInput extends Tube {
  speed: number; // greatest speed of the shaft, rad/s
}

/** The longest shaft of a tube for a speed: at the critical speed itself, and for each allowed fraction, m. */
export function longestShaft(
  input: LongestInput,
): Outcome<{ atCritical: number; allowed: (Limit & { length: number })[] }> {
  return unwritten(input);
}

export interface TubeForInput {
  length: number; // m
  speed: number; // greatest speed of the shaft, rad/s
  wall: number; // m
  material: Material;
}

/** The least outside diameter of a tube with that wall, for each allowed fraction, m. */
export function tubeFor(
  input: TubeForInput,
): Outcome<{ atCritical: number; allowed: (Limit & { outside: number })[] }> {
  return unwritten(input);
}

export interface CriticalCurveInput extends Tube {
  from: number; // m
  to: number; // m
  points: number; // 2 to 500
}

/** Critical speed over length, for a plot. */
export function criticalCurve(input: CriticalCurveInput): Outcome<{ length: number[]; speed: number[] }> {
  return unwritten(input);
}
