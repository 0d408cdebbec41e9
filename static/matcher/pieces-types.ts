// What a chart in pieces is made of: a directory, which comes first, and pieces of some hundred rows each. Package
// matcher writes them (pieces.go). A list of `steps` holds whole numbers, each less the one before it. A sign is one
// letter of a string: the place of a word in its list, here or in words.ts.
import type { Cell } from "./absent";
import type { Basis, Faces, Hold, Quantity, Unit } from "./types";

export const bases: readonly Basis[] = ["memory", "common-practice", "measured", "published"];
/** How a figure is written: with so many decimals, or, where `over` is not 0, as a fraction of an inch. */
export type Written = readonly [unit: Unit, decimals: number, over: number];

/** A row's basis, and how much is open about its ends: how many holds and faces are unknown. */
export type Standing = readonly [basis: Basis, open: number];

/** A piece has all ends of the chart from least to greatest cap and across, µm; null: any. */
export type Entry = readonly [
  capLeast: number | null,
  capGreatest: number | null,
  acrossLeast: number | null,
  acrossGreatest: number | null,
  name: string,
];

/** Where the ends of plain rows lie that are held alike: cells as absent.ts has them, and caps as in Piece.others. */
export interface DirectoryKind {
  hold: Hold;
  faces: Faces;
  cells: readonly Cell[];
  caps: readonly (readonly [written: string, n: number, basis: string, ends: number])[];
}

export interface Directory {
  format: 2;
  version: string;
  plain: number; // rows that are no conversion joints
  faces: Partial<Record<Hold, Faces[]>>;
  halves: Record<Quantity, Partial<Record<Basis, number>>>; // the most that half of a last digit is, mm
  kinds: readonly DirectoryKind[];
  // What sizes weigh before measuring: how many there are whose rows stand so.
  sizes: readonly (readonly [count: number, ...rows: Standing[]])[];
  conversions: readonly (readonly [count: number, row: Standing])[]; // each is a size of its own
  tables: readonly (readonly [id: string, title: string])[];
  written: readonly Written[];
  pieces: readonly Entry[];
}

/** The figures of one quantity. */
export interface Figures {
  written: string; // of each end, a sign: a letter from "A" on; a blank where there is no figure
  n: readonly number[]; // of the figures there are: the digits, or the top of the fraction, in steps among those written alike
  basis: string; // signs, of the figures there are
}

export interface Piece {
  index: readonly number[]; // places in the chart, in steps
  names: readonly string[];
  also: readonly (readonly [row: number, ...names: string[]])[];
  table: readonly number[]; // places in the directory's tables, in steps
  size: readonly number[]; // in steps
  basis: string; // signs
  two: readonly number[]; // rows with two unlike ends, in steps
  hold: string; // signs, of each end, as all below
  holdBasis: string;
  faces: string;
  facesBasis: string;
  cap: Figures;
  across: Figures;
  others: readonly (readonly [end: number, quantity: Quantity, written: string, n: number, basis: string])[];
}
