// One measured end beside one end of the chart.
import type { ComparedEnd, Comparison, Faces, Hold, Quantity } from "./types";
import * as given from "./given";
import * as gum from "./gum";
import type { Measured } from "./estimate";
import type { Figure, KnownEnd, KnownRow, KnownValue } from "./prepared";
import { quantities } from "./words";
import type { YokeRead } from "./yoke";

/** An end as it is spoken of: it needs naming only when there are two. */
export function namedEnd(asked: readonly MeasuredEnd[], n: number): number | undefined {
  return asked.length === 2 ? n : undefined;
}

/** What was measured at one end. */
export interface MeasuredEnd {
  hold: Hold;
  faces: Faces;
  cap?: Measured;
  across?: Measured;
  yoke?: YokeRead; // when it was read on a yoke; cap and across are the joint's all the same
}

/** A measured quantity beside a figure. */
export interface Fit {
  quantity: Quantity;
  measured: Measured;
  figure: Figure;
  difference: number; // measured minus chart
  standard: number; // combined
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
  away: number; // in standard uncertainties of the readings alone: a vague row is not near for being vague
  held: boolean; // every end is held as asked, or that is not known
  agrees: boolean;
  near: boolean;
}

// Every effective degrees of freedom here is at least those of the repeatability.
const widest = gum.coverage(given.agreeLevel, given.repeatDof);

/** A difference of more is never near, mm: beside figures of so wide a limit and so large an uncertainty of making. */
export function nearAtMost(measured: Measured, limit: number, made: number): number {
  return given.rivalReach * (limit + widest * Math.hypot(measured.standard, made));
}

export function sameHold(a: Hold, b: Hold): boolean {
  return a === b || a === "unknown" || b === "unknown";
}

export function sameFaces(a: Faces, b: Faces): boolean {
  return a === b || a === "unknown" || b === "unknown";
}

/** fitEnd is undefined when nothing that was measured can be compared; holds are not looked at. */
export function fitEnd(asked: MeasuredEnd, end: KnownEnd): EndFit | undefined {
  if (asked.across !== undefined && !sameFaces(asked.faces, end.faces)) return undefined;
  const fits: Fit[] = [];
  const missing: Quantity[] = [];
  quantities.forEach((quantity) => {
    const measured = asked[quantity];
    const value = end[quantity];
    if (measured === undefined) return;
    if (value === null) missing.push(quantity);
    else fits.push(fitValue(measured, value));
  });
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
  const difference = measured.mm - figure.mm;
  const off = Math.abs(difference);
  const { rest, factor } = spreadOf(measured, figure.made);
  // The interval is dear: it is asked for only where it decides, between what limits and spread have each by
  // themselves and what they have end to end.
  const within = (reach: number): boolean => {
    if (off <= Math.max(given.agreeLevel * figure.limit, factor * rest) * reach) return true;
    if (off > (figure.limit + factor * rest) * reach) return false;
    return off <= bound(measured, figure) * reach;
  };
  return {
    quantity: measured.quantity,
    measured,
    figure,
    difference,
    standard: Math.hypot(measured.standard, figure.standard),
    agrees: within(1),
    near: within(given.rivalReach),
    other,
  };
}

/** Half-width of the interval within which a reading and a figure agree. */
export function reach(fit: Fit): number {
  return bound(fit.measured, fit.figure);
}

// A reading beside the figures of its quantity: making the part adds the same to all of them, and many have one limit.
interface Spread {
  rest: number; // standard uncertainty of measuring and making
  dof: number; // of the measuring (JCGM 100 G.4.1): those of the making are taken as endless
  factor: number; // coverage factor of the rest alone
  bounds: Map<number, number>; // by the figure's limit
}

const spreads = new WeakMap<Measured, Spread>();

function spreadOf(measured: Measured, made: number): Spread {
  const before = spreads.get(measured);
  if (before !== undefined) return before;
  const rest = Math.hypot(measured.standard, made);
  const dof = measured.dof * (rest / measured.standard) ** 4;
  const found = { rest, dof, factor: gum.coverage(given.agreeLevel, dof), bounds: new Map<number, number>() };
  spreads.set(measured, found);
  return found;
}

// The figure lies anywhere within its limit; making the part and measuring it add to that.
function bound(measured: Measured, figure: Figure): number {
  const { rest, dof, bounds } = spreadOf(measured, figure.made);
  const before = bounds.get(figure.limit);
  if (before !== undefined) return before;
  const found = gum.coverageOfSum(given.agreeLevel, figure.limit, rest, dof);
  bounds.set(figure.limit, found);
  return found;
}

/** fitRow puts the measured ends beside a row's: in both orders when two ends meet a conversion joint. What cannot be
 *  compared is left out. */
export function fitRow(asked: readonly MeasuredEnd[], row: KnownRow): RowFit[] {
  const one = row.ends[0];
  const two = row.ends[1] ?? one;
  if (one === undefined || two === undefined) return [];
  const straight = fitEnds(asked, [one, two], row);
  const turned = row.ends.length === 2 && asked.length === 2 ? fitEnds(asked, [two, one], row) : undefined;
  return [straight, turned].filter((f): f is RowFit => f !== undefined);
}

function fitEnds(asked: readonly MeasuredEnd[], ends: readonly KnownEnd[], row: KnownRow): RowFit | undefined {
  const out: EndFit[] = [];
  let held = true;
  for (let i = 0; i < asked.length; i++) {
    const a = asked[i];
    const e = ends[i];
    if (a === undefined || e === undefined) return undefined;
    held = held && sameHold(a.hold, e.hold);
    // A figure for a cap means plain caps: such a row is no wing joint, whatever it leaves open.
    if (a.hold === "wing" && e.hold !== "wing" && e.cap !== null) return undefined;
    const fit = fitEnd(a, e);
    if (fit === undefined) return undefined;
    out.push(fit);
  }
  return {
    row,
    ends: out,
    away: distance(out),
    held,
    agrees: out.every((f) => f.agrees),
    near: out.every((f) => f.near),
  };
}

function distance(ends: readonly EndFit[]): number {
  let sum = 0;
  ends.forEach(({ fits }) => {
    fits.forEach((f) => {
      sum += (f.difference / f.measured.standard) ** 2;
    });
  });
  return Math.round(Math.sqrt(sum) * 1e6) / 1e6; // what differs only in the last digits is a tie
}

export function compared(fit: EndFit): ComparedEnd {
  const out: ComparedEnd = {};
  for (const f of fit.fits) {
    const c: Comparison = {
      measured: f.measured.mm,
      chart: f.figure.mm,
      chartText: f.figure.text,
      difference: f.difference,
      uncertainty: reach(f),
      unit: "mm",
    };
    out[f.quantity] = c;
  }
  return out;
}
