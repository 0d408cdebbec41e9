// Lengths for reading: the leading unit first, the other one under it and marked as converted.
import { local } from "../../matcher/speech-number";
import type { Unit } from "../../matcher/types";
import { make } from "./element";

/** Exact, the international inch of 1959. */
export const mmPerInch = 25.4;

/** A length in one unit, with the decimal sign of the language: 1.1875 in, 30.16 mm. The step is about a caliper's in either unit. */
export function length(mm: number, unit: Unit): string {
  return local(unit === "in" ? `${(mm / mmPerInch).toFixed(4)} in` : `${mm.toFixed(2)} mm`);
}

/** A difference with its sign, a true minus for the negative. */
export function difference(mm: number, unit: Unit): string {
  const text = length(Math.abs(mm), unit);
  const zero = /^0.0+ /.test(text);
  return `${zero ? "" : mm < 0 ? "−" : "+"}${text}`;
}

export function other(unit: Unit): Unit {
  return unit === "in" ? "mm" : "in";
}

/** A number cell in both units. `own` is text that comes first as it was written, such as the chart's digits. */
export function bothUnits(mm: number, lead: Unit, how = length, own?: string): HTMLTableCellElement {
  const ownUnit: Unit = own ? (own.trim().endsWith("mm") ? "mm" : "in") : lead;
  const first = local(own ?? how(mm, lead));
  return make("td", { class: "num" }, first, make("span", { class: "converted" }, `≈ ${how(mm, other(ownUnit))}`));
}
