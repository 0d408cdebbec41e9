// Clips in print, float by source, and tolerance classes. Lengths are m.
import { derived, formula, limits, memory, published } from "./ground";
import type { SourceKey } from "./sources";
import type { Ground, Limit } from "./types";
import { inch } from "./units";

const mm = (list: readonly number[]) => list.map((x) => x / 1000);

/** Sets of clips. Where a source prints only a range, the list is empty. */
export const clipSets: readonly (Ground & {
  id: string;
  thicknesses: number[];
  least: number;
  most: number;
})[] = [
  set("mazda-81", [1.22, 1.24, 1.26, 1.28, 1.3, 1.32, 1.34, 1.36, 1.38]),
  set("toyota-tacoma", [1.384, 1.435, 1.486, 1.511, 1.537, 1.588, 1.638]),
  set("toyota-sequoia", [1.46, 1.49, 1.51, 1.52, 1.54, 1.56, 1.57, 1.59, 1.62, 1.64]),
  set("datsun-521", [2.0, 2.02, 2.04, 2.06, 2.08, 2.1, 2.12]),
  { id: "toyota", ...published("toyota"), thicknesses: [], least: 0.00218, most: 0.00257 },
];

function set(source: SourceKey, list: readonly number[]) {
  const thicknesses = mm(list);
  return {
    id: source,
    ...published(source),
    thicknesses,
    least: Math.min(...thicknesses),
    most: Math.max(...thicknesses),
  };
}

/** The play at which a maker says to renew; a clip that leaves more is no choice. */
export const renew: Limit = {
  id: "float-most-dana-dssm",
  of: "float",
  bound: "most",
  unit: "m",
  value: 0.006 * inch,
  says: "renew the joint above this",
  ...published("dana-dssm", "p. 4"),
};

export const floatLimits: Limit[] = [
  ...limits("float", "most", "m", [
    ["lr-1996", 0, published("lr-1996"), "after fitting: none"],
    ["toyota-none", 0, published("toyota"), "after fitting, some models: none"],
    ["datsun-521", 0.00002, published("datsun-521", "p. PD-4"), "after fitting, equal clips both sides"],
    ["toyota", 0.00005, published("toyota"), "after fitting, other models"],
  ]),
  renew,
  ...limits("float", "most", "m", [
    ["foton-bj1051", 0.00025, published("foton-bj1051", "p. 124"), "along the trunnions"],
  ]),
];

/** What a press fit of a cap is said to be; nobody prints it. */
export const interferenceLimits: Limit[] = [
  ...limits("clearance", "most", "m", [["mem", 0, memory, "a cap in a full-round ear is pressed: no clearance"]]),
  ...limits("clearance", "least", "m", [["mem", -0.00003, memory, "at most 0.03 mm tighter than the bore"]]),
];

/** Tolerances over steps of nominal size: over, up to, IT6 and IT7, m. h lies below the size, H above it. */
export const isoSteps: readonly (readonly [over: number, to: number, it6: number, it7: number])[] = [
  [0.018, 0.03, 13e-6, 21e-6],
  [0.03, 0.05, 16e-6, 25e-6],
  [0.05, 0.08, 19e-6, 30e-6],
];
export const isoGround: Ground = published("iso286");
export const isoUse: Ground = { basis: "common-practice", source: "" };

const notIn = "Bent ears, dirt under a clip and worn needles are not in it.";

export const outsideFormula = formula(
  "clip-float",
  "float = groove to groove - over the caps - clip - clip",
  published("toyota-sequoia"),
  `Yoke from groove to groove over the ears. ${notIn}`,
);
export const insideFormula = formula(
  "clip-float",
  "float = ear to ear - inner groove faces - clip - clip",
  { basis: "common-practice", source: "" },
  `Yoke from ear to ear over the machined inner faces. ${notIn}`,
);
export const uncertaintyFormula = formula(
  "float-uncertainty",
  "U = sqrt(U_yoke^2 + U_joint^2 + (U_clip + U_clip)^2)",
  derived,
  "Both clips read with the same tool: its error is the same on both and adds straight.",
);
export const fitFormula = formula("fit", "clearance = bore - cap", derived, "Round parts at 20 °C.");
