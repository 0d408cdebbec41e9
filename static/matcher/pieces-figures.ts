// Figures of a chart in pieces: whole numbers, which are divided once. That gives the nearest number there is to the
// exact one, as when its decimals are read.
import type { Quantity } from "./types";
import { bases, type Figures, type Written } from "./pieces-types";
import { figure, type Figure, type KnownValue } from "./prepared";

/** Figures by their place; a place without one has a sign of -1. */
export interface Column {
  as: Int8Array; // how it is written
  n: Int32Array;
  basis: Int8Array;
}

export function summed(steps: readonly number[]): Int32Array {
  const out = new Int32Array(steps.length);
  let sum = 0;
  steps.forEach((step, i) => {
    sum += step;
    out[i] = sum;
  });
  return out;
}

export function columnOf([written, n, basis]: Figures): Column {
  const all = written.length;
  const [as, tops, bases] = [new Int8Array(all).fill(-1), new Int32Array(all), new Int8Array(all)];
  const last: number[] = [];
  let there = 0;
  for (let i = 0; i < all; i++) {
    const way = written.charCodeAt(i) - 65;
    if (way < 0) continue;
    const top = (last[way] ?? 0) + (n[there] ?? 0);
    last[way] = top;
    as[i] = way;
    tops[i] = top;
    bases[i] = basis.charCodeAt(there) - 48;
    there++;
  }
  return { as, n: tops, basis: bases };
}

/** A way to write a figure, with what figures written so have in common by their basis. */
export interface Way {
  times: number; // a whole number times this, divided by `parts`, is mm
  parts: number;
  text(n: number): string;
  figures: Readonly<Record<Quantity, readonly Figure[]>>; // at 0 mm
}

export function waysOf(written: readonly Written[]): Way[] {
  return written.map(([unit, decimals, over]) => {
    const [times, parts] = [unit === "in" ? 254 : 1, (over > 0 ? over : 10 ** decimals) * (unit === "in" ? 10 : 1)];
    const of = (quantity: Quantity): Figure[] =>
      bases.map((basis) => figure(quantity, basis, 0, times / (2 * parts), ""));
    const text = (n: number): string => `${over > 0 ? fraction(n, over) : decimal(n, decimals)} ${unit}`;
    return { times, parts, text, figures: { cap: of("cap"), across: of("across") } };
  });
}

/** wayOf is how the figure at a place of a column is written; undefined where there is none. */
export function wayOf({ as }: Column, i: number, ways: readonly Way[]): Way | undefined {
  return ways[as[i] ?? -1];
}

/** How a place of a column reads in mm. */
export function lengthOf({ n }: Column, i: number, { times, parts }: Way): number {
  return ((n[i] ?? 0) * times) / parts;
}

/** How far the true figure may lie from the one at that place, mm; 0 where there is none. */
export function limitOf(of: Column, i: number, quantity: Quantity, ways: readonly Way[]): number {
  const way = wayOf(of, i, ways);
  return way === undefined ? 0 : commonOf(of, i, quantity, way).limit;
}

// What figures of that basis have in common.
function commonOf({ basis }: Column, i: number, quantity: Quantity, way: Way): Figure {
  return way.figures[quantity][basis[i] ?? 0] as Figure; // there is one for each basis
}

const none: Figure[] = [];

// A value of the chart; its digits are put together when somebody wants to read them.
class Value implements KnownValue {
  others = none;

  constructor(
    readonly mm: number,
    private readonly common: Figure,
    private readonly n: number,
    private readonly way: Way,
  ) {}

  get limit(): number {
    return this.common.limit;
  }

  get made(): number {
    return this.common.made;
  }

  get standard(): number {
    return this.common.standard;
  }

  get half(): number {
    return this.common.half;
  }

  get text(): string {
    return this.way.text(this.n);
  }
}

/** valueAt is the figure at a place of a column; undefined where there is none. */
export function valueAt(of: Column, i: number, quantity: Quantity, ways: readonly Way[]): KnownValue | undefined {
  const way = wayOf(of, i, ways);
  return way && new Value(lengthOf(of, i, way), commonOf(of, i, quantity, way), of.n[i] ?? 0, way);
}

function decimal(n: number, decimals: number): string {
  const digits = String(n).padStart(decimals + 1, "0");
  const point = digits.length - decimals;
  return decimals === 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`;
}

function fraction(n: number, over: number): string {
  const whole = Math.floor(n / over);
  const part = `${n % over}/${over}`;
  return whole === 0 ? part : `${whole} ${part}`;
}
