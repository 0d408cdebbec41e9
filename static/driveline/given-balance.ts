// Balance grades of drive shafts.
import { formula, published } from "./ground";
import type { Ground } from "./types";
import { revPerMinute } from "./units";

/** G in mm/s, as grades are named. */
export const grades: readonly (Ground & { id: string; says: string; grade: number })[] = [
  { id: "g40", grade: 40, says: "drive shafts", ...published("dana-gwb", "list of ISO 21940-11") },
  { id: "g32", grade: 32, says: "limit of a check in the field, one maker", ...published("dana-gwb") },
  { id: "g16", grade: 16, says: "drive shafts with special demands", ...published("dana-gwb", "list of ISO 21940-11") },
];

export const balanceBelow: Ground & { value: number; says: string } = {
  value: 500 * revPerMinute,
  says: "below this speed balancing is normally not needed",
  ...published("dana-gwb"),
};

export const balanceFormula = formula(
  "permissible-unbalance",
  "U = G M / w; in g mm: 9549 G M / n with G in mm/s, M in kg, n in rev/min",
  published("widia", "p. K53; ISO 21940-11:2016"),
  "A rotor that stays rigid: well below its bending critical speed. Of the whole shaft; half in each of two planes when both ends are alike.",
);
