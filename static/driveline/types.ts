// The words of the driveline calculations: what a function is given, what it gives
// back, and what every constant and formula says for itself.
//
// Everything is in SI: m, rad, rad/s, N·m, N, kg, kg/m³, Pa, W, s. Units a person uses are
// turned into these by units.ts, outside the calculations.
//
// No DOM, locale or clock here or in any file beside it: the same bundle runs in the
// browser and inside the Go program.

import type { SourceKey } from "./sources";

/** Why a constant or a formula is believed.
 *
 *  published        printed in the document named beside it
 *  common-practice  a rule of the trade without a document
 *  memory           recalled; must be confirmed before anybody relies on it
 *  derived          worked out here from geometry or statics, and checked by a test of another kind
 *  judgement        ours; only plausible ranges and display choices rest on it */
export type Basis = "published" | "common-practice" | "memory" | "derived" | "judgement";

/** Units of numbers inside the calculations; "" is a plain number. */
export type Si =
  | "m"
  | "rad"
  | "rad/s"
  | "rad/s2"
  | "m/s"
  | "N"
  | "N.m"
  | "kg"
  | "kg.m"
  | "kg.m2"
  | "kg/m3"
  | "Pa"
  | "W"
  | "s"
  | "";

/** What stands behind a constant or a formula. `source` is empty unless the basis is published. */
export interface Ground {
  basis: Basis;
  source: SourceKey | "";
  at?: string; // place in the source
}

/** A constant with what it rests on. */
export interface Sourced<T> extends Ground {
  value: T;
  says: string; // what it is, or where it applies, in a few plain words
}

/** A limit somebody prints. Sources disagree, so a function returns all of one kind; it
 *  says nothing of whether one is met: number and limit stand side by side. */
export interface Limit extends Sourced<number> {
  id: string; // never changes: "joint-angle-least-dana-j3311"
  of: string; // the number of the result it limits: "angle", "equality", "residual.acceleration"
  bound: "least" | "most";
  unit: Si;
}

/** A formula a result came from. */
export interface Formula extends Ground {
  id: string; // "single-joint-ratio"
  text: string; // as one line of plain signs: "w2/w1 = cos b / (1 - sin^2 b cos^2 t)"
  valid: string; // where it holds, and what it leaves out
}

/** What is wrong with an input.
 *
 *  missing       not given
 *  not-a-number  no finite number
 *  too-small     below `bound`
 *  too-large     above `bound`
 *  too-few       a list shorter than `bound`
 *  too-many      a list longer than `bound`
 *  unknown       no word of those the input takes
 *  conflict      possible by itself, impossible beside the input named in `beside` */
export type Wrong =
  | "missing"
  | "not-a-number"
  | "too-small"
  | "too-large"
  | "too-few"
  | "too-many"
  | "unknown"
  | "conflict";

/** What to do about it.
 *
 *  give-it           give the input
 *  type-a-number     type a number with its unit
 *  check-the-unit    check the unit first, then the reading
 *  check-both        check this input and the one in `beside`
 *  choose-from-list  choose one of the words the input takes
 *  count-again       give as many as `bound` says */
export type Remedy = "give-it" | "type-a-number" | "check-the-unit" | "check-both" | "choose-from-list" | "count-again";

/** An input a function cannot use. */
export interface Complaint {
  input: string; // as in the input's type, with its place in a list: "members[1].side"
  wrong: Wrong;
  remedy: Remedy;
  bound: number | null; // the least or most it may be, in `unit`
  unit: Si;
  beside: string; // for a conflict the other input, else empty
}

/** What every calculation returns: a result with the formulas it came from, or what is wrong
 *  with its inputs, all at once. Nothing is thrown, and no number of a result is NaN or infinite. */
export type Outcome<T> = { ok: true; result: T; formulas: Formula[] } | { ok: false; complaints: Complaint[] };

/** What a number may be, both ends allowed. The basis is judgement throughout. */
export interface Range {
  least: number;
  most: number;
  unit: Si;
  measured?: true; // the input is a MeasuredLength
  count?: readonly [least: number, most: number]; // the input is a list of so many
  none?: true; // null is allowed: not known
}

/** The words an input takes. */
export interface Choice {
  words: readonly string[];
}

/** What each input may be. A function `f` exports its own as `fRanges`, for the forms of a
 *  page; what lies outside is a complaint. */
export type Ranges<T> = { readonly [K in keyof T]: Range | Choice | null }; // null: looked at in another way

/** A measured length with its expanded uncertainty (about 95 %), both m. */
export interface MeasuredLength {
  value: number;
  uncertainty: number;
}
