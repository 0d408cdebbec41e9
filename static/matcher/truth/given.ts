// The error model: what the bench takes the world to do to a reading. It is stated here
// apart from the core's constants, which must not be what they are judged by. Figures
// without a source are our judgement. Lengths are millimetres.
import type { Condition, Tool } from "../types";

export interface Range {
  low: number;
  high: number;
}

/** What an instrument does: limit of error (DIN 862, JIS B 7516), step, one person's repeatability. */
export interface Instrument {
  limit: number; // to 100 mm
  limitAbove: number;
  step: number;
  stepInch: number; // mm
  cap: number; // standard deviation of one reading of a cap
  across: number;
}

export const instruments: Partial<Record<Tool, Instrument>> = {
  "digital-caliper": { limit: 0.02, limitAbove: 0.03, step: 0.01, stepInch: 0.0127, cap: 0.012, across: 0.04 },
  "vernier-caliper": { limit: 0.02, limitAbove: 0.03, step: 0.02, stepInch: 0.0254, cap: 0.015, across: 0.04 },
  "steel-rule": { limit: 0.15, limitAbove: 0.15, step: 0.5, stepInch: 25.4 / 64, cap: 0.35, across: 0.35 },
};

/** Between the faces of a groove, added to the limit (DIN 862, inside readings). */
export const grooveLimit = 0.02;

/** What the condition does to all readings of a quantity: an even spread, one-sided. */
export const wear: Record<Condition, { cap: Range; across: Range }> = {
  new: { cap: { low: 0, high: 0 }, across: { low: 0, high: 0.02 } },
  used: { cap: { low: -0.04, high: 0 }, across: { low: -0.02, high: 0.04 } },
  worn: { cap: { low: -0.15, high: 0 }, across: { low: -0.05, high: 0.1 } },
  rusted: { cap: { low: -0.05, high: 0.3 }, across: { low: -0.05, high: 0.3 } },
};

/** A cap that does not sit home lengthens all readings across. */
export const unseated = { often: 0.1, mean: 0.04, most: 0.2 };
/** Dirt under a jaw lengthens one reading. */
export const dirt = { often: 0.05, mean: 0.05, most: 0.3 };
/** A gross error of one reading, either way. */
export const outlier = { often: 0.01, low: 0.3, high: 4 };

/** Caps are ground to h6 (ISO 286): up to this below the nominal. */
export const madeCap = 0.016;
/** Joints of one size differ across: standard deviation, cut at twice it (selective clips, 1.22 to 1.38 mm). */
export const madeAcross = 0.04;

/** How far the nominal may lie from the printed figure, beside half the last digit. */
export const offBy: Record<"published" | "measured" | "common-practice" | "memory", { cap: number; across: number }> = {
  published: { cap: 0, across: 0 },
  measured: { cap: 0, across: 0 },
  "common-practice": { cap: 0.04, across: 0.05 },
  memory: { cap: 0.2, across: 0.4 },
};

/** How often a joint is made to another figure than the row's first, where sources give another and the column says so. */
export const otherFigure = 0.1;

/** How often the person reads in inches, for a row printed in inches and for one in millimetres. */
export const inchReaders = { in: 0.6, mm: 0.1 };

/** Of joints neither worn nor rusted, the share that is new. */
export const newShare = 0.2;

/** How often a row is met on a bench, by what its figures rest on, where the column says so. */
export const often: Record<"published" | "measured" | "common-practice" | "memory", number> = {
  published: 1,
  measured: 1,
  "common-practice": 0.8,
  memory: 0.3,
};

/** The model in words, printed before the table. */
export const statement: readonly string[] = [
  "Part made: nominal even within half the last printed digit; common practice off by up to 0.04 (cap) and 0.05 mm (across), memory by 0.2 and 0.4; cap 0 to 0.016 mm below nominal (h6); across s = 0.04 mm, cut at 0.08.",
  "Instrument: error even within its limit (0.02/0.03 mm caliper, 0.15 mm rule; +0.02 in a groove), one for each quantity of a set; read to 0.01 mm or 0.0005 in, rule 0.5 mm or 1/64 in.",
  "Hand: s of one reading 0.012 mm (cap), 0.04 mm (across); rule 0.35 mm.",
  "Condition, even, all readings: new cap 0, across 0..0.02; used cap -0.04..0, across -0.02..0.04; worn cap -0.15..0, across -0.05..0.10; rusted -0.05..0.30. Told rightly.",
  "Not seated: 10 % of sets, across longer by 0.04 mm on average, to 0.2. Dirt: 5 % of readings, longer by 0.05 mm on average, to 0.3.",
  "Gross error: 1 % of readings, 0.3 to 4 mm either way.",
];
