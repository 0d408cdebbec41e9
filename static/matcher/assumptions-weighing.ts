// Constants of comparing: what a figure of the chart is worth, and what a size must show
// to be named. Lengths are millimetres.
import { assume } from "./assume";

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
  "common-practice",
  "iso286",
  "How much caps of one size differ: caps are commonly made to h6, 13 to 19 micrometres wide between 18 and 80 mm.",
);
export const madeAcross = assume(
  "made-across",
  0.08,
  "mm",
  "judgement",
  "mazda-81",
  "How much joints of one size differ across: half of what one maker's selective clips span, 1.22 to 1.38 mm.",
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
