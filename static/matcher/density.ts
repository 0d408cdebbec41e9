// How likely a reading is, were it of a joint with a figure of the chart.
import type { Measured } from "./estimate";
import * as given from "./given";
import * as gum from "./gum";
import type { Figure } from "./prepared";

/** Degrees of freedom of the heavy-tailed likelihood of a reading beside a figure. */
export function tailFreedom(measured: Measured, standard: number): number {
  return Math.min(measured.dof * (standard / measured.standard) ** 4, given.tailDof);
}

/** ln of the density of a reading, were it of a joint with that figure. */
export function logDensity(measured: Measured, figure: Figure): number {
  const standard = Math.hypot(measured.standard, figure.standard);
  const z = (measured.mm - figure.mm) / standard;
  return gum.studentLogPdf(z, tailFreedom(measured, standard)) - Math.log(standard);
}
