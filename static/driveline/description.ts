// What a calculation is, and what comes of one: plain data, so that page, command, slip and record show the same.
//
// A calculation has inputs and parts. Its filled inputs are one string, the fragment of its page's address:
//
//   /driveline/angles/#joints=2&side1=3deg&side2=5.5deg&speed=2500rpm
//
// and reckon(name, fragment) in index.ts gives the whole result of it as an Outcome, which JSON can hold. Whoever wants
// to keep, print or send a calculation keeps its name and the fragment, and asks again.
//
//   import { reckon } from "../driveline/index";
//   const { title, lines, unchecked } = reckon("angles", "joints=2&side1=3deg&side2=5.5deg");
//
// It never throws: what cannot be read is a complaint of the outcome, what is missing is named by its part.
import type { Quantity } from "./units";

/** Why a formula or limit is believed. derived: worked out here, from geometry or mechanics. */
export type Basis = "published" | "common-practice" | "memory" | "derived";

/** Where a formula, constant or limit stands. */
export interface Source {
  basis: Basis;
  key?: string; // in tables/sources.yaml, with its printed name in speech-sources.ts
  at?: string; // the place in it, "p. 5"
}

/** One figure of the result. Its value is text, as it is printed. */
export interface Line {
  id: string; // steady and unique within the calculation: "residual"
  part: string; // id of the part it belongs to
  label: string; // "Residual angle"
  value: string; // "3.00", or words
  unit: string; // "°", "mm", or nothing
  also?: string; // the same in the other unit: "1.06 in"
  formula: string; // plain text: "cos θ = cos β1 / cos β2"
  source: Source[];
  valid?: string; // where the formula holds, as a sentence
}

/** One published limit beside what was reckoned. Sources disagree: all are listed, none is chosen. */
export interface Limit {
  part: string;
  of: string; // what is limited: "Angle of joint 1"
  value: string; // what was reckoned, "4.20 °"
  limit: string; // "at most 3 °"
  met: Met;
  source: Source[];
}

/** How a value stands to a limit; the word and the number stand beside each other, and no colour says it alone. */
export type Met = "within" | "above" | "below" | "not known";

/** What one part of a calculation concludes beside its lines. */
export interface PartOutcome {
  id: string;
  title: string;
  missing: string[]; // labels of the inputs it still wants; it has no lines then
  says: string[]; // sentences: what it means and what could be changed
  pictures: Picture[];
}

/** A plot or drawing: a tree of elements and the same in figures. */
export interface Picture {
  id: string;
  title: string; // its name for those who do not see it
  tree: Element;
  table?: FigureTable; // what a plot shows, in figures
}

export interface FigureTable {
  head: string[];
  rows: string[][];
}

/** An element of a picture or of the result, as plain data: the build writes it as text, the browser as nodes. */
export interface Element {
  tag: string;
  attributes?: Record<string, string>;
  children?: (Element | string)[];
}

/** One input as it was filled. */
export interface Given {
  id: string;
  label: string;
  value: string; // "3", or the label of a choice
  unit: string;
}

/** What is wrong with one input. Nothing of it is used, and nothing that was typed is lost. */
export interface Complaint {
  input: string; // its id; nothing: the address as a whole
  label: string;
  text: string; // what was written
  says: string; // what is wrong and what to write
}

/** All that comes of a calculation. */
export interface Outcome {
  calculation: string; // "angles": last part of its address, name of the command
  title: string;
  fragment: string; // what was given, in canonical form: reckon of it gives the same outcome
  given: Given[];
  lines: Line[];
  limits: Limit[];
  parts: PartOutcome[];
  complaints: Complaint[];
  unchecked: string[]; // what was not checked, sentence by sentence
  cautions: string[];
}

// ---- how one is described

/** Numbers in the base unit of their quantity (units.ts), choices as their value; what is not given is not there. */
export type Values = Record<string, number | string | undefined>;

export interface NumberInput {
  id: string; // short, lower case: it stands in addresses
  kind: "number";
  quantity: Quantity;
  units: string[]; // those offered, the usual one first
  least: number; // in the base unit
  most: number;
  preset?: number;
  when?: (values: Values) => boolean; // whether it is asked at all
}

export interface ChoiceInput {
  id: string;
  kind: "choice";
  options: string[]; // values; their labels are words
  preset: string;
  when?: (values: Values) => boolean;
}

export type Input = NumberInput | ChoiceInput;

/** The words of one input, in the calculation's speech file. */
export interface InputWords {
  label: string;
  hint: string; // what it is and how to measure it
  why?: string; // why the range is what it is, said when a value is outside it
  options?: Record<string, string>;
}

/** What a part finds. Lines and limits get its id by themselves. */
export interface Finding {
  lines: Omit<Line, "part">[];
  limits?: Omit<Limit, "part">[];
  says?: string[];
  pictures?: Picture[];
}

/** A part reckons as soon as what it needs is there. */
export interface Part {
  id: string;
  needs: string[]; // ids of inputs
  when?: (values: Values) => boolean;
  reckon: (values: Values) => Finding;
}

/** One calculation: a pure function (or several) behind its parts, and this. */
export interface Calculation {
  name: string;
  inputs: Input[];
  parts: Part[];
  words: CalculationWords;
  example: string; // fragment of the worked example
}

export interface CalculationWords {
  title: string;
  about: string; // one sentence
  purpose: string[]; // paragraphs: what it answers and what it does not
  inputs: Record<string, InputWords>;
  parts: Record<string, string>; // their titles
  cautions: string[];
  unchecked: string[];
  example: string; // whose figures the example has; it is invented and says so
}
