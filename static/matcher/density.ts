// How likely a reading is, were it of a joint with a figure of the chart.
//
// Of the figure only limits are known: every value between them is as likely (a rectangular distribution, JCGM 100
// 4.3.7). What making the part and reading it add is spread like Student's t. The density is that of their sum.
import type { Measured } from "./estimate";
import * as given from "./given";
import * as gum from "./gum";
import type { Figure } from "./prepared";

/** Degrees of freedom of the heavy-tailed likelihood of a reading, where so large a standard uncertainty is left of it. */
export function tailFreedom(measured: Measured, standard: number): number {
  return Math.min(measured.dof * (standard / measured.standard) ** 4, given.tailDof);
}

/** ln of the density of a reading, were it of a joint with that figure. */
export function logDensity(measured: Measured, figure: Figure): number {
  const standard = Math.hypot(measured.standard, figure.made);
  const dof = tailFreedom(measured, standard);
  const z = Math.abs(measured.mm - figure.mm) / standard;
  const limit = figure.limit / standard;
  if (limit < gum.narrow) return gum.studentLogPdf(z, dof) - Math.log(standard);
  // Both from the lower tail, where the small ones keep their digits.
  const share = gum.studentCdf(limit - z, dof) - gum.studentCdf(-limit - z, dof);
  return Math.log(share) - Math.log(2 * figure.limit);
}
