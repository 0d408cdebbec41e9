// The register of assumptions: a constant is declared by `assume`, which files it, so
// that it cannot be used without being in the list the about page prints.

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

/** assume files a constant of the method and returns its value. */
export function assume(
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

/** Every constant of the method, in the order of its declaration. */
export const assumptions: readonly Assumption[] = list;
