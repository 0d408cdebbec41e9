// Grades, friction and reuse of bolts.
import type { Grade, ThreadCondition } from "./fasteners";
import { formula, memory, practice, published } from "./ground";
import type { Ground, Sourced } from "./types";
import { inch, psi } from "./units";

/** Proof strength, Pa. */
export const proof: Record<Grade, Sourced<number>> = {
  "SAE-5": { value: 85000 * psi, ...published("kline-ag"), says: "SAE J429 grade 5, up to 1 in" },
  "SAE-8": { value: 120000 * psi, ...published("kline-ag"), says: "SAE J429 grade 8" },
  "8.8": { value: 580e6, ...memory, says: "ISO 898-1 class 8.8 up to 16 mm" },
  "10.9": { value: 830e6, ...memory, says: "ISO 898-1 class 10.9" },
  "12.9": { value: 970e6, ...memory, says: "ISO 898-1 class 12.9" },
};

/** Class 8.8 above this diameter, m, has a proof strength of its own. */
export const smallUpTo: Sourced<number> = { value: 0.016, ...memory, says: "where class 8.8 changes" };
export const proofLarge: Sourced<number> = { value: 600e6, ...memory, says: "ISO 898-1 class 8.8 above 16 mm" };

/** K of the short torque formula. */
export const nutFactor: Record<ThreadCondition, Sourced<number>> = {
  dry: { value: 0.2, ...published("kline-ag"), says: "clean and dry" },
  oiled: { value: 0.15, ...published("kline-ag"), says: "oiled" },
};

export const proofShare: Sourced<number> = { value: 0.75, ...published("kline-ag"), says: "of proof load" };

/** Coarse pitch by diameter, both mm, of "M10" without a pitch (ISO 261). */
export const coarseGround: Ground = memory;
export const coarsePitch: ReadonlyMap<number, number> = new Map([
  [4, 0.7],
  [5, 0.8],
  [6, 1],
  [8, 1.25],
  [10, 1.5],
  [12, 1.75],
  [14, 2],
  [16, 2],
  [18, 2.5],
  [20, 2.5],
  [22, 2.5],
  [24, 3],
  [27, 3],
  [30, 3.5],
] as const);

/** A decimal thread is the next sixteenth of an inch when it is that near: .312 is 5/16. */
export const nearSixteenth: Sourced<number> = {
  value: 0.0015 * inch,
  basis: "judgement",
  source: "",
  says: "a decimal this near is meant for a sixteenth",
};

export const reuse: readonly (Ground & { id: string; says: string })[] = [
  {
    id: "straps",
    says: "straps, lock straps and self-locking plate bolts are used once: fit new ones",
    ...published("dana-lube"),
  },
  { id: "straps-dssm", says: "the same: straps and self-locking bolts are used once", ...published("dana-dssm") },
  { id: "straps-122sd", says: "the same: straps and their bolts are used once", ...published("freightliner-122sd") },
  { id: "grade", says: "never a bolt of a lower grade, and never one that was used before", ...published("dana-dssm") },
  { id: "u-bolt", says: "a U-bolt that is too tight crushes the cap", ...practice },
];

export const torqueFormula = formula(
  "tightening-torque",
  "T = K d F, F = 0.75 x proof x stress area",
  published("kline-ag"),
  "A general bolt of that grade. K varies widely with coating and oil. The torque of the joint's or vehicle's maker always comes first.",
);
export const inchAreaFormula = formula(
  "stress-area-inch",
  "A = pi/4 (d - 0.9743/n)^2, n threads per inch",
  memory,
  "Unified threads.",
);
export const metricAreaFormula = formula(
  "stress-area-metric",
  "A = pi/4 (d - 0.9382 p)^2",
  memory,
  "Metric ISO threads.",
);
