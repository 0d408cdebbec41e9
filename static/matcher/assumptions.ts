// Every constant of the method, each with what it rests on. The about page prints this
// list, so that a reader can see which figures are published and which are our judgement.
//
// A constant is declared by `assume`, which files it: it cannot be used without being
// in the list. Lengths are millimetres.

export type AssumptionBasis = "published" | "common-practice" | "memory" | "judgement";

export interface Assumption {
  id: string;
  value: number;
  unit: "mm" | ""; // empty: a plain number
  basis: AssumptionBasis;
  source: string; // key in the source registry that the figure is, or is taken from; may be empty
  says: string;
}

const list: Assumption[] = [];

function assume(
  id: string,
  value: number,
  unit: Assumption["unit"],
  basis: AssumptionBasis,
  source: string,
  says: string,
): number {
  list.push({ id, value, unit, basis, source, says });
  return value;
}

// ---- instruments: limits of permissible error

export const caliperLimit100 = assume(
  "caliper-limit-100",
  0.02,
  "mm",
  "published",
  "din862",
  "A caliper reading to 0.01 or 0.02 mm may be wrong by this much up to 100 mm.",
);
export const caliperLimit300 = assume(
  "caliper-limit-300",
  0.03,
  "mm",
  "published",
  "din862",
  "The same caliper from 100 to 300 mm.",
);
export const coarseVernierLimit = assume(
  "coarse-vernier-limit",
  0.05,
  "mm",
  "published",
  "din862",
  "A vernier caliper reading to 0.05 mm.",
);
export const grooveReading = assume(
  "groove-reading",
  0.02,
  "mm",
  "published",
  "din862",
  "Added for a reading between groove faces: it counts as an inside or depth reading.",
);
export const micrometerLimit50 = assume(
  "micrometer-limit-50",
  0.004,
  "mm",
  "published",
  "din863",
  "A micrometer up to 50 mm.",
);
export const micrometerLimit75 = assume(
  "micrometer-limit-75",
  0.005,
  "mm",
  "published",
  "din863",
  "A micrometer from 50 to 75 mm.",
);
export const micrometerLimitAbove = assume(
  "micrometer-limit-above",
  0.01,
  "mm",
  "judgement",
  "",
  "A micrometer above 75 mm, taken wider than the published trend.",
);
export const ruleLimit = assume("rule-limit", 0.15, "mm", "published", "jisb7516", "A steel rule up to 500 mm.");
export const tapeLimit = assume(
  "tape-limit",
  1.0,
  "mm",
  "published",
  "mid",
  "A tape of class III up to 1 m; the class is not asked, so the widest is taken.",
);

// ---- instruments: the smallest step that can be read

export const digitalStep = assume("digital-step", 0.01, "mm", "published", "din862", "Step of a digital caliper.");
export const dialStep = assume(
  "dial-step",
  0.02,
  "mm",
  "published",
  "din862",
  "Step of a dial or fine vernier caliper.",
);
export const coarseVernierStep = assume(
  "coarse-vernier-step",
  0.05,
  "mm",
  "published",
  "din862",
  "Step of a coarse vernier caliper.",
);
export const micrometerStep = assume(
  "micrometer-step",
  0.01,
  "mm",
  "common-practice",
  "",
  "Step of a plain micrometer.",
);
export const ruleStep = assume(
  "rule-step",
  0.5,
  "mm",
  "common-practice",
  "",
  "Finest line of a steel rule; 1/64 in is 0.4 mm.",
);
export const tapeStep = assume("tape-step", 1.0, "mm", "common-practice", "", "Finest line of a tape.");
export const coarseStep = assume(
  "coarse-step",
  0.5,
  "mm",
  "judgement",
  "",
  "A last digit of this or more is asked to be written finer.",
);
export const coarsestFraction = assume(
  "coarsest-fraction",
  32,
  "",
  "judgement",
  "",
  "A fraction with a denominator up to this is taken as read to 1/32 in; people leave out the halves.",
);

// ---- method: standard deviation of one reading by one person

export const capRepeat = assume(
  "cap-repeat",
  0.01,
  "mm",
  "judgement",
  "",
  "Repeating one cap diameter with a caliper.",
);
export const acrossRepeat = assume(
  "across-repeat",
  0.05,
  "mm",
  "judgement",
  "",
  "Repeating an across: caps must be pushed home and the jaws squared each time.",
);
export const ruleRepeat = assume(
  "rule-repeat",
  0.4,
  "mm",
  "judgement",
  "",
  "Lining up a steel rule by eye at two edges.",
);
export const tapeRepeat = assume("tape-repeat", 0.8, "mm", "judgement", "", "Lining up a tape by eye at two edges.");
export const repeatDof = assume(
  "repeat-dof",
  4,
  "",
  "judgement",
  "JCGM 100:2008 4.2.4",
  "How many degrees of freedom the four figures above are worth when pooled with the readings (4.2.4).",
);

// ---- condition of the part: half-widths

export const newPart = assume(
  "condition-new",
  0.02,
  "mm",
  "published",
  "datsun-521",
  "A new part is taken to be off by no more than the play one maker allows after fitting, 0 to 0.02 mm.",
);
export const usedPart = assume(
  "condition-used",
  0.05,
  "mm",
  "published",
  "toyota",
  "A used part, by the play another maker still allows, up to 0.05 mm.",
);
export const wornPart = assume(
  "condition-worn",
  0.15,
  "mm",
  "published",
  "dana-dssm",
  "A worn part, by the play at which a maker says to renew, 0.006 in.",
);
export const rustedPart = assume("condition-rusted", 0.3, "mm", "judgement", "", "A rusted part.");

