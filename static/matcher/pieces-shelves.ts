// The index of a piece, as candidates.ts has it, made of the numbers themselves: most rows of a piece are never made.
// Ends lie apart by how vague they are, so that beside exact figures only what is near is looked at.
import type { Quantity } from "./types";
import type { Shelf } from "./candidates";
import { lengthOf, limitOf, wayOf, type Column, type Way } from "./pieces-figures";
import type { Beside } from "./pieces-rows";
import { figure, type Part, type Vaguest, type Widest } from "./prepared";

/** The figures of all ends of a piece, and the row of each end. */
export interface Ends {
  columns: Readonly<Record<Quantity, Column>>;
  others: Readonly<Record<Quantity, Beside>>;
  rows: Int32Array;
}

// Limits of less are exact enough to stand together, mm.
const exact = 0.06;

// How vague the ends of a part are, by their limits in cap and in across. All pieces share them.
const vagueness = new Map<number, Map<number, Vaguest>>();

// The same, of a chart, by how the figures of an end are written.
const signs = new WeakMap<readonly Way[], Map<number, Vaguest>>();

/** partsOf has a part for all of these ends that are as vague. Another figure that says the same as the leading one stands here
 *  too: whoever asks may get more than is in question. */
export function partsOf(
  ends: Ends,
  which: readonly number[],
  ways: readonly Way[],
  rows: Pick<Part, "rows" | "row">,
): Part[] {
  const groups = new Map<Vaguest, number[]>();
  const seen = signs.get(ways) ?? new Map<number, Vaguest>();
  signs.set(ways, seen);
  which.forEach((end) => {
    const sign = signOf(ends, end);
    const as = seen.get(sign) ?? asVague(vaguest(ends, end, "cap", ways), vaguest(ends, end, "across", ways));
    if (sign >= 0) seen.set(sign, as);
    const group = groups.get(as);
    if (group === undefined) groups.set(as, [end]);
    else group.push(end);
  });
  return Array.from(groups, ([widest, group]): Part => {
    let cap: Shelf | undefined;
    let across: Shelf | undefined;
    const shelves = {
      get cap(): Shelf {
        cap ??= shelfOf(ends, group, "cap", "across", ways);
        return cap;
      },
      get across(): Shelf {
        across ??= shelfOf(ends, group, "across", "cap", ways);
        return across;
      },
    };
    return { ...rows, widest, shelves };
  });
}

// A number for how the figures of an end are written, on which it hangs how vague they are; -1 where there are others.
function signOf({ columns, others }: Ends, end: number): number {
  const { cap, across } = columns;
  if (others.cap.first[end] !== others.cap.first[end + 1]) return -1;
  if (others.across.first[end] !== others.across.first[end + 1]) return -1;
  const ofCap = 4 * ((cap.as[end] ?? -1) + 1) + (cap.basis[end] ?? 0);
  return 512 * ofCap + 4 * ((across.as[end] ?? -1) + 1) + (across.basis[end] ?? 0);
}

function asVague(cap: number, across: number): Vaguest {
  const known = vagueness.get(cap) ?? new Map<number, Vaguest>();
  vagueness.set(cap, known);
  const before = known.get(across);
  if (before !== undefined) return before;
  const of = (quantity: Quantity, limit: number): Widest => figure(quantity, "published", 0, limit, "");
  const made = { cap: of("cap", cap), across: of("across", across) };
  known.set(across, made);
  return made;
}

// The widest limit of the figures of an end, or so little that it is exact.
function vaguest({ columns, others }: Ends, end: number, quantity: Quantity, ways: readonly Way[]): number {
  const { column, first } = others[quantity];
  let most = Math.max(exact, limitOf(columns[quantity], end, quantity, ways));
  for (let i = first[end] ?? 0; i < (first[end + 1] ?? 0); i++) {
    most = Math.max(most, limitOf(column, i, quantity, ways));
  }
  return most;
}

// A figure, mm; Infinity where there is none.
function figureAt(column: Column, i: number, ways: readonly Way[]): number {
  const way = wayOf(column, i, ways);
  return way === undefined ? Infinity : lengthOf(column, i, way);
}

function shelfOf(ends: Ends, group: readonly number[], by: Quantity, beside: Quantity, ways: readonly Way[]): Shelf {
  const mm: number[] = [];
  const rows: number[] = [];
  const least: number[] = [];
  const greatest: number[] = [];
  const own = ends.columns[by];
  const other = ends.columns[beside];
  const more = ends.others[by];
  const besides = ends.others[beside];
  group.forEach((end) => {
    let high = figureAt(other, end, ways);
    let low = high === Infinity ? -Infinity : high; // what is not known may be anything
    const to = besides.first[end + 1] ?? 0;
    for (let i = besides.first[end] ?? 0; i < to; i++) {
      const x = figureAt(besides.column, i, ways);
      low = Math.min(low, x);
      high = Math.max(high, x);
    }
    const put = (x: number): void => {
      mm.push(x);
      rows.push(ends.rows[end] ?? 0);
      least.push(low);
      greatest.push(high);
    };
    put(figureAt(own, end, ways));
    const until = more.first[end + 1] ?? 0;
    for (let i = more.first[end] ?? 0; i < until; i++) put(figureAt(more.column, i, ways));
  });
  const order = sorted(mm);
  const out = {
    mm: new Float64Array(order.length),
    rows: new Int32Array(order.length),
    least: new Float64Array(order.length),
    greatest: new Float64Array(order.length),
  };
  order.forEach((from, i) => {
    out.mm[i] = mm[from] ?? 0;
    out.rows[i] = rows[from] ?? 0;
    out.least[i] = least[from] ?? 0;
    out.greatest[i] = greatest[from] ?? 0;
  });
  return out;
}

// The places of numbers from the least to the greatest. They are sorted as whole numbers with their places behind them,
// which is quicker than to be asked for each pair, and then put right where rounding made them alike.
function sorted(mm: readonly number[]): number[] {
  const places = mm.length;
  const keys = new Float64Array(mm.map((x, i) => Math.round(Math.min(x, 1e4) * 1e5) * places + i)).sort();
  const order: number[] = [];
  keys.forEach((key) => {
    const place = key % places;
    const x = mm[place] ?? 0;
    let at = order.length;
    for (; at > 0 && (mm[order[at - 1] ?? 0] ?? 0) > x; at--) order[at] = order[at - 1] ?? 0;
    order[at] = place;
  });
  return order;
}
