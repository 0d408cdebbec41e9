// The chart made ready for arithmetic: decimals parsed, each figure with its own
// standard uncertainty, each row with its size. Made once for each chart.
import type { Basis, Chart, ChartEnd, ChartFigure, ChartRow, ChartValue, Faces, Hold, Quantity } from "./types";
import { kindsOf, type Kind } from "./absent";
import type { Look, Shelves } from "./candidates";
import * as given from "./given";
import * as gum from "./gum";
import type { Directory } from "./pieces-types";
import { together, type Together } from "./prior";
import { otherChart } from "./speech-query";

export interface Figure {
  mm: number;
  limit: number; // how far the true figure may lie from it, either way
  made: number; // standard uncertainty of making the part
  standard: number; // of both
  half: number; // half of the last printed digit
  text: string; // the chart's own digits and unit
}

export interface KnownValue extends Figure {
  others: Figure[]; // other figures that say something else than the leading one
}

export interface KnownEnd {
  hold: Hold;
  holdBasis: Basis;
  faces: Faces;
  facesBasis: Basis;
  cap: KnownValue | null;
  across: KnownValue | null;
}

export interface KnownRow {
  index: number;
  row: Named;
  size: string; // rows with the same key are one size
  basis: Basis; // weakest of everything the row rests on
  ends: KnownEnd[];
}

/** What is said of a row besides its figures. */
export type Named = Omit<ChartRow, "ends" | "size">;

/** The greatest there is of a quantity, over all its figures, mm: what a box must be widened for. */
export interface Widest {
  limit: number;
  made: number;
  standard: number;
}

/** The vaguest of some rows. */
export type Vaguest = Readonly<Record<Quantity, Widest>>;

/** Rows that are held and indexed together: all of a chart, or a piece of one that is too large to be fetched whole. */
export interface Part {
  rows(): readonly KnownRow[]; // for whoever makes an index of them; a piece makes them anew
  row(n: number): KnownRow | undefined; // the n-th of these
  widest: Vaguest;
  shelves?: Shelves; // made by candidates.ts when first needed
}

export interface Prepared {
  version: string;
  together: Together; // what all sizes weigh before anything is measured
  plain: number; // how many rows are no conversion joints
  kinds: readonly Kind[]; // and where they lie
  faces: ReadonlyMap<Hold, ReadonlySet<Faces>>; // those the chart has, by hold
  parts(look: Look): readonly Part[]; // all that is looked for is in one of them
  twins(row: KnownRow): readonly KnownRow[]; // the rows of its size, the one to speak of first in front
  /** Files that were asked for and are not here. While there are any, nothing that was found is an answer. */
  missing?: Set<number>;
  /** Whether rows are among them, and not only what rows are called. */
  partial?: boolean;
}

// From weakest to strongest.
const strength: Readonly<Record<Basis, number>> = { memory: 0, "common-practice": 1, measured: 2, published: 3 };

export function weaker(a: Basis, b: Basis): Basis {
  return strength[a] <= strength[b] ? a : b;
}

export function stronger(a: Basis, b: Basis): Basis {
  return weaker(a, b) === a ? b : a;
}

/** A chart held whole, or one in pieces that was made ready beside it. */
export type AnyChart = Chart | Directory;

const ready = new WeakMap<AnyChart, Prepared>();

/** hold has a chart that was made ready elsewhere answered for. */
export function hold(chart: AnyChart, as: Prepared): void {
  ready.set(chart, as);
}

/** prepare refuses a chart of another format with a sentence the reader can act on. */
export function prepare(chart: AnyChart): Prepared {
  const before = ready.get(chart);
  if (before !== undefined) return before;
  if (chart.format !== 1) throw new Error(otherChart());
  const rows = chart.rows.map(known);
  const twins = sizesOf(rows);
  const widest = { cap: widestOf(rows, "cap"), across: widestOf(rows, "across") };
  const all = [{ rows: () => rows, row: (n: number) => rows[n], widest }];
  const made: Prepared = {
    version: chart.version,
    together: together(twins.values()),
    plain: rows.filter(isPlain).length,
    kinds: kindsOf(rows),
    faces: facesOf(rows),
    parts: () => all,
    twins: (row) => twins.get(row.size) ?? [row],
  };
  ready.set(chart, made);
  return made;
}

