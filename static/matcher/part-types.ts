// The words of identifying in a table without joints: splines, flanges, shaft ends, or
// whatever a table's head declares. parts.go mirrors them in Go.
import type { Basis, Condition, Tool, Unit, Verdict } from "./types";

/** How readings are compared with a column; see tables/match.go. */
export type Match = "exact" | "outside" | "inside" | "circle";

/** From which hole to which a bolt circle is measured: its neighbour, or the farthest there is. */
export type Between = "next" | "farthest";

/** What of the two holes: the edges nearest to each other, those farthest apart, the same edge of both, or the centres. */
export type Edges = "outer" | "inner" | "same" | "centres";

// ---- table

export interface PartColumn {
  id: string;
  label: string;
  match: Match;
  least: string; // of plausible values, exact: mm of a length
  greatest: string;
  below?: string; // mm: the figure is nominal, and a good part may measure so much under it
  belowText?: string; // as the table has it
}

export interface PartFigure {
  is: string; // exact: mm of a length, or a count
  to?: string; // the upper end of a range
  half: string; // half the last printed digit, mm
  text: string; // as printed, with its unit
  basis: Basis;
}

/** One cell; a word where there is no figure. */
export type PartValue = (PartFigure & { others?: PartFigure[] }) | "unknown" | "none";

export interface PartRow {
  ref: string; // "pto-shafts/pto-type-1"
  name: string;
  also: string[];
  values: Record<string, PartValue>; // of the matched columns
  beside: { label: string; text: string }[]; // of the others: what else may tell two rows apart
}

export interface PartTable {
  format: 1;
  version: string; // of the chart
  id: string;
  title: string;
  cautions: string[];
  columns: PartColumn[]; // the matched ones
  rows: PartRow[];
}

// ---- query

export interface PartQuery {
  table: string;
  values: Record<string, string[]>; // by column: readings, or how many were counted
  between?: Between; // left out: next
  edges?: Edges; // left out: outer
  hole?: string[]; // diameter of one hole, where the edges need it
  unit?: Unit; // of a bare number; left out: a bare number is a complaint
  tool?: Tool; // left out: digital-caliper
  condition?: Condition; // left out: used
}

// ---- answer

/** A reading beside a figure, mm: `difference` is 0 inside a range, else to its nearer end. */
export interface PartComparison {
  column: string;
  label: string;
  measured: number; // mm, or a count
  chartText: string;
  difference: number;
  uncertainty: number; // expanded, about 99 %; 0 of a count
  unit: "mm" | "";
  agrees: boolean;
}

export interface PartFound {
  ref: string;
  name: string;
  basis: Basis; // the weakest of what was compared
  compared: PartComparison[];
  because: string;
}

/** What the readings of one column came to. */
export interface PartReading {
  column: string;
  label: string;
  used: string[];
  setAside: string[];
  value: number; // mm, or a count; of a bolt circle its diameter
  uncertainty: number; // expanded, about 95 %, of the reading alone
  unit: "mm" | "";
  why: string;
}

export interface PartComplaint {
  column: string; // a column, "hole-diameter", or "query"
  index: number;
  text: string;
  says: string;
}

export interface PartAnswer {
  verdict: Verdict;
  says: { head: string; because: string[]; next: string[] };
  rows: PartFound[]; // what is left, best first
  near: PartFound[]; // the nearest that do not match
  readings: PartReading[];
  complaints: PartComplaint[];
  cautions: string[]; // the table's own
  chart: { version: string };
}
