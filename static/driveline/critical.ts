// The speed at which a tube between two joints begins to whirl in its first bending mode.
//
//   w = (pi / L)² sqrt(E I / m'),   I / m' = (D² + d²) / (16 rho)
//
// with the mass spread over the length. Lumping it at mid-span, as some worked examples in
// print do, gives 0.702 of that and is wrong.
import { answer, check, conflict, refuse } from "./check";
import * as given from "./given-critical";
import * as range from "./given-ranges";
import { checkTube, insideOf } from "./tube";
import type { Ground, Limit, Outcome, Ranges, Sourced } from "./types";

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
  modulus: Sourced<number>; // of the material, Pa
  density: Sourced<number>; // kg/m³
}

const tubeRanges: Ranges<Tube> = {
  outside: range.outside,
  wall: range.wall,
  material: { words: ["steel", "aluminium"] },
};

export const criticalSpeedRanges: Ranges<CriticalInput> = {
  ...tubeRanges,
  length: range.length,
  speed: range.speed,
};

/** The first bending critical speed of a tube between its joints. */
export function criticalSpeed(input: CriticalInput): Outcome<Critical> {
  const wrong = checkTube(input, check(input, criticalSpeedRanges));
  if (wrong.length > 0) return refuse(wrong);
  const { outside, wall, material, length } = input;
  const inside = insideOf(outside, wall);
  const speed = criticalOf(input, length);
  const shape = Math.hypot(outside, inside) / length ** 2;
  const area = (Math.PI / 4) * (outside ** 2 - inside ** 2);
  return answer(
    {
      speed,
      half: speed / 2,
      fraction: input.speed / speed,
      allowed: given.allowedFractions.map((f) => ({ ...f, speed: f.value * speed })),
      constants: given.constants
        .filter((c) => c.material === material)
        .map(({ k, material: _, ...c }) => ({ ...c, speed: k * shape })),
      inside,
      mass: area * length * given.materials[material].density.value,
      ...given.materials[material],
    },
    [given.criticalFormula, given.halfFormula, given.massFormula],
  );
}

// m rad/s: the critical speed is this times sqrt(D² + d²) / L².
function constantOf(material: Material): number {
  const { modulus, density } = given.materials[material];
  return (Math.PI ** 2 / 4) * Math.sqrt(modulus.value / density.value);
}

function criticalOf(tube: Tube, length: number): number {
  return (constantOf(tube.material) * Math.hypot(tube.outside, insideOf(tube.outside, tube.wall))) / length ** 2;
}

export interface LongestInput extends Tube {
  speed: number; // greatest speed of the shaft, rad/s
}

export const longestShaftRanges: Ranges<LongestInput> = { ...tubeRanges, speed: range.turning };

/** The longest shaft of a tube for a speed: at the critical speed itself, and for each allowed fraction, m. */
export function longestShaft(
  input: LongestInput,
): Outcome<{ atCritical: number; allowed: (Limit & { length: number })[] }> {
  const wrong = checkTube(input, check(input, longestShaftRanges));
  if (wrong.length > 0) return refuse(wrong);
  const atCritical = Math.sqrt(criticalOf(input, 1) / input.speed);
  return answer(
    { atCritical, allowed: given.allowedFractions.map((f) => ({ ...f, length: atCritical * Math.sqrt(f.value) })) },
    [given.criticalFormula],
  );
}

export interface TubeForInput {
  length: number; // m
  speed: number; // greatest speed of the shaft, rad/s
  wall: number; // m
  material: Material;
}

export const tubeForRanges: Ranges<TubeForInput> = {
  length: range.length,
  speed: range.turning,
  wall: range.wall,
  material: tubeRanges.material,
};

/** The least outside diameter of a tube with that wall, for each allowed fraction, m. */
export function tubeFor(
  input: TubeForInput,
): Outcome<{ atCritical: number; allowed: (Limit & { outside: number })[] }> {
  const wrong = check(input, tubeForRanges);
  if (wrong.length > 0) return refuse(wrong);
  const outside = (fraction: number): number => {
    const squares = ((input.speed / fraction) * input.length ** 2) / constantOf(input.material);
    // D² + (D - 2t)² = squares². A bar of twice the wall is the least there is of that wall.
    const rest = squares ** 2 / 2 - input.wall ** 2;
    return Math.max(2 * input.wall, input.wall + Math.sqrt(Math.max(0, rest)));
  };
  return answer(
    { atCritical: outside(1), allowed: given.allowedFractions.map((f) => ({ ...f, outside: outside(f.value) })) },
    [given.criticalFormula, given.tubeFormula],
  );
}

export interface CriticalCurveInput extends Tube {
  from: number; // m
  to: number; // m
  points: number; // 2 to 500
}

export const criticalCurveRanges: Ranges<CriticalCurveInput> = {
  ...tubeRanges,
  from: range.length,
  to: range.length,
  points: range.points,
};

/** Critical speed over length, for a plot. */
export function criticalCurve(input: CriticalCurveInput): Outcome<{ length: number[]; speed: number[] }> {
  const wrong = checkTube(input, check(input, criticalCurveRanges));
  if (wrong.length > 0) return refuse(wrong);
  const { from, to } = input;
  if (to <= from) return refuse([conflict("to", "from", { bound: from, unit: "m" })]);
  const n = Math.floor(input.points);
  const length = Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));
  return answer({ length, speed: length.map((l) => criticalOf(input, l)) }, [given.criticalFormula]);
}