export function isPlain(row: KnownRow): boolean {
  return row.ends.length === 1;
}

/** Rows by their size, the one to speak of first in front. */
export function sizesOf(rows: readonly KnownRow[]): Map<string, KnownRow[]> {
  const sizes = new Map<string, KnownRow[]>();
  for (const row of rows) {
    const before = sizes.get(row.size);
    if (before === undefined) sizes.set(row.size, [row]);
    else before.push(row);
  }
  for (const same of sizes.values()) if (same.length > 1) same.sort(leadFirst);
  return sizes;
}

function widestOf(rows: readonly KnownRow[], quantity: Quantity): Widest {
  const out = { limit: 0, made: 0, standard: 0 };
  for (const { ends } of rows) {
    for (const end of ends) {
      const value = end[quantity];
      if (value !== null) for (const figure of [value, ...value.others]) widen(out, figure);
    }
  }
  return out;
}

export function widen(widest: Widest, figure: Widest): void {
  widest.limit = Math.max(widest.limit, figure.limit);
  widest.made = Math.max(widest.made, figure.made);
  widest.standard = Math.max(widest.standard, figure.standard);
}

function facesOf(rows: readonly KnownRow[]): Map<Hold, Set<Faces>> {
  const out = new Map<Hold, Set<Faces>>();
  for (const row of rows) {
    for (const { hold, faces } of row.ends) {
      const before = out.get(hold);
      if (before === undefined) out.set(hold, new Set([faces]));
      else before.add(faces);
    }
  }
  return out;
}

// Of twins the one to speak of first: strongest figures, then strongest hold and faces,
// then most digits, then the chart's order.
export function leadFirst(a: KnownRow, b: KnownRow): number {
  return (
    strength[b.basis] - strength[a.basis] ||
    strength[held(b)] - strength[held(a)] ||
    vague(a) - vague(b) ||
    a.index - b.index
  );
}

function held(row: KnownRow): Basis {
  return row.ends.map((e) => weaker(e.holdBasis, e.facesBasis)).reduce(weaker, "published");
}

function vague(row: KnownRow): number {
  let sum = 0;
  for (const end of row.ends) sum += (end.cap?.standard ?? 0) + (end.across?.standard ?? 0);
  return sum;
}

function known(row: ChartRow, index: number): KnownRow {
  let basis = row.basis;
  for (const end of row.ends) {
    if (end.cap !== null) basis = weaker(basis, end.cap.basis);
    if (end.across !== null) basis = weaker(basis, end.across.basis);
  }
  // A conversion joint is never one size with another row.
  const size = row.ends.length === 1 ? `size ${row.size}` : row.ref;
  return { index, row, size, basis, ends: row.ends.map(knownEnd) };
}

function knownEnd(end: ChartEnd): KnownEnd {
  return {
    hold: end.hold,
    holdBasis: end.holdBasis,
    faces: end.faces,
    facesBasis: end.facesBasis,
    cap: knownValue(end.cap, "cap"),
    across: knownValue(end.across, "across"),
  };
}

function knownValue(v: ChartValue | null, quantity: Quantity): KnownValue | null {
  if (v === null) return null;
  const read = (f: ChartFigure): Figure =>
    figure(quantity, f.basis, Number(f.mm), Number(f.half), `${f.text} ${f.unit}`);
  const lead = read(v);
  return { ...lead, others: (v.others ?? []).map(read).filter((o) => !saysTheSame(lead, o)) };
}

/** "27 mm" beside 1.062 in is the same figure with fewer digits and proves nothing new. */
export function saysTheSame(lead: Figure, other: Figure): boolean {
  return Math.abs(other.mm - lead.mm) <= other.half;
}

export function figure(quantity: Quantity, basis: Basis, mm: number, half: number, text: string): Figure {
  const limit = Math.max(half, floor(basis, quantity));
  const made = gum.rectangular(quantity === "cap" ? given.madeCap : given.madeAcross);
  return { mm, limit, made, standard: Math.hypot(gum.rectangular(limit), made), half, text };
}

function floor(basis: Basis, quantity: Quantity): number {
  switch (basis) {
    case "published":
    case "measured":
      return 0;
    case "common-practice":
      return given.commonPractice;
    case "memory":
      return quantity === "cap" ? given.memoryCap : given.memoryAcross;
  }
}
