// What a chart in pieces is made of. All are files, and each is known by its name:
//
//   directory            comes first: what the core asks of the whole chart, and which pieces there are
//   parts of it          in which the pieces stand, where they are many
//   pieces               some hundred rows each, in figures
//   rolls                what the rows of a piece are called, which only those are asked for that an answer names
//
// Package matcher writes them (pieces.go). All numbers are whole. A list of `steps` holds numbers each less the one before
// it. A sign is one letter of a string: the place of a word in its list, here or in words.ts. What is `joined` stands in
// one text, a blank or a line's end between. What comes many times over has no keys.
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

/** Which ends lie in some files: all of the chart within these bounds that are as vague. It is a part of the directory, too. */
export interface Entries {
  names: string; // joined
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
  format: 3;
  version: string;
  plain: number; // rows that are no conversion joints
  faces: readonly (readonly [hold: Hold, ...faces: Faces[]])[];
  kinds: readonly DirectoryKind[];
  // What sizes weigh before measuring: how many there are whose rows stand so.
  sizes: readonly (readonly [count: number, ...rows: Standing[]])[];
  conversions: readonly (readonly [count: number, row: Standing])[]; // each is a size of its own
  tables: readonly (readonly [id: string, title: string])[]; // in the chart's order
  inTables: readonly number[]; // how many rows each has
  written: readonly Written[];
  grains: readonly Grain[];
  grain: readonly number[]; // of each of the entries, a place in these, in steps
  entries: Entries;
  pieces?: readonly number[]; // where the entries are parts, how many pieces each has
  bytes: readonly [pieces: number, rolls: number, parts: number]; // how long they are, together
}

/** The figures of one quantity. */
export type Figures = readonly [
  written: string, // of each, a sign: a letter from "A" on; a blank where there is no figure
  n: readonly number[], // of the figures there are: the digits, or the top of the fraction, in steps among those written alike
  basis: string, // signs, of the figures there are
];

/** What else is given for a quantity of some ends. */
export type Others = readonly [
  end: readonly number[], // in steps
  figures: Figures,
];

/** A row has one of the writings of its size: its ends with all their figures. They stand in the order in which the
 *  rows have them first. */
export type Piece = readonly [
  roll: string, // its name
  index: readonly number[], // places in the chart, in steps
  sizes: readonly number[], // how many rows each has: they stand one behind the other; 0 is one row, with two unlike ends
  writing: string, // of each row a sign, from "0" on
  basis: string, // signs, of each row
  hold: string, // signs, of each end of the writings, as all below
  holdBasis: string,
  faces: string,
  facesBasis: string,
  cap: Figures,
  across: Figures,
  otherCaps: Others,
  otherAcrosses: Others,
];

export type Roll = readonly [
  names: string, // joined
  also: readonly (readonly [row: number, ...names: string[]])[],
];
