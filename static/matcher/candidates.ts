// Rows that come into question, found by an index and not by looking at every row: a
// chart of ten thousand rows must answer as fast as one of a hundred. Nothing is decided
// here. Whoever asks gets at least the rows in question, and
// compares them as if they were all there are.
import type { Quantity } from "./types";
import type { MeasuredEnd } from "./agree";
import type { Measured } from "./estimate";
import type { KnownRow, KnownValue, Part, Prepared, Vaguest } from "./prepared";
import { quantities } from "./words";

declare const capspanInPieces: boolean; // put in by the bundler (static/bundle.go)

/** From least to greatest, mm; a quantity left out may be anything. */
export type Box = Partial<Record<Quantity, readonly [number, number]>>;

/** The box to look into among rows as vague as that: a vague figure may lie farther off and still matter. */
export type Look = (widest: Vaguest) => Box;

/** A box round what was measured, as far to both sides as `reach` says, mm. */
export function boxRound(end: MeasuredEnd | undefined, reach: (m: Measured, q: Quantity) => number): Box {
  const box: Box = {};
  for (const q of quantities) {
    const m = end?.[q];
    if (m !== undefined) box[q] = [m.mm - reach(m, q), m.mm + reach(m, q)];
  }
  return box;
}

// The figures of one quantity of all ends of a part, smallest first. Beside each stand its row and
// the least and greatest figure of the other quantity at that end; flat numbers, because
// hundreds are passed for each question. Ends without a figure come last, at Infinity.
export interface Shelf {
  mm: Float64Array;
  rows: Int32Array;
  least: Float64Array;
  greatest: Float64Array;
}

export type Shelves = Readonly<Record<Quantity, Shelf>>;

// They are kept with the part and not here: the late script has this file once more.
function shelvesOf(part: Part): Shelves {
  if (part.shelves === undefined) {
    const rows = part.rows();
    part.shelves = { cap: fill(rows, "cap"), across: fill(rows, "across") };
  }
  return part.shelves;
}

function fill(all: readonly KnownRow[], quantity: Quantity): Shelf {
  const found: { mm: number; row: number; beside: KnownValue | null }[] = [];
  all.forEach(({ ends }, row) => {
    for (const end of ends) {
      const value = end[quantity];
      const beside = quantity === "cap" ? end.across : end.cap;
      if (value === null) found.push({ mm: Infinity, row, beside });
      else for (const { mm } of [value, ...value.others]) found.push({ mm, row, beside });
    }
  });
  found.sort((a, b) => (a.mm === b.mm ? a.row - b.row : a.mm - b.mm));
  const shelf = {
    mm: new Float64Array(found.length),
    rows: new Int32Array(found.length),
    least: new Float64Array(found.length),
    greatest: new Float64Array(found.length),
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

/** Rows that have an end with a figure inside the box that is looked into, for each of its quantities, or with no such
 *  figure. Rows of a size stand together, the one to speak of first in front; the sizes stand in no order. */
export function within(chart: Prepared, look: Look): KnownRow[] {
  const found = new Set<readonly KnownRow[]>();
  const boxes = new Map<Vaguest, Box>();
  for (const part of chart.parts(look)) {
    const box = (capspanInPieces && boxes.get(part.widest)) || look(part.widest);
    if (capspanInPieces) boxes.set(part.widest, box);
    const by: Quantity = box.cap === undefined ? "across" : "cap";
    const range = box[by] ?? all;
    const beside = box[by === "cap" ? "across" : "cap"] ?? all;
    const { mm, rows, least, greatest } = shelvesOf(part)[by];
    const pass = (first: number, last: number): void => {
      for (let i = firstAbove(mm, first); i < mm.length && (mm[i] ?? Infinity) <= last; i++) {
        if ((least[i] ?? 0) > beside[1] || (greatest[i] ?? 0) < beside[0]) continue;
        const row = part.row(rows[i] ?? -1);
        if (row !== undefined) found.add(chart.twins(row));
      }
    };
    pass(range[0], range[1]);
    pass(Infinity, Infinity);
  }
  return [...found].flat();
}

/** Rows in the chart's order. */
export function ordered(rows: KnownRow[]): KnownRow[] {
  return rows.sort((a, b) => a.index - b.index);
}

const all = [-Infinity, Infinity] as const;

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
