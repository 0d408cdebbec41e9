// What a calculation is, and what comes of one: plain data, so that page, command, slip and record show the same.
//
// A calculation has inputs and parts. Its filled inputs are one string, the fragment of its page's address:
//
//   /driveline/angles/#joints=2&side1=3deg&side2=5.5deg&speed=2500rpm
//
// and reckon(name, fragment) in frame.ts gives the whole result of it as a Report, which JSON can hold. Whoever wants
// to keep, print or send a calculation keeps its name and the fragment, and asks again.
//
//   import { reckon } from "../driveline/frame"; // CapspanDriveline.reckon on a page
//   const { title, lines, unchecked } = reckon("angles", "joints=2&side1=3deg&side2=5.5deg");
//
// It never throws: what cannot be read is a refusal of the report, what is missing is named by its part.
import type { AnyChart } from "../matcher/prepared";
import type { PublishedTorque } from "./fasteners";
import type { Quantity, Unit } from "./quantities";
import type { Source } from "./sources";
import type { Ground, Limit, Outcome } from "./types";

/** One figure of the result. Its value is text, as it is printed. */
export interface Line {
  id: string; // steady and unique within the calculation: "residual"
  part: string; // id of the part it belongs to
  label: string; // "Residual angle"
  value: string; // "3.00", or words
  unit: string; // "°", "mm", or nothing
  also?: string; // the same in the other unit: "1.06 in"
  formula: string; // plain text: "cos θ = cos β1 / cos β2"
  source: Ground[];
  valid?: string; // where the formula holds, as a sentence
  rows?: string[]; // ids of rows of the chart that it names, after the value
  at?: Record<string, string>; // of a large chart: where they have their pages below the site, by id
  lead?: boolean; // what the reader came for: said first
}

/** One published limit beside what was reckoned. Sources disagree: all are listed, none is chosen. */
export interface LimitLine {
  part: string;
  of: string; // what is limited: "Angle of a joint"
  limit: string; // "at most 3°"
  says: string; // where it applies
  stands: Stand[]; // what was reckoned: one, or one for each joint
  source: Ground[];
}

/** A value beside a limit. */
export interface Stand {
  of: string; // "joint 1"; nothing where there is only one
  value: string; // "4.20°"
  met: Met;
}

/** How a value stands to a limit; the word and the number stand beside each other, and no colour says it alone. */
export type Met = "within" | "above" | "below" | "not known";

