// Every slip there may be in a set of readings, each as a hypothesis: what the readings
// would be without it, and how often it is made.
//
//   of writing   the unit, the place, the point, two digits: readings are read anew
//   of reading   a line of an inch rule missed: a fixed shift
//   of faces     clips, grooves, plates, ears: too long by an amount nobody knows yet
//   of half      only to the centre of the cross, only the radius
//   of looking   another hold was chosen
import type { Hold, Quantity } from "./types";
import type { MeasuredEnd } from "./agree";
import type { Measured } from "./estimate";
import * as given from "./given";
import * as gum from "./gum";
import type { AskedEnd } from "./query";
import { inch, type Reading } from "./reading";
import { type Change, digitsExchanged, otherUnit, places, pointMoved } from "./slips-readings";
import { quantities } from "./words";

export type Slip =
  | "inches-for-millimetres"
  | "millimetres-for-inches"
  | "cap-across-exchanged"
  | "decimal-point"
  | "digits-exchanged"
  | "sixteenth"
  | "thirty-second"
  | "groove-outer-faces"
  | "clips-included"
  | "over-caps-of-inside-clip"
  | "over-plates"
  | "over-ears"
  | "centre-to-cap"
  | "radius-for-diameter"
  | "wrong-hold";

export interface Hypothesis {
  slip: Slip | undefined; // undefined: the readings as they are
  end: number;
  of?: Quantity; // left out: of both, or of none
  ends: MeasuredEnd[]; // as they would be without it
  logPrior: number; // with the factor by which it stretches lengths: weights are densities of the readings as they are
  longer?: { least: number; most: number }; // the across reads too long by an unknown amount
  holds?: readonly Hold[]; // the holds it can be made with
}

/** Makes the measured end of an asked one: again for each slip of writing. */
export type Measure = (end: AskedEnd, n: number) => MeasuredEnd;

/** hypotheses lists them all; the plain reading comes first. */
export function hypotheses(asked: readonly AskedEnd[], ends: readonly MeasuredEnd[], measure: Measure): Hypothesis[] {
  const out: Hypothesis[] = [{ slip: undefined, end: 0, ends: [...ends], logPrior: 0 }];
  out.push(...ofWriting(asked, ends, measure));
  ends.forEach((end, n) => {
    // A yoke has no faces of the joint, its figures are worked out from more than one
    // reading, and which distance was measured goes by the hold.
    if (asked[n]?.taken === "yoke") return;
    out.push(...ofMeasuring(end, n, ends));
    out.push({ slip: "wrong-hold", end: n, ends: [...ends], logPrior: Math.log(given.slipHold) });
  });
  return out;
}

// ---- of writing

function ofWriting(asked: readonly AskedEnd[], ends: readonly MeasuredEnd[], measure: Measure): Hypothesis[] {
  const out: Hypothesis[] = [];
  const add = (
    slip: Slip,
    prior: number,
    which: readonly number[],
    rewritten: (end: AskedEnd) => AskedEnd | undefined,
    of?: Quantity,
  ): void => {
    const changed = ends.slice();
    let stretch = 0;
    for (const n of which) {
      const before = asked[n];
      const after = before && rewritten(before);
      if (before === undefined || after === undefined || !possible(after)) return;
      const end = measure(after, n);
      if (quantities.some((q) => end[q]?.trouble !== undefined)) return;
      changed[n] = end;
      if (stretches.includes(slip)) stretch += stretched(before, after);
    }
    const h: Hypothesis = { slip, end: which[0] ?? 0, ends: changed, logPrior: Math.log(prior) + stretch };
    if (of !== undefined) h.of = of;
    out.push(h);
  };

  const all = asked.map((_, n) => n);
  const wholes = asked.length === 2 ? [all, ...all.map((n) => [n])] : [all];
  wholes.forEach((which, i) => {
    const part = i === 0 ? 1 : given.slipOfPart;
    add("cap-across-exchanged", given.slipExchanged * part, which, (end) => ({
      ...end,
      cap: end.across,
      across: end.cap,
    }));
    for (const unit of ["mm", "in"] as const) {
      const slip = unit === "mm" ? "inches-for-millimetres" : "millimetres-for-inches";
      const change: Change = (r) => (r.unit === unit ? otherUnit(r) : undefined);
      add(slip, given.slipUnits * part, which, (end) => rewrite(rewrite(end, "cap", change), "across", change));
    }
    for (const p of [-3, -2, -1, 1, 2]) {
      const change = pointMoved(p);
      add("decimal-point", given.slipPoint * part, which, (end) =>
        rewrite(rewrite(end, "cap", change), "across", change),
      );
    }
  });
  for (const n of all) {
    for (const of of quantities) {
      const end = asked[n];
      const first = end?.[of][0];
      if (end === undefined || first === undefined) continue;
      const one = (slip: Slip, prior: number, change: Change): void =>
        add(slip, prior, [n], (e) => rewrite(e, of, change), of);
      if (end.cap.length > 0 && end.across.length > 0) {
        const unit = first.unit === "mm" ? "inches-for-millimetres" : "millimetres-for-inches";
        one(unit, given.slipUnits * given.slipOfPart, otherUnit);
        for (const p of [-3, -2, -1, 1, 2]) one("decimal-point", given.slipPoint, pointMoved(p));
      }
      const where = places(first);
      for (const place of where) one("digits-exchanged", given.slipDigits / where.length, digitsExchanged(place));
    }
  }
  return out;
}

