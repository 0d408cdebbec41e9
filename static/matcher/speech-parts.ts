// What a verdict on a spline, a flange or another part says: first the verdict, then the
// numbers beside the chart's, then what to do. Never a share of a hundred, and never that
// a part will do: only what was counted, measured and compared.
import type { Unit } from "./types";
import type { PartFit, PartRowFit } from "./part-fit";
import type { Between, Edges, PartColumn, PartRow, PartTable } from "./part-types";
import { both, list, some } from "./speech-words";

/** What the trade calls it, else its id. */
export const called = (row: PartRow): string => row.also[0] ?? row.name;

// ---- heads

const inTable = (table: PartTable): string => `in “${table.title}”`;

export const identified = (row: PartRow, table: PartTable): string => `This is ${called(row)} ${inTable(table)}.`;
export const possible = (row: PartRow, table: PartTable, doubt: PartDoubt): string =>
  `It may be ${called(row)} ${inTable(table)}, but ${but(doubt)}.`;
export const between = (rows: readonly PartRow[], table: PartTable): string =>
  `These readings leave ${rows.length} rows ${inTable(table)}: ${some(rows.map(called), 4)}.`;
export const notInChart = (table: PartTable): string => `This is in no row of “${table.title}”.`;
export const nothingYet = (): string => "There is no reading yet.";
export const unreadable = (): string => "These readings cannot be used as they are.";
export const cannotBelong = (): string => "These readings cannot all be of one part.";

// ---- doubts

export type PartDoubt =
  | { kind: "one-column"; label: string }
  | { kind: "unmeasured"; labels: string[] }
  | { kind: "set-aside"; label: string }
  | { kind: "near-row"; names: string[] }
  | { kind: "edge"; label: string }
  | { kind: "coarse"; label: string }
  | { kind: "chart-digits"; label: string; text: string }
  | { kind: "no-figure"; labels: string[] }
  | { kind: "other-figure"; label: string }
  | { kind: "memory" };

function but(doubt: PartDoubt): string {
  switch (doubt.kind) {
    case "one-column":
      return `only one thing was compared: ${lower(doubt.label)}`;
    case "unmeasured":
      return `${list(doubt.labels.map(lower))} ${doubt.labels.length === 1 ? "is" : "are"} still to be measured`;
    case "set-aside":
      return `one reading of the ${lower(doubt.label)} does not go with it`;
    case "near-row":
      return `${some(doubt.names, 3)} ${doubt.names.length === 1 ? "misses" : "miss"} by a hair only`;
    case "edge":
      return `its ${lower(doubt.label)} agrees only because the reading is no better`;
    case "coarse":
      return `the ${lower(doubt.label)} and the chart's figure together are too coarse to name it outright`;
    case "chart-digits":
      return `the chart prints its ${lower(doubt.label)} as ${doubt.text}, without more digits`;
    case "no-figure":
      return `the chart has no figure of its ${list(doubt.labels.map(lower))}`;
    case "other-figure":
      return `its ${lower(doubt.label)} agrees only with another figure given for it`;
    case "memory":
      return "the chart's figures for it are recalled, not published";
  }
}

/** The doubts after the first, each as a sentence. */
export const furtherDoubt = (doubt: PartDoubt): string => `Also, ${but(doubt)}.`;

export function settle(doubt: PartDoubt): string | undefined {
  switch (doubt.kind) {
    case "unmeasured":
      return `Measure what is missing: ${list(doubt.labels.map(lower))}.`;
    case "set-aside":
      return `Take the ${lower(doubt.label)} again, two or three times.`;
    case "near-row":
    case "edge":
    case "coarse":
      return "Take it again with a caliper, on clean metal, two or three times.";
    case "memory":
      return "Have the size confirmed before you order: the chart has it from memory.";
    case "chart-digits":
    case "no-figure":
    case "other-figure":
    case "one-column":
      return "Compare the old part with the new one before you order.";
  }
}

// ---- what was compared

export function because(fit: PartRowFit, lead: Unit): string {
  const parts = fit.fits.map((f) => beside(f, lead));
  for (const column of fit.without) parts.push(`${lower(column.label)}: this part has none`);
  for (const column of fit.unknown) parts.push(`${lower(column.label)}: the chart has no figure`);
  const text = parts.join("; ");
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}

