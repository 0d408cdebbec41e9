// The rows of one piece. They are kept as whole numbers, and made when a question comes upon them.
import type { Quantity } from "./types";
import { bases, type Directory, type Figures, type Piece, type Written } from "./pieces-types";
import {
  figure,
  sizesOf,
  weaker,
  withOthers,
  type Figure,
  type KnownEnd,
  type KnownRow,
  type KnownValue,
  type Part,
} from "./prepared";
import { allFaces, holds } from "./words";

/** A piece that is looked into. */
export interface Unpacked extends Part {
  twins(row: KnownRow): readonly KnownRow[];
}

/** unpack asks `once` for a row by its place in the chart, with what makes it. */
export function unpack(
  directory: Directory,
  piece: Piece,
  once: (index: number, make: () => KnownRow) => KnownRow,
): Unpacked {
  const index = summed(piece.index);
  const size = summed(piece.size);
  const first = firstEnds(index.length, summed(piece.two));
  const table = summed(piece.table);
  const columns = { cap: columnOf(piece.cap), across: columnOf(piece.across) };
  const others = new Map<number, Piece["others"][number][]>();
  for (const other of piece.others) others.set(other[0], [...(others.get(other[0]) ?? []), other]);

  const value = (end: number, quantity: Quantity): KnownValue | null => {
    const { as, n, basis } = columns[quantity];
    const how = directory.written[as[end] ?? -1];
    if (how === undefined) return null;
    const beside = (others.get(end) ?? []).filter((o) => o[1] === quantity);
    return withOthers(
      read(quantity, how, n[end] ?? 0, basis[end] ?? 0),
      beside.map(([, , sign, top, b]) => readFigure(directory, quantity, sign, top, b)),
    );
  };
  const endAt = (end: number): KnownEnd => ({
    hold: word(holds, piece.hold, end),
    holdBasis: word(bases, piece.holdBasis, end),
    faces: word(allFaces, piece.faces, end),
    facesBasis: word(bases, piece.facesBasis, end),
    cap: value(end, "cap"),
    across: value(end, "across"),
  });
  const make = (n: number): KnownRow => {
    const [from, to] = [first[n] ?? 0, first[n + 1] ?? 0];
    const ends = Array.from({ length: to - from }, (_, i) => endAt(from + i));
    const [id, title] = directory.tables[table[n] ?? -1] ?? ["", ""];
    const name = piece.names[n] ?? "";
    const own = word(bases, piece.basis, n);
    let basis = own;
    for (let end = from; end < to; end++) {
      for (const { as, basis: of } of [columns.cap, columns.across]) {
        if ((as[end] ?? -1) >= 0) basis = weaker(basis, bases[of[end] ?? 0] ?? "memory");
      }
    }
    const ref = `${id}/${name}`;
    const also = piece.also.find(([row]) => row === n)?.slice(1) as string[] | undefined;
    return {
      index: index[n] ?? -1,
      row: { ref, name, also: also ?? [], table: title, basis: own },
      size: ends.length === 1 ? `size ${size[n]}` : ref,
      basis,
      ends,
    };
  };
  const row = (n: number): KnownRow | undefined => {
    const at = index[n];
    return at === undefined ? undefined : once(at, () => make(n));
  };
  return {
    rows: () => Array.from(index, (_, n) => make(n)),
    row,
    twins: (of) => {
      const own = size[index.indexOf(of.index)];
      const same: KnownRow[] = [];
      for (let n = 0; of.ends.length === 1 && n < size.length; n++) {
        if (size[n] !== own || (first[n + 1] ?? 0) - (first[n] ?? 0) > 1) continue;
        const twin = row(n);
        if (twin !== undefined) same.push(twin);
      }
      return sizesOf(same).get(of.size) ?? [of];
    },
  };
}

function summed(steps: readonly number[]): Int32Array {
  const out = new Int32Array(steps.length);
  let sum = 0;
  steps.forEach((step, i) => {
    sum += step;
    out[i] = sum;
  });
  return out;
}

// The first end of each row, and behind the last how many ends there are.
function firstEnds(rows: number, two: Int32Array): Int32Array {
  const out = new Int32Array(rows + 1);
  const twice = new Set(two);
  for (let n = 0; n < rows; n++) out[n + 1] = (out[n] ?? 0) + (twice.has(n) ? 2 : 1);
  return out;
}

interface Column {
  as: Int8Array; // how it is written; -1: no figure
  n: Int32Array;
  basis: Int8Array;
}

function columnOf({ written, n, basis }: Figures): Column {
  const ends = written.length;
  const out = { as: new Int8Array(ends), n: new Int32Array(ends), basis: new Int8Array(ends) };
  const last: number[] = [];
  let there = 0;
  for (let end = 0; end < ends; end++) {
    const as = written[end] === " " ? -1 : place(written[end] ?? "");
    out.as[end] = as;
    if (as < 0) continue;
    last[as] = (last[as] ?? 0) + (n[there] ?? 0);
    out.n[end] = last[as] ?? 0;
    out.basis[end] = Number(basis[there]);
    there++;
  }
  return out;
}

function place(sign: string): number {
  return sign.charCodeAt(0) - 65;
}

function word<T>(of: readonly [T, ...T[]] | readonly T[], signs: string, n: number): T {
  return of[Number(signs[n])] ?? (of[0] as T);
}

/** readFigure puts a figure together from the sign for how it is written, its whole number, and the sign of its basis. */
export function readFigure({ written }: Directory, quantity: Quantity, sign: string, n: number, basis: string): Figure {
  return read(quantity, written[place(sign)] ?? ["mm", 0, 0], n, Number(basis));
}

// Whole numbers divided once: the nearest number there is to the exact one, as when its decimals are read.
function read(quantity: Quantity, [unit, decimals, over]: Written, n: number, basis: number): Figure {
  const parts = over > 0 ? over : 10 ** decimals;
  const [mm, half] = unit === "in" ? [(n * 254) / (10 * parts), 254 / (20 * parts)] : [n / parts, 1 / (2 * parts)];
  return figure(
    quantity,
    bases[basis] ?? "memory",
    mm,
    half,
    `${over > 0 ? fraction(n, over) : decimal(n, decimals)} ${unit}`,
  );
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
