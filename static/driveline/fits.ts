// A cap in its bore: by the tolerance classes of ISO 286, and as measured.
import { answer, check, refuse } from "./check";
import { below } from "./clips";
import * as given from "./given-fit";
import * as range from "./given-ranges";
import type { Ground, Limit, MeasuredLength, Outcome, Ranges } from "./types";

export type CapClass = "h6" | "h7";
export type BoreClass = "H7";

export interface FitInput {
  size: number; // nominal diameter, m; the printed limits reach from 18 to 80 mm
  cap: CapClass;
  bore: BoreClass;
}

/** Limits of a fit, m. A clearance below zero is interference. */
export interface Fit {
  step: [over: number, to: number]; // the step of nominal sizes, m
  cap: [least: number, most: number]; // diameter, m
  bore: [least: number, most: number];
  clearance: [least: number, most: number];
  ground: Ground; // of the tolerance values
  use: Ground; // that makers use this fit
}

export const isoFitRanges: Ranges<FitInput> = {
  size: range.fitSize,
  cap: { words: ["h6", "h7"] },
  bore: { words: ["H7"] },
};

/** The limits of a cap and its bore, by tolerance class. */
export function isoFit(input: FitInput): Outcome<Fit> {
  const wrong = check(input, isoFitRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { size } = input;
  // "Over 18 up to 30": a size belongs to the step that ends with it.
  const step = given.isoSteps.find(([, to]) => size <= to * (1 + 1e-12)) ?? given.isoSteps[0];
  if (step === undefined) return refuse(wrong);
  const [over, to, it6, it7] = step;
  const tolerance = input.cap === "h6" ? it6 : it7;
  return answer(
    {
      step: [over, to],
      cap: [size - tolerance, size],
      bore: [size, size + it7],
      clearance: [0, it7 + tolerance],
      ground: given.isoGround,
      use: given.isoUse,
    },
    [given.fitFormula],
  );
}

export interface CapInBoreInput {
  cap: MeasuredLength; // diameter
  bores: MeasuredLength[]; // of the yoke's ears, 1 to 4
}

export interface CapInBore {
  bores: {
    clearance: number; // bore - cap, m; below zero the cap is larger
    uncertainty: number; // expanded, m
    tightProbability: number; // that the cap is larger than the bore
  }[];
  limits: Limit[];
}

const diameter = { ...range.cap, measured: true } as const;

export const capInBoreRanges: Ranges<CapInBoreInput> = {
  cap: diameter,
  bores: { ...diameter, count: [1, 4] },
};

/** A measured cap beside the measured bores of a yoke. */
export function capInBore(input: CapInBoreInput): Outcome<CapInBore> {
  const wrong = check(input, capInBoreRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { cap } = input;
  return answer(
    {
      bores: input.bores.map((bore) => {
        const clearance = bore.value - cap.value;
        const uncertainty = Math.hypot(bore.uncertainty, cap.uncertainty);
        return { clearance, uncertainty, tightProbability: below(-clearance, uncertainty) };
      }),
      limits: given.interferenceLimits,
    },
    [given.fitFormula],
  );
}
