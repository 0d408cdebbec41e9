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

// Limits up to which the figures of an end are exact, or fair, mm; all others are vague.
const exact = { cap: 0.06, across: 0.06 };
const fair = { cap: 0.21, across: 0.41 };

/** partsOf takes how vague the figures of the piece may be. Another figure that says the same as the leading one stands
 *  here too: whoever asks may get more than is in question. */
export function partsOf(ends: Ends, ways: readonly Way[], most: Vaguest, rows: Pick<Part, "rows" | "row">): Part[] {
  const groups: [number[], number[], number[]] = [[], [], []];
  ends.rows.forEach((_, end) => {
    const cap = vaguest(ends, end, "cap", ways);
    const across = vaguest(ends, end, "across", ways);
    const of = cap <= exact.cap && across <= exact.across ? 0 : cap <= fair.cap && across <= fair.across ? 1 : 2;
    groups[of].push(end);
  });
  return [asVague(exact), asVague(fair), most].flatMap((widest, n): Part[] => {
    const group = groups[n] ?? [];
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
    return group.length === 0 ? [] : [{ ...rows, widest, shelves }];
  });
}

function asVague(limit: Readonly<Record<Quantity, number>>): Vaguest {
  const of = (quantity: Quantity): Widest => figure(quantity, "published", 0, limit[quantity], "");
  return { cap: of("cap"), across: of("across") };
}

// The widest limit of the figures of an end.
function vaguest({ columns, others }: Ends, end: number, quantity: Quantity, ways: readonly Way[]): number {
  const { column, first } = others[quantity];
  let most = limitOf(columns[quantity], end, quantity, ways);
  for (let i = first[end] ?? 0; i < (first[end + 1] ?? 0); i++) {
    most = Math.max(most, limitOf(column, i, quantity, ways));
  }
  return most;
}

// The figures of one quantity of some ends, mm, and whose they are; an end without has Infinity.
function figuresOf({ columns, others }: Ends, group: readonly number[], quantity: Quantity, ways: readonly Way[]) {
  const { column, first } = others[quantity];
  const [mm, of]: [number[], number[]] = [[], []];
  group.forEach((end, n) => {
    const way = wayOf(columns[quantity], end, ways);
    mm.push(way === undefined ? Infinity : lengthOf(columns[quantity], end, way));
    of.push(n);
    for (let i = first[end] ?? 0; i < (first[end + 1] ?? 0); i++) {
      const other = wayOf(column, i, ways);
      if (other === undefined) continue;
      mm.push(lengthOf(column, i, other));
      of.push(n);
    }
  });
  return { mm, of };
}

function shelfOf(ends: Ends, group: readonly number[], by: Quantity, beside: Quantity, ways: readonly Way[]): Shelf {
  const least = new Float64Array(group.length).fill(Infinity);
  const greatest = new Float64Array(group.length).fill(-Infinity);
  const other = figuresOf(ends, group, beside, ways);
  other.mm.forEach((mm, i) => {
    const n = other.of[i] ?? 0;
    least[n] = Math.min(least[n] ?? 0, mm === Infinity ? -Infinity : mm); // what is not known may be anything
    greatest[n] = Math.max(greatest[n] ?? 0, mm);
  });
  const { mm, of } = figuresOf(ends, group, by, ways);
  const order = sorted(mm);
  return {
    mm: Float64Array.from(order, (i) => mm[i] ?? 0),
    rows: Int32Array.from(order, (i) => ends.rows[group[of[i] ?? 0] ?? 0] ?? 0),
    least: Float64Array.from(order, (i) => least[of[i] ?? 0] ?? 0),
    greatest: Float64Array.from(order, (i) => greatest[of[i] ?? 0] ?? 0),
  };
}

// The places of numbers from the least to the greatest. They are sorted as whole numbers with their places behind them,
// which is quicker than to be asked for each pair, and then put right where rounding made them alike.
function sorted(mm: readonly number[]): number[] {
  const places = mm.length;
  const keys = Float64Array.from(mm, (x, i) => Math.round(Math.min(x, 1e4) * 1e5) * places + i).sort();
  const order = Array.from(keys, (key) => key % places);
  for (let i = 1; i < places; i++) {
    for (let j = i; j > 0 && (mm[order[j - 1] ?? 0] ?? 0) > (mm[order[j] ?? 0] ?? 0); j--) {
      [order[j - 1], order[j]] = [order[j] ?? 0, order[j - 1] ?? 0];
    }
  }
  return order;
}