/** What one part of a calculation concludes beside its lines. */
export interface PartReport {
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
export interface Refusal {
  input: string; // its id; nothing: the address as a whole
  label: string;
  text: string; // what was written
  says: string; // what is wrong and what to write
}

/** All that comes of a calculation. */
export interface Report {
  calculation: string; // "angles": last part of its address, name of the command
  title: string;
  fragment: string; // what was given, in canonical form: reckon of it gives the same report
  given: Given[];
  asked: string[]; // ids of the inputs that belong to it with these choices
  lines: Line[];
  limits: LimitLine[];
  parts: PartReport[];
  refusals: Refusal[];
  unchecked: string[]; // what was not checked, sentence by sentence
  cautions: string[];
}

// ---- how one is filled

/** One input as it was filled. */
export interface Field {
  text: string;
  unit: string; // name of the unit a bare number has; "" for a choice
}

export type Filled = Record<string, Field>;

// ---- how one is described

/** Numbers in the base unit of their quantity (quantities.ts), choices as their value; what is not given is not there. */
export type Values = Record<string, number | string | undefined>;

export interface NumberInput {
  id: string; // short, lower case: it stands in addresses
  kind: "number";
  group: string; // of the form
  quantity: Quantity;
  units: string[]; // those offered, the usual one first
  least: number; // in the base unit of the quantity
  most: number;
  preset?: string; // as somebody would type it, with its unit: "0.85"
  optional?: boolean; // a part may do without it: it is not asked for as missing
  when?: (values: Values) => boolean; // whether it is asked at all
}

export interface ChoiceInput {
  id: string;
  kind: "choice";
  group: string; // of the form
  options: string[]; // values; their labels are words
  preset: string;
  when?: (values: Values) => boolean;
}

/** Words of a sheet or a part, such as a thread. */
export interface TextInput {
  id: string;
  kind: "text";
  group: string; // of the form
  most: number; // characters
  optional?: boolean;
  when?: (values: Values) => boolean;
}

export type Input = NumberInput | ChoiceInput | TextInput;

/** The words of one input that a result needs; what explains it stands with the page (PageWords). */
export interface InputWords {
  label: string;
  why?: string; // why the range is what it is, said when a value is outside it
  options?: Record<string, string>;
}

/** What a part finds. Lines and limits get its id by themselves. */
export interface Finding {
  lines: Omit<Line, "part">[];
  limits?: Omit<LimitLine, "part">[];
  says?: string[];
  pictures?: Picture[];
}

/** A part reckons as soon as what it needs is there. */
export interface Part {
  id: string;
  needs: string[] | ((values: Values) => string[]); // ids of inputs; one that is not asked (when) is not missed
  when?: (values: Values) => boolean;
  reckon: (values: Values, kit: Kit) => Finding;
}

/** What the frame lends to a part, so that no calculation carries it along. */
export interface Kit {
  /** A figure in the reader's units, the other system beside it. `digits` are of its first unit. */
  figure: (quantity: Quantity, base: number, digits?: number) => { value: string; unit: string; also?: string };
  /** The same as words: "1.20 mm (0.047 in)". */
  words: (quantity: Quantity, base: number, digits?: number) => string;
  /** A line of the result, with the formula of that id that a calculation taken before came from. */
  line: (
    id: string,
    label: string,
    quantity: Quantity,
    base: number,
    formula: string,
    digits?: number,
  ) => Omit<Line, "part">;
  /** A line whose value is words. */
  said: (id: string, label: string, value: string, formula: string) => Omit<Line, "part">;
  /** Limits somebody prints beside what was reckoned, one value or several of a kind with their names. */
  limits: (
    of: string,
    quantity: Quantity,
    values: readonly { of: string; base: number }[],
    limits: readonly Limit[],
    digits?: number,
  ) => Omit<LimitLine, "part">[];
  /** A rule that asks for a span, either end of which may be open, beside what was reckoned. */
  span: (
    of: string,
    quantity: Quantity,
    base: number,
    rule: Ground & { least: number | null; most: number | null; says: string },
    digits?: number,
  ) => Omit<LimitLine, "part">;
  /** The result of a pure function, whose formulas the lines may name; where its inputs cannot be used the part says so and has no lines. */
  take: <T>(outcome: Outcome<T>) => T;
  /** The units a quantity is printed in, the reader's first. */
  units: (quantity: Quantity) => [Unit, Unit?];
  /** What a figure rests on, in words. */
  ground: (ground: Ground) => string;
  /** What a constant, limit or chart says for itself, in the language of the page. */
  says: (text: string) => string;
  chart: Provided;
}

/** What a page or the command takes from the chart; nothing of it is there until it is provided. */
export interface Provided {
  fasteners?: PublishedTorque[];
  documents?: (Source & { key: string })[]; // what those rows name
  rows?: string[]; // ids and other names of the joints
  ratings?: { row: string; torque: number; source: string }[]; // published torque ratings of rows, N·m
  chart?: AnyChart; // for the core, which joins two ends
}

/** One calculation: a pure function (or several) behind its parts, and this. */
export interface Calculation {
  name: string;
  inputs: Input[];
  parts: Part[];
  words: CalculationWords;
  places: Record<string, string>; // where a function's inputs come from: its name for one, our id
  example: string; // fragment of the worked example
}

/** What a result says, in speech-<name>.ts. */
export interface CalculationWords {
  title: string;
  inputs: Record<string, InputWords>;
  parts: Record<string, string>; // their titles
  cautions: string[];
  unchecked: string[];
  grounds?: Record<string, string>; // of another language: what the constants and formulas say, by their English text
}

/** What the page says besides, in page-<name>.ts: the build alone needs it, no script carries it. */
export interface PageWords {
  about: string; // one sentence
  purpose: string[]; // paragraphs: what it answers and what it does not
  groups: Record<string, string>; // headings of the form, in order
  hints: Record<string, string>; // by input: what it is and how to measure it
  example: string; // whose figures the example has; it is invented and says so
}
