// One measured end beside one end of the chart.
import type { ComparedEnd, Comparison, Faces, Hold, Quantity } from "./types";
import * as given from "./assumptions";
import * as gum from "./gum";
import type { Measured } from "./estimate";
import type { Figure, KnownEnd, KnownRow, KnownValue } from "./prepared";

/** What was measured at one end. */
export interface MeasuredEnd {
  hold: Hold;
  faces: Faces;
  cap?: Measured;
  across?: Measured;
}

/** A measured quantity beside a figure. */
export interface Fit {
  quantity: Quantity;
  measured: Measured;
  figure: Figure;
  difference: number; // measured minus chart
  standard: number; // combined
  dof: number;
  agrees: boolean;
  near: boolean; // agrees, or misses by so little that it still counts against a claim
  other: boolean; // by another figure than the leading one
}

export interface EndFit {
  end: KnownEnd;
  fits: Fit[];
  missing: Quantity[]; // measured, but the chart has no figure
  agrees: boolean;
  near: boolean;
}

/** A row with its ends in the query's order. */
export interface RowFit {
  row: KnownRow;
  ends: EndFit[];
  agrees: boolean;
  near: boolean;
}

// Every effective degrees of freedom here is at least those of the repeatability.
const widest = gum.coverage(given.agreeLevel, given.repeatDof);
const narrowest = gum.coverage(given.agreeLevel, Infinity);

export const quantities: readonly Quantity[] = ["cap", "across"];

export function sameHold(a: Hold, b: Hold): boolean {
  return a === b || a === "unknown" || b === "unknown";
}

export function sameFaces(a: Faces, b: Faces): boolean {
  return a === b || a === "unknown" || b === "unknown";
}

/** fitEnd is undefined when nothing that was measured can be compared; holds are not looked at. */
export function fitEnd(asked: MeasuredEnd, end: KnownEnd): EndFit | undefined {
  const fits: Fit[] = [];
  const missing: Quantity[] = [];
  for (const quantity of quantities) {
    const measured = asked[quantity];
    if (measured === undefined) continue;
    if (quantity === "across" && !sameFaces(asked.faces, end.faces)) return undefined;
    const value = end[quantity];
    if (value === null) missing.push(quantity);
    else fits.push(fitValue(measured, value));
  }
  if (fits.length === 0) return undefined;
  return { end, fits, missing, agrees: fits.every((f) => f.agrees), near: fits.every((f) => f.near) };
}

function fitValue(measured: Measured, value: KnownValue): Fit {
  const lead = fitFigure(measured, value, false);
  if (lead.agrees) return lead;
  for (const other of value.others) {
    const fit = fitFigure(measured, other, true);
    if (fit.agrees) return fit;
  }
  return lead;
}

function fitFigure(measured: Measured, figure: Figure, other: boolean): Fit {
  const parts = [...measured.parts, { standard: figure.standard, dof: Infinity }];
  const standard = gum.combine(parts);
  const dof = gum.welchSatterthwaite(parts);
  const difference = measured.mm - figure.mm;
  const off = Math.abs(difference) / standard;
  // The quantile is dear: it is asked for only where it decides.
  const within = (reach: number): boolean => {
    if (off <= narrowest * reach) return true;
    if (off > widest * reach) return false;
    return off <= gum.coverage(given.agreeLevel, dof) * reach;
  };
  return {
    quantity: measured.quantity,
    measured,
    figure,
    difference,
    standard,
    dof,
    agrees: within(1),
    near: within(given.rivalReach),
    other,
  };
}

/** fitRow tries a row's ends in either order; undefined when an end cannot be compared or is held another way. */
export function fitRow(asked: readonly MeasuredEnd[], row: KnownRow, anyHold = false): RowFit | undefined {
  const [one, two] = [row.ends[0], row.ends[1] ?? row.ends[0]];
  if (one === undefined || two === undefined) return undefined;
  const orders =
    row.ends.length === 2 && asked.length === 2
      ? [
          [one, two],
          [two, one],
        ]
      : [[one, two]];
  const fits = orders.map((ends) => fitEnds(asked, ends, row, anyHold)).filter((f): f is RowFit => f !== undefined);
  return fits.sort((a, b) => distance(a) - distance(b))[0];
}

function fitEnds(
  asked: readonly MeasuredEnd[],
  ends: readonly KnownEnd[],
  row: KnownRow,
  anyHold: boolean,
): RowFit | undefined {
  const out: EndFit[] = [];
  for (let i = 0; i < asked.length; i++) {
    const [a, e] = [asked[i], ends[i]];
    if (a === undefined || e === undefined || !(anyHold || sameHold(a.hold, e.hold))) return undefined;
    // A figure for a cap means plain caps: such a row is no wing joint, whatever it leaves open.
    if (a.hold === "wing" && e.hold !== "wing" && e.cap !== null) return undefined;
    const fit = fitEnd(a, e);
    if (fit === undefined) return undefined;
    out.push(fit);
  }
  return { row, ends: out, agrees: out.every((f) => f.agrees), near: out.every((f) => f.near) };
}

/** How far a row is, in standard uncertainties of the readings alone, so that a vague row is not near for being vague. */
export function distance(fit: RowFit): number {
  let sum = 0;
  for (const end of fit.ends) {
    for (const f of end.fits) sum += (f.difference / f.measured.standard) ** 2;
  }
  return Math.sqrt(sum);
}

export function compared(fit: EndFit): ComparedEnd {
  const out: ComparedEnd = {};
  for (const f of fit.fits) {
    const c: Comparison = {
      measured: f.measured.mm,
      chart: f.figure.mm,
      chartText: f.figure.text,
      difference: f.difference,
      uncertainty: gum.coverage(given.agreeLevel, f.dof) * f.standard,
      unit: "mm",
    };
    out[f.quantity] = c;
  }
  return out;
}
