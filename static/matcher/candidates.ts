// Rows that come into question, found by an index and not by looking at every row: a
// chart of ten thousand rows must answer as fast as one of a hundred. Nothing is decided
// here. Whoever asks gets at least the rows in question, in the chart's order, and
// compares them as if they were all there are.
import type { Quantity } from "./types";
import type { KnownRow, KnownValue, Prepared } from "./prepared";

/** From least to greatest, mm; a quantity left out may be anything. */
export type Box = Partial<Record<Quantity, readonly [number, number]>>;

// The figures of one quantity of all ends, smallest first. Beside each stand its row and
// the least and greatest figure of the other quantity at that end; flat numbers, because
// hundreds are passed for each question. Ends without a figure come last, at Infinity.
interface Shelf {
  mm: Float64Array;
  rows: Int32Array;
  least: Float64Array;
  greatest: Float64Array;
  widest: Widest;
}

/** The greatest there is of a quantity, over all its figures, mm: what a box must be widened for. */
export interface Widest {
  limit: number;
  made: number;
  standard: number;
}

const shelves = new WeakMap<Prepared, Record<Quantity, Shelf>>();

function shelvesOf(chart: Prepared): Record<Quantity, Shelf> {
  const before = shelves.get(chart);
  if (before !== undefined) return before;
  const made = { cap: fill(chart, "cap"), across: fill(chart, "across") };
  shelves.set(chart, made);
  return made;
}

function fill(chart: Prepared, quantity: Quantity): Shelf {
  const found: { mm: number; row: number; span: readonly [number, number] }[] = [];
  const widest = { limit: 0, made: 0, standard: 0 };
  for (const { index, ends } of chart.rows) {
    for (const end of ends) {
      const value = end[quantity];
      const span = spanOf(quantity === "cap" ? end.across : end.cap);
      for (const figure of value === null ? [] : [value, ...value.others]) {
        found.push({ mm: figure.mm, row: index, span });
        for (const of of ["limit", "made", "standard"] as const) widest[of] = Math.max(widest[of], figure[of]);
      }
      if (value === null) found.push({ mm: Infinity, row: index, span });
    }
  }
  found.sort((a, b) => (a.mm === b.mm ? a.row - b.row : a.mm - b.mm));
  return {
    mm: Float64Array.from(found, (f) => f.mm),
    rows: Int32Array.from(found, (f) => f.row),
    least: Float64Array.from(found, (f) => f.span[0]),
    greatest: Float64Array.from(found, (f) => f.span[1]),
    widest,
  };
}

// What is not known may be anything.
function spanOf(value: KnownValue | null): readonly [number, number] {
  if (value === null) return [-Infinity, Infinity];
  const all = [value.mm, ...value.others.map((o) => o.mm)];
  return [Math.min(...all), Math.max(...all)];
}

export function widestFigure(chart: Prepared, quantity: Quantity): Widest {
  return shelvesOf(chart)[quantity].widest;
}

/** Rows that have an end with a figure inside the box for each of its quantities, or with no such figure; with their
 *  twins, in the chart's order. */
export function within(chart: Prepared, box: Box): readonly KnownRow[] {
  const by: Quantity = box.cap === undefined ? "across" : "cap";
  const range = box[by];
  if (range === undefined) return chart.rows;
  const [from, to] = box[by === "cap" ? "across" : "cap"] ?? [-Infinity, Infinity];
  const { mm, rows, least, greatest } = shelvesOf(chart)[by];
  const found = new Set<KnownRow>();
  const pass = (first: number, last: number): void => {
    for (let i = firstAbove(mm, first); i < mm.length && (mm[i] ?? Infinity) <= last; i++) {
      if ((least[i] ?? 0) > to || (greatest[i] ?? 0) < from) continue;
      const row = chart.rows[rows[i] ?? -1];
      if (row === undefined || found.has(row)) continue;
      for (const twin of chart.twins.get(row.size) ?? [row]) found.add(twin);
    }
  };
  pass(range[0], range[1]);
  pass(Infinity, Infinity);
  return [...found].sort((a, b) => a.index - b.index);
}

/** The first place in a rising list that holds this number or more. */
export function firstAbove(list: ArrayLike<number>, least: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle] ?? Infinity) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
