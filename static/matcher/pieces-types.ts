// What a chart in pieces is made of: a directory, which comes first, and pieces of some hundred rows each. Package
// matcher writes them (pieces.go). All numbers are whole. A list of `steps` holds numbers each less the one before it. A
// sign is one letter of a string: the place of a word in its list, here or in words.ts. What is `joined` stands in one
// text, a blank or a line's end between.
import type { Basis, Faces, Hold, Quantity, Unit } from "./types";

export const bases: readonly Basis[] = ["memory", "common-practice", "measured", "published"];
/** How a figure is written: with so many decimals, or, where `over` is not 0, as a fraction of an inch. */
export type Written = readonly [unit: Unit, decimals: number, over: number];

/** A row's basis, and how much is open about its ends: how many holds and faces are unknown. */
export type Standing = readonly [basis: Basis, open: number];

/** How vague the figures of some pieces are: the most that half of a last digit is, by basis, µm. */
export type Grain = Readonly<Record<Quantity, Partial<Record<Basis, number>>>>;

/** From least to greatest, as many as there are pieces, in hundredths of a millimetre and in steps; -1: any. */
export type Bounds = readonly [least: readonly number[], greatest: readonly number[]];

/** A piece has all ends of the chart within its bounds that are as vague as its grain. */
export interface Entries {
  names: string; // joined
  bytes: readonly number[]; // how long each is, in steps
  grain: readonly number[]; // places in the directory's grains, in steps
  cap: Bounds;
  across: Bounds;
}

/** Where the ends of plain rows lie that are held alike: cells as absent.ts has them, and caps that are alike. */
export interface DirectoryKind {
  hold: Hold;
  faces: Faces;
  cells: readonly [cap: readonly number[], across: readonly number[], ends: readonly number[]]; // the first two in steps
  caps: Figures;
  alike: readonly number[]; // how many ends have each of these caps
}

export interface Directory {
  format: 2;
  version: string;
  plain: number; // rows that are no conversion joints
  faces: readonly (readonly [hold: Hold, ...faces: Faces[]])[];
  kinds: readonly DirectoryKind[];
  // What sizes weigh before measuring: how many there are whose rows stand so.
  sizes: readonly (readonly [count: number, ...rows: Standing[]])[];
  conversions: readonly (readonly [count: number, row: Standing])[]; // each is a size of its own
  tables: readonly (readonly [id: string, title: string])[];
  written: readonly Written[];
  grains: readonly Grain[];
  pieces: Entries;
}

/** The figures of one quantity. */
export interface Figures {
  written: string; // of each, a sign: a letter from "A" on; a blank where there is no figure
  n: readonly number[]; // of the figures there are: the digits, or the top of the fraction, in steps among those written alike
  basis: string; // signs, of the figures there are
}

export interface Piece {
  index: readonly number[]; // places in the chart, in steps
  names: string; // joined
  also: readonly (readonly [row: number, ...names: string[]])[];
  table: readonly number[]; // places in the directory's tables, in steps
  size: readonly number[]; // how many rows each size has: they stand one behind the other
  two: readonly number[]; // rows with two unlike ends, in steps; each is a size of its own
  basis: string; // signs
  hold: string; // signs, of each end, as all below
  holdBasis: string;
  faces: string;
  facesBasis: string;
  cap: Figures;
  across: Figures;
  others: { cap: Others; across: Others };
}

/** What else is given for a quantity of some ends. */
export interface Others {
  end: readonly number[]; // in steps
  figures: Figures;
}