const stretches: readonly Slip[] = ["inches-for-millimetres", "millimetres-for-inches", "decimal-point"];

function stretched(before: AskedEnd, after: AskedEnd): number {
  let sum = 0;
  for (const q of quantities) {
    const [a, b] = [after[q][0], before[q][0]];
    if (a !== undefined && b !== undefined) sum += Math.log(a.mm / b.mm);
  }
  return sum;
}

// The end with its readings of one quantity changed: all of them, or those that cannot be, when the others can.
function rewrite(end: AskedEnd | undefined, q: Quantity, change: Change): AskedEnd | undefined {
  if (end === undefined) return undefined;
  const some = end.beyond[q].length > 0 && end.beyond[q].length < end[q].length;
  const out: Reading[] = [];
  for (const r of end[q]) {
    const changed = some && !end.beyond[q].includes(r) ? r : change(r);
    if (changed === undefined) return undefined;
    out.push(changed);
  }
  return { ...end, [q]: out };
}

function possible(end: AskedEnd): boolean {
  const within = (q: Quantity, least: number, most: number): boolean =>
    end[q].every((r) => r.mm >= least && r.mm <= most);
  return (
    within("cap", given.leastCap, given.greatestCap) &&
    within("across", given.leastAcross, given.greatestAcross) &&
    Math.max(...end.cap.map((r) => r.mm)) < Math.min(...end.across.map((r) => r.mm))
  );
}

// ---- of reading, of faces, of half

const inside: readonly Hold[] = ["inside-clip", "injected"];
const outside: readonly Hold[] = ["outside-clip"];

type OfFaces = readonly [slip: Slip, prior: number, least: number, most: number, holds: readonly Hold[]];

// Outer groove faces and inner faces with the clips in read alike: they are one slip.
const clips: readonly OfFaces[] = [
  ["groove-outer-faces", given.slipOuterFaces, given.clipsLeast, given.clipsMost, inside],
  ["clips-included", given.slipOverClips, given.clipsLeast, given.clipsMost, outside],
];
const faces: readonly OfFaces[] = [
  ...clips,
  ["over-caps-of-inside-clip", given.slipOverCaps, given.capsLeast, given.capsMost, inside],
  ["over-plates", given.slipOverPlates, given.platesLeast, given.platesMost, ["plate"]],
  ["over-ears", given.slipOverEars, given.earsLeast, given.earsMost, outside],
];

const missedLines: readonly [Slip, number][] = [
  ["sixteenth", inch / 16],
  ["thirty-second", inch / 32],
];

// Readings of an inch scale that is read by its lines.
function byLines(m: Measured): boolean {
  return m.estimate.used.every((text) => text.endsWith(" in") && (text.includes("/") || m.step >= given.coarseStep));
}

function ofMeasuring(end: MeasuredEnd, n: number, ends: readonly MeasuredEnd[]): Hypothesis[] {
  const out: Hypothesis[] = [];
  const moved = (slip: Slip, prior: number, q: Quantity, change: Partial<Measured>): void => {
    const m = end[q];
    if (m === undefined) return;
    const changed = ends.slice();
    changed[n] = { ...end, [q]: { ...m, ...change } };
    out.push({ slip, end: n, of: q, ends: changed, logPrior: Math.log(prior) });
  };
  for (const q of quantities) {
    const m = end[q];
    if (m === undefined || !byLines(m)) continue;
    for (const [slip, line] of missedLines) {
      for (const by of [line, -line]) moved(slip, given.slipFraction / 8, q, { mm: m.mm + by });
    }
  }
  const { cap, across } = end;
  if (cap !== undefined)
    moved("radius-for-diameter", 2 * given.slipRadius, "cap", { mm: 2 * cap.mm, standard: 2 * cap.standard });
  if (across === undefined) return out;
  const standard = 2 * Math.hypot(across.standard, gum.rectangular(given.centreSpread));
  moved("centre-to-cap", 2 * given.slipCentre, "across", { mm: 2 * across.mm, standard });
  out.push(...faces.map((f) => tooLong(f, n, ends)));
  return out;
}

function tooLong(
  [slip, prior, least, most, holds]: OfFaces,
  n: number,
  ends: readonly MeasuredEnd[],
): Hypothesis & { slip: Slip } {
  return { slip, end: n, of: "across", ends: [...ends], logPrior: Math.log(prior), longer: { least, most }, holds };
}

/** The slips of faces by one or two clips, of readings that may agree as they are too. */
export function ofClips(n: number, ends: readonly MeasuredEnd[]): (Hypothesis & { slip: Slip })[] {
  return clips.map((f) => tooLong(f, n, ends));
}
