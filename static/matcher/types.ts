// The words of the identification core: what a query asks, what the chart holds, and
// what an answer says. The page, the command and the tests all speak these types;
// answer.go mirrors them in Go.
//
// No DOM, locale or clock here or in any file beside it: the same bundle runs in the
// browser and inside the Go program.

export type Unit = "in" | "mm";
export type Basis = "published" | "measured" | "common-practice" | "memory";
export type Hold = "outside-clip" | "inside-clip" | "plate" | "strap" | "wing" | "injected" | "staked" | "unknown";
export type Faces =
  | "over-caps"
  | "groove-inner"
  | "groove-outer"
  | "under-plates"
  | "hole-centres"
  | "wing-outer"
  | "unknown";
export type Tool =
  | "digital-caliper"
  | "dial-caliper"
  | "vernier-caliper"
  | "vernier-caliper-coarse"
  | "micrometer"
  | "steel-rule"
  | "tape";
export type Condition = "new" | "used" | "worn" | "rusted";
export type Quantity = "cap" | "across";
/** What a reading may be of; a clip is measured beside a bare yoke only. */
export type Measurand = Quantity | "clip";

// ---- query

export interface QueryEnd {
  hold: Hold;
  faces?: Faces; // left out: the faces that go with the hold
  taken?: "joint" | "yoke"; // left out: joint
  cap?: string[]; // "1.187 in", "27,00 mm", "1 1/16", "3-7/32\""; of a yoke the bore
  across?: string[]; // of a yoke the distance its hold has: groove to groove, ear to ear, tab to tab
  clip?: string[]; // thickness of one clip; of a yoke only
}

export interface Query {
  ends: QueryEnd[]; // one or two
  unit?: Unit; // of a bare number; left out: a bare number is a complaint
  tool?: Tool; // left out: digital-caliper
  condition?: Condition; // left out: used
}

// ---- chart

/** One figure of the chart. `mm` is exact decimal text; `half` half the last printed digit, in mm. */
export interface ChartFigure {
  mm: string;
  half: string;
  text: string; // the digits as printed, without the unit
  unit: Unit;
  basis: Basis;
}

/** What the chart says of one quantity. */
export interface ChartValue extends ChartFigure {
  others?: ChartFigure[]; // figures that some give instead
}

export interface ChartEnd {
  hold: Hold;
  holdBasis: Basis;
  faces: Faces;
  facesBasis: Basis;
  cap: ChartValue | null; // null: the chart says none or unknown
  across: ChartValue | null;
}

export interface ChartRow {
  ref: string; // "joints-inch/1310"
  name: string; // "1310"
  also: string[];
  table: string; // the table's title, for speech
  basis: Basis; // weakest of its dimensions, or a conversion row's own
  size: number; // twins share it
  ends: ChartEnd[]; // 1: both ends alike; 2: a conversion joint
}

export interface Chart {
  format: 1;
  version: string; // "2026-11-25-3f9a1c2"
  rows: ChartRow[];
}

// ---- answer

export type Verdict = "identified" | "possible" | "between" | "not-in-chart" | "measure-again";

/** A reading set beside the chart. `difference` is measured minus chart; `uncertainty` is
 *  expanded (about 99 %); all in mm. */
export interface Comparison {
  measured: number;
  chart: number;
  chartText: string; // the chart's own digits and unit
  difference: number;
  uncertainty: number;
  unit: "mm";
}

export interface ComparedEnd {
  cap?: Comparison;
  across?: Comparison;
}

export interface Size {
  rows: string[]; // refs of the twins, best basis first
  names: string[]; // how to say them, in the same order
  probability: number; // among the sizes left and "not in the chart"; 0 for a near row that does not match
  basis: Basis; // the strongest of the twins'
  hold: Hold; // as the chart has it
  ends: ComparedEnd[]; // in the query's order
  because: string; // one sentence: why it is here, or why it does not match
}

/** What became of the readings of one quantity at one end. */
export interface Estimate {
  end: number;
  quantity: Measurand;
  used: string[];
  setAside: string[];
  value: number; // mm; of a yoke the joint's that goes in
  uncertainty: number; // expanded, about 95 %, of the reading alone, mm
  unit: "mm";
  why: string; // what was set aside and why, or how the uncertainty came about
  budget: { source: string; standard: number; dof: number | null }[]; // mm; dof null: infinite
}

/** A reading that could not be understood. */
export interface Complaint {
  end: number;
  quantity: Measurand | "query";
  index: number; // which reading, from 0
  text: string;
  says: string;
}

/** A measuring mistake that explains readings which agree with nothing as they are. It
 *  is never applied: the person looks, and measures again. */
export interface SlipFound {
  slip: string; // "groove-outer-faces"
  end: number;
  look: Quantity | "hold" | "unit"; // what to measure or look at again
  probability: number; // among slips, rows that miss by a hair, and "not in the chart"
  rows: string[]; // what the readings would then be: twins, the one to speak of first in front
  names: string[];
  cap?: number; // what the chart has for that size at that end, mm
  across?: number;
  says: string; // one sentence: the slip, and the size it would make of the readings
  next: string; // what to measure again, and how
  guide: string; // rooted address of the page that shows it: "/measure/groove-inner/"
}

/** The one measure that separates the sizes that are left. */
export interface TellApart {
  between: string[]; // row refs, one for each size
  end: number;
  measure: Quantity | "hold" | "clip";
  expect: Record<string, number | string>; // by row ref: mm, or the hold
  apart: number; // least difference between two of them, mm; 0 for a hold
  able: boolean; // whether the tool in hand can part them
  tool: Tool; // the tool in hand when it is able, else the plainest that is
  says: string;
}

/** A way to join two ends that no listed joint joins. */
export interface Way {
  joint: string; // ref of the joint to buy
  keeps: number[]; // the measured ends whose yokes stay
  change: number; // the measured end whose yoke is changed
  to: string[]; // refs of the size the new yoke must take
  says: string;
}

export interface Answer {
  verdict: Verdict;
  says: { head: string; because: string[]; next: string[] }; // plain sentences
  sizes: Size[]; // what is left, likeliest first
  near: Size[]; // the nearest rows that do not match, nearest first
  sameFigures: Size[]; // the same cap and across under another hold than the one asked for
  conversions: string[]; // conversion rows that have the measured end, when one end was measured and found
  ends: { rows: string[]; says: string }[]; // for two ends: what each end is by itself
  ways: Way[]; // for two known ends no row joins: the ways out, those that keep most first
  readings: Estimate[];
  complaints: Complaint[];
  slips: SlipFound[];
  tellApart: TellApart[];
  chart: { version: string };
  /** Of a chart in pieces: where each row that is named has its page, below the site's root, by ref. */
  at?: Record<string, string>;
}