function beside(fit: PartFit, lead: Unit): string {
  const { compared, taken } = fit;
  const name = lower(compared.label);
  if (taken.column.match === "exact")
    return `${name}: you counted ${compared.measured}, the chart has ${compared.chartText}`;
  const chart = `${taken.column.belowText === undefined ? "the chart has" : "its nominal figure is"} ${compared.chartText}`;
  const read = `${name}: ${both(compared.measured, lead)}, ${chart}`;
  const off = compared.difference;
  const bound = `±${both(compared.uncertainty, lead)}`;
  if (off === 0) return `${read}${taken.column.belowText === undefined ? "" : ", and a part may measure less"}`;
  const way = `${both(Math.abs(off), lead)} ${off > 0 ? "over" : "under"}`;
  const from = taken.column.belowText === undefined || off > 0 ? "" : " what a good one may still measure";
  return compared.agrees ? `${read}: ${way}${from}, within ${bound}` : `${read}: ${way}${from}, more than ${bound}`;
}

export const nominal = (column: PartColumn): string =>
  `The ${lower(column.label)} in this table is a name: up to ${column.belowText ?? ""} less is taken for it, a rule of this chart.`;

export const short = (row: PartRow, label: string, by: number, lead: Unit): string =>
  `Beside ${called(row)} the ${lower(label)} alone is off: it reads ${both(by, lead)} short. Wear does that, and so does another part.`;

export const miscounted = (row: PartRow, label: string, counted: number, chart: string): string =>
  `Beside ${called(row)} the ${lower(label)} alone differ: ${counted} counted, ${chart} in the chart.`;

// ---- what to do next

export const putRight = (): string => "Change or remove what is marked, then look again.";
export const measureAll = (labels: readonly string[]): string =>
  `Measure ${list(labels.map(lower))}, and enter each reading.`;
export const spreadTooFar = (label: string, apart: number, lead: Unit): string =>
  `The readings of the ${lower(label)} lie ${both(apart, lead)} apart, too far to take a mean. Clean it, and measure in two directions.`;
export const countAgain = (): string => "Mark one with chalk, go round once, and count again.";
export const unworn = (): string =>
  "Measure where nothing has run on it, near the end. If it is worn, say so under condition: that widens what may match.";
export const checkTable = (): string =>
  "It may be of another kind, with a table of its own, or in no chart at all. Nothing here is near enough to order by.";
export const lookAlike = (): string =>
  "What was checked is counts and sizes alone: not wear, fit, material, torque or speed. Lay the new part beside the old one before you order.";
export const secondReading = (labels: readonly string[]): string =>
  `Take a second reading of the ${list(labels.map(lower))}: one reading can hide a slip.`;

/** What tells rows apart that are left: figures of a column, or other words of the table. */
export const tellApart = (label: string, expect: readonly (readonly [string, string])[], measured: boolean): string =>
  `${measured ? "Measure" : "Look at"} the ${lower(label)}: ${list(
    expect.map(([name, text]) => `${text} for ${name}`),
    "or",
  )}.`;
export const nothingTells = (): string => "The chart has nothing that tells them apart.";

// ---- what the readings came to

export function why(used: number, aside: number, uncertainty: number, largest: string, lead: Unit): string {
  const mean = used === 1 ? "One reading" : `Mean of ${used} readings`;
  const out = aside === 0 ? "" : ` ${aside === 1 ? "One was" : `${aside} were`} set aside as far from the others.`;
  return `${mean}, good to about ±${both(uncertainty, lead)}; most of that is ${largest}.${out}`;
}

export const counted = (): string => "Counted.";

export interface Chord {
  holes: number;
  between: Between;
  edges: Edges;
  factor: number;
  centres: number; // mm
  hole?: number; // mm
  circle: number; // mm
}

export function fromChord(c: Chord, lead: Unit): string {
  const onward = c.between === "next" ? "neighbouring holes" : "the two holes farthest apart";
  const steps: Record<Edges, string> = {
    outer: `From outer edge to outer edge, less a hole of ${both(c.hole ?? 0, lead)}`,
    inner: `From inner edge to inner edge, and a hole of ${both(c.hole ?? 0, lead)}`,
    same: "From one edge to the same edge of the other hole",
    centres: "From centre to centre",
  };
  return `${steps[c.edges]}: ${both(c.centres, lead)} between the centres of ${onward}. Of ${c.holes} holes that is ${c.factor.toFixed(5)} of the bolt circle, which makes ${both(c.circle, lead)}.`;
}

/** A label inside a sentence; an abbreviation such as PTO stays as it is. */
function lower(label: string): string {
  return /^[A-Z][a-z]/.test(label) ? label.slice(0, 1).toLowerCase() + label.slice(1) : label;
}