// ---- the chart's own figures: half-widths beside half the last printed digit

export const commonPractice = assume(
  "chart-common-practice",
  0.05,
  "mm",
  "judgement",
  "",
  "A figure of common practice, at least this wide.",
);
export const memoryCap = assume(
  "chart-memory-cap",
  0.2,
  "mm",
  "judgement",
  "",
  "A recalled cap diameter, at least this wide.",
);
export const memoryAcross = assume(
  "chart-memory-across",
  0.4,
  "mm",
  "judgement",
  "",
  "A recalled across, at least this wide: 1/64 in.",
);
export const madeCap = assume(
  "made-cap",
  0.01,
  "mm",
  "published",
  "iso286",
  "How much caps of one size differ: caps are commonly made to h6, 13 to 19 micrometres wide between 18 and 80 mm.",
);
export const madeAcross = assume(
  "made-across",
  0.08,
  "mm",
  "published",
  "mazda-81",
  "How much joints of one size differ across: half of what one maker's selective clips span, 1.22 to 1.38 mm.",
);

// ---- repeated readings

export const outlierMads = assume(
  "outlier-mads",
  3.5,
  "",
  "common-practice",
  "",
  "A reading this many scaled median deviations off is looked at.",
);
export const madScale = assume(
  "mad-scale",
  1.4826,
  "",
  "published",
  "mathematics",
  "Makes a median deviation comparable with a standard deviation (1 / 0.6745, the normal quartile).",
);
export const capFloor = assume(
  "cap-floor",
  0.1,
  "mm",
  "judgement",
  "",
  "No cap reading closer than this to the middle is set aside.",
);
export const acrossFloor = assume(
  "across-floor",
  0.2,
  "mm",
  "judgement",
  "",
  "No across reading closer than this to the middle is set aside.",
);
export const capOther = assume(
  "cap-other",
  0.25,
  "mm",
  "judgement",
  "",
  "A cap reading this far off may be a second cap diameter rather than dirt.",
);
export const acrossOther = assume(
  "across-other",
  1.0,
  "mm",
  "judgement",
  "",
  "An across this far off may be the other pair of caps rather than a cap not pushed home.",
);

// ---- weighing

export const agreeLevel = assume(
  "agree-level",
  0.99,
  "",
  "judgement",
  "",
  "A row agrees when the difference stays inside this two-sided interval.",
);
export const rivalReach = assume(
  "rival-reach",
  1.5,
  "",
  "judgement",
  "",
  "A row that misses by less than this many intervals still counts against the claim.",
);
export const tailDof = assume(
  "tail-dof",
  8,
  "",
  "judgement",
  "",
  "Greatest degrees of freedom of the heavy-tailed likelihood.",
);
export const priorCommon = assume(
  "prior-common-practice",
  0.8,
  "",
  "judgement",
  "",
  "Weight of a row of common practice beside a published one.",
);
export const priorMemory = assume(
  "prior-memory",
  0.3,
  "",
  "judgement",
  "",
  "Weight of a recalled row beside a published one.",
);
export const priorOpen = assume(
  "prior-open",
  0.5,
  "",
  "judgement",
  "",
  "Weight of a row for each of hold and faces the chart does not know.",
);
export const priorOther = assume(
  "prior-other-figure",
  0.1,
  "",
  "judgement",
  "",
  "Weight of agreeing with another figure given for a size beside agreeing with the leading one.",
);
export const wholeDigits = assume(
  "whole-digits",
  0.25,
  "mm",
  "judgement",
  "",
  "A chart figure with half a last digit of this or more is said to be coarse.",
);
export const priorAbsent = assume(
  "prior-absent",
  0.05,
  "",
  "judgement",
  "",
  "Chance, before measuring, that a joint is not in the chart.",
);
export const spreadCap = assume(
  "absent-spread-cap",
  3,
  "mm",
  "judgement",
  "",
  "How wide unknown sizes scatter round known caps.",
);
export const spreadAcross = assume(
  "absent-spread-across",
  10,
  "mm",
  "judgement",
  "",
  "How wide unknown sizes scatter round known acrosses.",
);
export const leftAt = assume("left-at", 0.02, "", "judgement", "", "A size less likely than this is no longer left.");
export const otherLeftAt = assume(
  "other-left-at",
  0.2,
  "",
  "judgement",
  "",
  "A size that agrees only with another figure given for it must be this likely to be left beside one that agrees outright.",
);
export const claimAt = assume(
  "claim-at",
  0.95,
  "",
  "judgement",
  "",
  "A size must be this likely to be named outright.",
);
export const coarseCap = assume(
  "coarse-cap",
  1.0,
  "mm",
  "judgement",
  "",
  "A cap known no better than this names no size outright.",
);
export const coarseAcross = assume(
  "coarse-across",
  1.5,
  "mm",
  "judgement",
  "",
  "An across known no better than this names no size outright.",
);

// ---- what can be a joint at all

export const leastCap = assume("least-cap", 8, "mm", "judgement", "", "No driveline cap is thinner.");
export const greatestCap = assume("greatest-cap", 150, "mm", "judgement", "", "No driveline cap is thicker.");
export const leastAcross = assume("least-across", 20, "mm", "judgement", "", "No driveline joint is narrower.");
export const greatestAcross = assume("greatest-across", 500, "mm", "judgement", "", "No driveline joint is wider.");

/** Every constant of the method, in the order above. */
export const assumptions: readonly Assumption[] = list;
