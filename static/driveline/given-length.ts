// Where a slip should stand and how far sliding halves must overlap, by source. Lengths are m.
import { derived, formula, practice, published } from "./ground";
import type { OverlapRule } from "./length";
import type { Ground } from "./types";
import { degree, inch } from "./units";

/** How far out of home a slip should stand: a share of its travel, or between two lengths. */
export const slipStands: readonly (Ground & {
  id: string;
  says: string;
  share: number;
  least: number;
  most: number;
})[] = [
  {
    id: "dana-cv",
    says: "preferred: a third of the travel out",
    share: 1 / 3,
    least: 0,
    most: 0,
    ...published("dana-cv"),
  },
  {
    id: "trade",
    says: "pushed home, then 3/4 to 1 in back, at ride height",
    share: 0,
    least: 0.75 * inch,
    most: 1 * inch,
    ...practice,
  },
];

type Rule = Omit<OverlapRule, "least" | "most"> & { share: number; least: number | null; most: number | null };

/** Rules of sliding power take-off shafts; `share` is of the length over which the halves can overlap. */
export const overlaps: readonly Rule[] = [
  {
    id: "gaspardo-working",
    of: "overlapWorking",
    says: "at least half in normal work",
    share: 1 / 2,
    least: null,
    most: null,
    ...published("gaspardo"),
  },
  {
    id: "gaspardo-least",
    of: "overlapLeast",
    says: "at least a third in every position",
    share: 1 / 3,
    least: null,
    most: null,
    ...published("gaspardo"),
  },
  {
    id: "gaspardo-left",
    of: "leftLeast",
    says: "at least 40 mm from bottoming",
    share: 0,
    least: 0.04,
    most: null,
    ...published("gaspardo"),
  },
  {
    id: "befco-least",
    of: "overlapLeast",
    says: "at least 6 in",
    share: 0,
    least: 6 * inch,
    most: null,
    ...published("befco"),
  },
  {
    id: "befco-left",
    of: "leftLeast",
    says: "at least 2 in from bottoming",
    share: 0,
    least: 2 * inch,
    most: null,
    ...published("befco"),
  },
  {
    id: "befco-angle",
    of: "angle",
    says: "at most 15 degrees",
    share: 0,
    least: null,
    most: 15 * degree,
    ...published("befco"),
  },
  { id: "mtz", of: "overlapWorking", says: "110 to 120 mm", share: 0, least: 0.11, most: 0.12, ...published("mtz") },
  {
    id: "redexim",
    of: "overlapWorking",
    says: "at least 250 mm",
    share: 0,
    least: 0.25,
    most: null,
    ...published("redexim"),
  },
];

export const centresFormula = formula(
  "joint-centres",
  "centres = between faces - face to centre - face to centre; cut = centres - yoke - yoke - slip drawn out - gaps",
  derived,
  "Measured with the vehicle at ride height, on its wheels. Wear of the spline is not in it.",
);
export const travelFormula = formula(
  "length-over-travel",
  "L = sqrt(run^2 + offset^2 + height^2)",
  derived,
  "The path of the axle must be given: how far it moves ahead or back as it rises depends on its links.",
);
export const overlapFormula = formula(
  "overlap",
  "overlap and what is left before bottoming, beside each rule",
  derived,
  "Each rule is of one maker and holds for its machine.",
);
