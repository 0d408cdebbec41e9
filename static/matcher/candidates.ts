// Rows that come into question, found by an index and not by looking at every row: a
// chart of ten thousand rows must answer as fast as one of a hundred. Nothing is decided
// here. Whoever asks gets at least the rows in question, in the chart's order, and
// compares them as if they were all there are.
import type { Quantity } from "./types";
import type { Figure, KnownRow, KnownValue, Prepared } from "./prepared";

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

export type Shelves = Readonly<Record<Quantity, Shelf>>;

// They are kept with the chart and not here: the late script has this file once more.
function shelvesOf(chart: Prepared): Shelves {
  chart.shelves ??= { cap: fill(chart, "cap"), across: fill(chart, "across") };
  return chart.shelves;
}

function fill(chart: Prepared, quantity: Quantity): Shelf {
  const found: { mm: number; row: number; beside: KnownValue | null }[] = [];
  const widest = { limit: 0, made: 0, standard: 0 };
  const wider = (figure: Figure): void => {
    for (const of of ["limit", "made", "standard"] as const) widest[of] = Math.max(widest[of], figure[of]);
  };
  for (const { index, ends } of chart.rows) {
    for (const end of ends) {
      const value = end[quantity];
      const beside = quantity === "cap" ? end.across : end.cap;
      found.push({ mm: value === null ? Infinity : value.mm, row: index, beside });
      if (value === null) continue;
      wider(value);
      for (const other of value.others) {
        found.push({ mm: other.mm, row: index, beside });
        wider(other);
      }
    }
  }
  found.sort((a, b) => (a.mm === b.mm ? a.row - b.row : a.mm - b.mm));
  const shelf = {
    mm: new Float64Array(found.length),
    rows: new Int32Array(found.length),
    least: new Float64Array(found.length),
    greatest: new Float64Array(found.length),
    widest,
  };
  found.forEach(({ mm, row, beside }, i) => {
    shelf.mm[i] = mm;
    shelf.rows[i] = row;
    shelf.least[i] = beside === null ? -Infinity : endmost(Math.min, beside); // what is not known may be anything
    shelf.greatest[i] = beside === null ? Infinity : endmost(Math.max, beside);
  });
  return shelf;
}

function endmost(of: (a: number, b: number) => number, value: KnownValue): number {
  let mm = value.mm;
  for (const other of value.others) mm = of(mm, other.mm);
  return mm;
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
