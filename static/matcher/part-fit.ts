// What was measured of a part beside each row of its table.
import type { Basis } from "./types";
import type { PartColumn, PartComparison, PartFigure, PartRow, PartTable } from "./part-types";
import * as given from "./given-weighing";
import { coarsePart, madePart } from "./given-parts";
import * as gum from "./gum";
import { freer } from "./part-measure";
import { weaker } from "./prepared";

/** One column as it was measured or counted. */
export interface TakenPart {
  column: PartColumn;
  value: number; // mm, or a count
  standard: number; // 0 of a count
  dof: number;
}

export interface PartFit {
  taken: TakenPart;
  compared: PartComparison;
  near: boolean; // agrees, or misses by so little that it still counts against a claim
  coarse: boolean; // reading and figure together are
  digits: boolean; // the figure's digits alone are
  edge: boolean; // agrees only because the reading is not better: a finer one might not
  other: boolean; // by another figure than the leading one
  figure: PartFigure;
}

export interface PartRowFit {
  row: PartRow;
  index: number;
  fits: PartFit[];
  unknown: PartColumn[]; // measured, and the chart has no figure
  without: PartColumn[]; // measured, and the chart says such a part has none
  unmeasured: PartColumn[]; // the chart has a figure, and nobody measured
  away: number; // the sum of differences in standard uncertainties
  agrees: boolean;
  near: boolean;
  basis: Basis;
}

export function fitParts(table: PartTable, taken: readonly TakenPart[]): PartRowFit[] {
  return table.rows.map((row, index) => fitRow(table, row, index, taken));
}

function fitRow(table: PartTable, row: PartRow, index: number, taken: readonly TakenPart[]): PartRowFit {
  const out: PartRowFit = {
    row,
    index,
    fits: [],
    unknown: [],
    without: [],
    unmeasured: [],
    away: 0,
    agrees: false,
    near: false,
    basis: "published",
  };
  for (const column of table.columns) {
    const value = row.values[column.id] ?? "unknown";
    const measured = taken.find((t) => t.column.id === column.id);
    if (measured === undefined) {
      if (typeof value === "object") out.unmeasured.push(column);
    } else if (value === "unknown") out.unknown.push(column);
    else if (value === "none") {
      out.without.push(column);
      out.away += farAway;
    } else {
      const fit = fitValue(measured, value, value.others ?? []);
      out.fits.push(fit);
      out.away += fit.compared.agrees && measured.standard === 0 ? 0 : away(fit);
      out.basis = weaker(out.basis, fit.figure.basis);
    }
  }
  const possible = out.fits.length > 0 && out.without.length === 0;
  out.agrees = possible && out.fits.every((f) => f.compared.agrees);
  out.near = possible && out.fits.every((f) => f.near);
  return out;
}

// A count that differs puts a row farther off than any length does that may be read again.
const farAway = 1000;

function away(fit: PartFit): number {
  if (fit.taken.standard === 0) return farAway + Math.abs(fit.compared.difference);
  return Math.min(farAway, Math.abs(fit.compared.difference) / fit.taken.standard);
}

function fitValue(taken: TakenPart, lead: PartFigure, others: readonly PartFigure[]): PartFit {
  const first = fitFigure(taken, lead, false);
  if (first.compared.agrees) return first;
  for (const figure of others) {
    const fit = fitFigure(taken, figure, true);
    if (fit.compared.agrees) return fit;
  }
  return first;
}

function fitFigure(taken: TakenPart, figure: PartFigure, other: boolean): PartFit {
  const { column, value } = taken;
  const compared: PartComparison = {
    column: column.id,
    label: column.label,
    measured: value,
    chartText: figure.text,
    difference: beyond(value, ...reach(column, figure)),
    uncertainty: 0,
    unit: column.match === "exact" ? "" : "mm",
    agrees: false,
  };
  const out: PartFit = { taken, compared, near: false, coarse: false, digits: false, edge: false, other, figure };
  if (column.match === "exact") {
    compared.agrees = compared.difference === 0;
    out.near = compared.agrees;
    return out;
  }
  const alone = own(column, figure);
  const standard = Math.hypot(taken.standard, alone);
  const bound = gum.coverage(given.agreeLevel, freer(taken.dof, taken.standard, standard)) * standard;
  compared.uncertainty = bound;
  compared.agrees = Math.abs(compared.difference) <= bound;
  out.near = Math.abs(compared.difference) <= bound * given.rivalReach;
  out.coarse = bound > coarsePart;
  out.edge = Math.abs(compared.difference) > gum.coverage(given.agreeLevel, Infinity) * alone;
  out.digits = column.below === undefined && Number(figure.half) >= given.wholeDigits;
  return out;
}

// From where to where a good part may measure: one figure, a range, or what lies under a nominal one.
function reach(column: PartColumn, figure: PartFigure): [number, number] {
  const least = Number(figure.is);
  return [least - Number(column.below ?? 0), Number(figure.to ?? figure.is)];
}

function beyond(value: number, least: number, greatest: number): number {
  return value < least ? value - least : value > greatest ? value - greatest : 0;
}

// What is not known of a figure: its last digit, or what its basis is worth, and making the part.
// A nominal figure is a name: its digits hide nothing.
function own(column: PartColumn, figure: PartFigure): number {
  const floors: Record<Basis, number> = {
    published: 0,
    measured: 0,
    "common-practice": given.commonPractice,
    memory: given.memoryAcross,
  };
  const half = column.below === undefined ? Number(figure.half) : 0;
  return Math.hypot(gum.rectangular(Math.max(half, floors[figure.basis])), gum.rectangular(madePart));
}
