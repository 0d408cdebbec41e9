// Constants of measuring: what tools, hands and worn parts do to a reading. Lengths are millimetres.
import { assume } from "./assume";

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
  "jcgm100",
  "How many degrees of freedom the four figures above are worth when pooled with the readings (4.2.4).",
);

// ---- condition of the part: half-widths

export const newPart = assume(
  "condition-new",
  0.02,
  "mm",
  "judgement",
  "datsun-521",
  "A new part is taken to be off by no more than the play one maker allows after fitting, 0 to 0.02 mm.",
);
export const usedPart = assume(
  "condition-used",
  0.05,
  "mm",
  "judgement",
  "toyota",
  "A used part, by the play another maker still allows, up to 0.05 mm.",
);
export const wornPart = assume(
  "condition-worn",
  0.15,
  "mm",
  "judgement",
  "dana-dssm",
  "A worn part, by the play at which a maker says to renew, 0.006 in.",
);
export const rustedPart = assume("condition-rusted", 0.3, "mm", "judgement", "", "A rusted part.");

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
  "common-practice",
  "",
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

// ---- what can be a joint at all

export const leastCap = assume("least-cap", 8, "mm", "judgement", "", "No driveline cap is thinner.");
export const greatestCap = assume("greatest-cap", 150, "mm", "judgement", "", "No driveline cap is thicker.");
export const leastAcross = assume("least-across", 20, "mm", "judgement", "", "No driveline joint is narrower.");
export const greatestAcross = assume("greatest-across", 500, "mm", "judgement", "", "No driveline joint is wider.");
