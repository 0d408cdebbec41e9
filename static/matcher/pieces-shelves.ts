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

/** partsOf has a part for all of these ends that are as vague. Another figure that says the same as the leading one stands here
 *  too: whoever asks may get more than is in question. */
export function partsOf(
  ends: Ends,
  which: readonly number[],
  ways: readonly Way[],
  rows: Pick<Part, "rows" | "row">,
): Part[] {
  const groups = new Map<Vaguest, number[]>();
  which.forEach((end) => {
    const as = asVague(vaguest(ends, end, "cap", ways), vaguest(ends, end, "across", ways));
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
