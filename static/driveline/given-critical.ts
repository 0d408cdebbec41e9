// Materials, allowed fractions and other people's constants of the critical speed.
import type { Material } from "./critical";
import { derived, formula, limits, memory, published } from "./ground";
import type { Ground, Limit, Sourced } from "./types";
import { inch, pound, psi, revPerMinute } from "./units";

/** Young's modulus (Pa), density (kg/m³). */
export const materials: Record<Material, { modulus: Sourced<number>; density: Sourced<number> }> = {
  steel: {
    modulus: { value: 206e9, ...memory, says: "steel; with this density 0.3 % below the constant IMS prints" },
    density: { value: 7850, ...memory, says: "steel" },
  },
  aluminium: {
    modulus: { value: 70e9, ...memory, says: "aluminium" },
    density: { value: 2700, ...memory, says: "aluminium" },
  },
};

export const allowedFractions: Limit[] = limits("fraction", "most", "", [
  ["ims-industrial", 0.65, published("ims"), "industrial shafts"],
  ["ims-automotive", 0.7, published("ims"), "vehicle shafts"],
  ["mem", 0.75, memory, "a guide of SAE as recalled"],
  ["mem-outboard", 0.75 * 0.92, memory, "the same with the slip outside the joints"],
  ["mem-inboard", 0.75 * 0.75, memory, "the same with the slip between the joints"],
]);

/** n = k sqrt(D² + d²) / L² as others print it; here in SI, so that k is m·rad/s. */
export const constants: readonly (Ground & { id: string; material: Material; says: string; k: number })[] = [
  {
    id: "ims-mm",
    material: "steel",
    says: "1.21e8, mm and rev/min",
    k: 1.21e8 * 0.001 * revPerMinute,
    ...published("ims"),
  },
  {
    id: "ims-inch",
    material: "steel",
    says: "4.8e6, in and rev/min",
    k: 4.8e6 * inch * revPerMinute,
    ...published("ims"),
  },
  { id: "mem-29", material: "steel", says: "4.705e6, in and rev/min", k: 4.705e6 * inch * revPerMinute, ...memory },
  { id: "mem-30", material: "steel", says: "4.764e6, in and rev/min", k: 4.764e6 * inch * revPerMinute, ...memory },
  { id: "mem-al", material: "aluminium", says: "4.75e6, in and rev/min", k: 4.75e6 * inch * revPerMinute, ...memory },
  {
    id: "psi-al",
    material: "aluminium",
    says: "from 10e6 psi and 0.098 lb/in³",
    k: (Math.PI ** 2 / 4) * Math.sqrt((10e6 * psi) / ((0.098 * pound) / inch ** 3)),
    ...memory,
  },
];

export const criticalFormula = formula(
  "critical-speed",
  "w = (pi/L)^2 sqrt(E I / m') = (pi^2/4) sqrt(E/rho) sqrt(D^2 + d^2) / L^2",
  published("ims"),
  "First bending mode of an even, slender tube on rigid hinges. Weight of yokes, give of joints and hangers and shear are left out, so the real one is lower: about 2 % by shear alone at 14 diameters long.",
);
export const halfFormula = formula(
  "half-critical",
  "w / 2",
  { basis: "common-practice", source: "" },
  "A joint shakes its shaft twice a turn, so steady running near half the critical speed is to be avoided.",
);
export const tubeFormula = formula(
  "tube-for-length",
  "D = t + sqrt((D^2 + d^2)/2 - t^2)",
  derived,
  "From the critical speed turned round.",
);
export const massFormula = formula("tube-mass", "m = pi/4 (D^2 - d^2) L rho", derived, "The tube alone.");
