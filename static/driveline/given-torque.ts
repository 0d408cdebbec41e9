// Factors of torque at the shaft, of friction and of machine joints.
import { derived, formula, memory, published } from "./ground";
import type { Ground, Sourced } from "./types";
import { degree } from "./units";

/** Factors of the lowest-gear torque by source: of the engine's rating, of the gearbox, of a transfer case. */
export const lowGear: readonly (Ground & {
  id: string;
  says: string;
  net: number;
  gross: number;
  automatic: number;
  manual: number;
  transfer: number;
})[] = [
  {
    id: "dana-j3311",
    says: "net, or 0.95 of gross; gearbox 0.80 automatic, 0.85 manual; transfer case 0.95",
    ...published("dana-j3311", "p. 2"),
    net: 1,
    gross: 0.95,
    automatic: 0.8,
    manual: 0.85,
    transfer: 0.95,
  },
  {
    id: "cat-rehs2891",
    says: "0.95 of net, or 0.85 of gross; gearbox 0.95; nothing said of a transfer case",
    ...published("cat-rehs2891"),
    net: 0.95,
    gross: 0.85,
    automatic: 0.95,
    manual: 0.95,
    transfer: 1,
  },
];

export const slipFriction: Sourced<number> = { value: 0.71, ...published("dana-j3311", "p. 2"), says: "tyre on road" };
export const axleEfficiency: Sourced<number> = {
  value: 0.95,
  ...published("dana-j3311", "p. 2"),
  says: "of the axle; 11.4 in the printed form is 12 x 0.95",
};

export const splineFriction: readonly (Sourced<number> & { id: "greased" | "coated" })[] = [
  { id: "greased", value: 0.11, ...published("dana-gwb"), says: "steel on steel, greased" },
  { id: "coated", value: 0.08, ...published("dana-gwb"), says: "plastic-coated" },
];

/** Torque factors of machine joints (DIN 808) at the printed angles, rad; `bearing` empty where it is not said. */
export const machineJoint: readonly (Ground & { bearing: "needle" | "plain" | ""; angle: number; factor: number })[] = [
  { bearing: "", angle: 10 * degree, factor: 1, ...published("winco-808") },
  { bearing: "needle", angle: 18 * degree, factor: 1.43, ...published("winco-808") },
  { bearing: "plain", angle: 30 * degree, factor: 2.25, ...published("winco-808") },
];

// ---- formulas

export const lowGearFormula = formula(
  "low-gear-torque",
  "T = T_engine x rating x gear x gearbox x stall x transfer ratio x transfer",
  published("dana-j3311", "p. 2"),
  "Steady pull at the engine's greatest torque. Shock, as when a clutch is dropped, is not in it.",
);
export const slipFormula = formula(
  "wheel-slip-torque",
  "T = friction x W x r / (axle ratio x axle efficiency)",
  published("dana-j3311", "p. 2"),
  "Level road. Weight that shifts to the axle when pulling away must be in its load.",
);
export const chooseFormula = formula(
  "smaller-torque",
  "road use: the smaller of both, but no more than one series below the one for the low-gear torque; off the road: the low-gear torque",
  published("dana-j3311", "p. 2"),
  "A rule for choosing a series of that maker.",
);
export const powerFormula = formula("torque-of-power", "T = P / w", derived, "Steady running, no losses.");
export const torsionFormula = formula(
  "tube-torsion",
  "tau = 16 T D / (pi (D^4 - d^4)); twist = 32 T L / (G pi (D^4 - d^4))",
  published("gere", "problem 3.3-8"),
  "Even round tube or bar, elastic. Welds, seams, dents, splines and fatigue are left out.",
);
export const thinFormula = formula(
  "tube-thin",
  "tau = T / (2 pi r^2 t)",
  published("ntnu"),
  "Thin walls; r to the middle of the wall.",
);
export const yieldFormula = formula(
  "shear-yield",
  "tau at yield = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)",
  memory,
  "First yield of sound metal under steady torque; nothing is taken off for shock or fatigue.",
);
export const coupleFormula = formula(
  "secondary-couple",
  "driving shaft 0 ... T tan b, driven shaft T sin b ... 0, a quarter turn apart",
  published("klein", "section 7"),
  "No friction. Twice a turn; which shaft has which is derived from the couple standing square to the cross, and so is the driven shaft's greatest past 45 degrees, T / (2 cos b).",
);
export const trunnionFormula = formula(
  "trunnion-load",
  "F = T / (2 R cos b)",
  derived,
  "Load shared evenly by two trunnions; R to the middle of the needles.",
);
export const supportFormula = formula(
  "support-forces",
  "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = with (a + b), E, F alike with e, f; a quarter turn later T tan b1 / a, T sin b2 / (f cos b1)",
  published("dana-gwb", "p. 46"),
  "Z takes the difference, W the sum. One plane, yokes in line; the two positions only, weight and unbalance not in it.",
);
export const thrustFormula = formula(
  "spline-thrust",
  "F = T mu cos b / r",
  published("dana-gwb"),
  "Sliding under full torque.",
);
export const factorFormula = formula(
  "machine-joint-factor",
  "T rated = k T",
  published("winco-808"),
  "Three points are printed. Between them the next higher is taken; up to 10 degrees k = 1.",
);
