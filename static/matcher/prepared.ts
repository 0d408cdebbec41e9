// The chart made ready for arithmetic: decimals parsed, each figure with its own
// standard uncertainty, each row with its size. Made once for each chart.
import type { Basis, Chart, ChartEnd, ChartFigure, ChartRow, ChartValue, Faces, Hold, Quantity } from "./types";
import type { Blurs } from "./absent";
import type { Shelves } from "./candidates";
import * as given from "./given";
import * as gum from "./gum";
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
  row: ChartRow;
  size: string; // rows with the same key are one size
  basis: Basis; // weakest of everything the row rests on
  ends: KnownEnd[];
}

export interface Prepared {
  version: string;
  rows: KnownRow[];
  together: Together; // what all sizes weigh before anything is measured
  twins: Map<string, KnownRow[]>; // by size, the row to speak of first in front
  conversions: KnownRow[]; // rows with two unlike ends
  faces: Map<Hold, Set<Faces>>; // those the chart has, by hold
  shelves?: Shelves; // made by candidates.ts and
  blurs?: Blurs; // by absent.ts, each when first needed
}

// From weakest to strongest.
const strength: Readonly<Record<Basis, number>> = { memory: 0, "common-practice": 1, measured: 2, published: 3 };

export function weaker(a: Basis, b: Basis): Basis {
  return strength[a] <= strength[b] ? a : b;
}

export function stronger(a: Basis, b: Basis): Basis {
  return weaker(a, b) === a ? b : a;
}

const ready = new WeakMap<Chart, Prepared>();

/** prepare refuses a chart of another format with a sentence the reader can act on. */
export function prepare(chart: Chart): Prepared {
  const before = ready.get(chart);
  if (before !== undefined) return before;
  if (chart.format !== 1) throw new Error(otherChart());
  const rows = chart.rows.map(known);
  const twins = new Map<string, KnownRow[]>();
  for (const row of rows) {
    const before = twins.get(row.size);
    if (before === undefined) twins.set(row.size, [row]);
    else before.push(row);
  }
  for (const same of twins.values()) if (same.length > 1) same.sort(leadFirst);
  const conversions = rows.filter((row) => row.ends.length === 2);
  const made = { version: chart.version, rows, together: together(twins), twins, conversions, faces: facesOf(rows) };
  ready.set(chart, made);
  return made;
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
function leadFirst(a: KnownRow, b: KnownRow): number {
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
  const lead = figure(v, quantity);
  const others: Figure[] = [];
  for (const o of v.others ?? []) {
    // "27 mm" beside 1.062 in is the same figure with fewer digits and proves nothing new.
    if (Math.abs(Number(o.mm) - lead.mm) > Number(o.half)) others.push(figure(o, quantity));
  }
  return { ...lead, others };
}

function figure(v: ChartFigure, quantity: Quantity): Figure {
  const limit = Math.max(Number(v.half), floor(v.basis, quantity));
  const made = gum.rectangular(quantity === "cap" ? given.madeCap : given.madeAcross);
  return {
    mm: Number(v.mm),
    limit,
    made,
    standard: Math.hypot(gum.rectangular(limit), made),
    half: Number(v.half),
    text: `${v.text} ${v.unit}`,
  };
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
