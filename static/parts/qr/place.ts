// Where the patterns, the notes and the bits of a symbol go (ISO/IEC 18004:2015, 6.3, 7.7 to 7.10).
import { alignment, sideOf, type Level } from "./tables";

/** A square of modules by row; null is a module not yet written. */
export type Grid = (boolean | null)[][];

/** The patterns every symbol has; the places of the format and version notes are kept free with light modules. */
export function patterns(version: number): Grid {
  const side = sideOf(version);
  const grid: Grid = Array.from({ length: side }, () => Array<boolean | null>(side).fill(null));
  const set = (row: number, column: number, dark: boolean): void => {
    const line = grid[row];
    if (line && column >= 0 && column < side) line[column] = dark;
  };
  const rings = (row: number, column: number, reach: number, light: number[]): void => {
    for (let r = -reach; r <= reach; r++) {
      for (let c = -reach; c <= reach; c++)
        set(row + r, column + c, !light.includes(Math.max(Math.abs(r), Math.abs(c))));
    }
  };
  for (let i = 0; i < side; i++) {
    set(6, i, i % 2 === 0);
    set(i, 6, i % 2 === 0);
  }
  const centres = alignment(version);
  const last = centres.length - 1;
  centres.forEach((row, i) => {
    centres.forEach((column, k) => {
      const finder = (i === 0 && (k === 0 || k === last)) || (i === last && k === 0);
      if (!finder) rings(row, column, 2, [1]);
    });
  });
  rings(3, 3, 4, [2, 4]);
  rings(3, side - 4, 4, [2, 4]);
  rings(side - 4, 3, 4, [2, 4]);
  note(grid, version, "L", 0);
  return grid;
}

/** Writes the format note (level and mask) twice and, from version 7, the version note twice. */
export function note(grid: Grid, version: number, level: Level, mask: number): void {
  const side = grid.length;
  const set = (row: number, column: number, dark: boolean): void => {
    const line = grid[row];
    if (line) line[column] = dark;
  };
  const kind = ((level === "L" ? 1 : 0) << 3) | mask; // level M is 00
  const format = ((kind << 10) | remainder(kind, 10, 0x537)) ^ 0x5412;
  for (let i = 0; i < 15; i++) {
    const dark = ((format >> i) & 1) === 1;
    const along = i < 6 ? i : i < 8 ? i + 1 : side - 15 + i; // downwards in column 8
    set(along, 8, dark);
    set(8, i < 8 ? side - 1 - i : i === 8 ? 7 : 14 - i, dark); // leftwards in row 8
  }
  set(side - 8, 8, true); // always dark
  if (version < 7) return;
  const bits = (version << 12) | remainder(version, 12, 0x1f25);
  for (let i = 0; i < 18; i++) {
    const dark = ((bits >> i) & 1) === 1;
    set(Math.floor(i / 3), side - 11 + (i % 3), dark);
    set(side - 11 + (i % 3), Math.floor(i / 3), dark);
  }
}

// The remainder of value * 2^degree by a polynomial, the check bits of both notes.
function remainder(value: number, degree: number, by: number): number {
  let rest = value;
  for (let i = 0; i < degree; i++) rest = (rest << 1) ^ ((rest >> (degree - 1)) & 1 ? by : 0);
  return rest & ((1 << degree) - 1);
}

/** The free modules in the order bits are laid: pairs of columns from the right, upwards and downwards by turns. */
export function way(grid: Grid): [row: number, column: number][] {
  const side = grid.length;
  const list: [number, number][] = [];
  let upwards = true;
  for (let right = side - 1; right > 0; right -= 2) {
    if (right === 6) right = 5; // the timing pattern has this column
    for (let i = 0; i < side; i++) {
      const row = upwards ? side - 1 - i : i;
      for (const column of [right, right - 1]) if (grid[row]?.[column] === null) list.push([row, column]);
    }
    upwards = !upwards;
  }
  return list;
}

/** The eight masks (table 10): whether the module changes its colour. */
export const masks: readonly ((row: number, column: number) => boolean)[] = [
  (r, c) => (r + c) % 2 === 0,
  (r) => r % 2 === 0,
  (_, c) => c % 3 === 0,
  (r, c) => (r + c) % 3 === 0,
  (r, c) => (Math.floor(r / 2) + Math.floor(c / 3)) % 2 === 0,
  (r, c) => ((r * c) % 2) + ((r * c) % 3) === 0,
  (r, c) => (((r * c) % 2) + ((r * c) % 3)) % 2 === 0,
  (r, c) => (((r + c) % 2) + ((r * c) % 3)) % 2 === 0,
];
