// What a verdict says: first the verdict, then the numbers beside the chart's, then
// what to do. Short plain words, for somebody with dirty hands. Every sentence is made
// here or in a speech-*.ts beside it, from numbers and words alone, so that they can be
// read together and put into another language.
//
// Never a share of a hundred, and never that a joint will hold: only what was compared.
import type { Faces, Hold, Quantity, Size, Unit } from "./types";
import type { EndFit, MeasuredEnd, RowFit } from "./agree";
import * as given from "./given";
import type { Doubt } from "./claim";
import { putRight } from "./speech-estimate";
import type { Worn } from "./wear";
import { inch } from "./reading";
import { checkedYokes, clipsNotMeasured, readOnYoke, serviceOnly } from "./speech-yokes";
import {
  basisWords,
  both,
  capital,
  facesWords,
  holdWords,
  isNothing,
  list,
  ofEnd,
  offBy,
  sizeCalled,
  some,
} from "./speech-words";

// ---- heads

// What was measured, by how many yokes it was read on; none: the joint itself.
const is = ["This is", "This yoke takes", "These yokes take"];
const mayBe = ["It may be", "This yoke may take", "These yokes may take"];

export function identified(names: readonly string[], conversion: boolean, yokes: number): string {
  return `${is[yokes] ?? ""} ${sizeCalled(names, conversion)}.`;
}

export function possible(
  names: readonly string[],
  conversion: boolean,
  yokes: number,
  doubt: Doubt | undefined,
): string {
  return `${mayBe[yokes] ?? ""} ${sizeCalled(names, conversion)}, but ${doubt === undefined ? "these readings do not settle it" : but(doubt)}.`;
}

function but(doubt: Doubt): string {
  switch (doubt.kind) {
    case "one-quantity":
      return `only the ${doubt.yoke === undefined ? doubt.measured : readOnYoke[doubt.measured]} was measured`;
    case "second-size":
      return "one reading does not go with it";
    case "hold-not-asked":
      return "how yours is held is not known yet";
    case "faces-not-asked":
      return "the faces you measured between are not known";
    case "clips-unmeasured":
      return clipsNotMeasured();
    case "service-joint":
      return serviceOnly();
    case "coarse":
      return "these readings and the chart together are too coarse to name it outright";
    case "chart-digits":
      return `the chart prints ${doubt.text} without more digits`;
    case "memory":
      return "the chart's figures for it are recalled, not published";
    case "chart-hold":
      return "the chart does not know how that joint is held";
    case "chart-faces":
      return "the chart does not know which faces its across goes with";
    case "other-figure":
      return `the ${doubt.quantity} agrees only with another figure given for it`;
    case "no-figure":
      return `the chart has no ${doubt.quantity} for it`;
    case "not-likely":
      return "these readings do not settle it";
  }
}

export const between = (names: readonly string[]): string =>
  `These readings fit ${names.length} sizes: ${some(names, 4)}.`;
export const notInChart = (ends: number, yokes: number): string =>
  yokes === 1
    ? "No row of the chart fits this yoke."
    : ends === 2
      ? "No row of the chart has these two ends."
      : "This joint is in no row of the chart.";
export const cannotRead = (n: number): string =>
  n === 1 ? "One thing must be put right first." : `${n} things must be put right first.`;
export const nothingMeasured = (): string => "There is no reading yet.";
export const doNotBelong = (): string => "Measure again: these readings do not belong together.";
export const otherFaces = (right: readonly Faces[]): string =>
  `Measure again, ${list(
    right.map((f) => facesWords[f]),
    "or",
  )}.`;

// ---- because

/** The unit that is spoken first. */
export function leadOf(asked: readonly MeasuredEnd[]): Unit {
  return asked.flatMap((e) => [e.cap, e.across]).find((m) => m !== undefined)?.how.lead ?? "mm";
}

/** The readings beside the chart's figures, one sentence for each. */
export function beside(fit: RowFit): string[] {
  return fit.ends.flatMap((end, n) =>
    end.fits.map((f) => {
      const what = `${fit.ends.length > 1 ? `end ${n + 1} ` : ""}${f.quantity}`;
      const yours = isNothing(f.difference)
        ? "yours is the same"
        : `yours is ${offBy(f.difference, f.quantity, f.measured.how.lead)}`;
      return `${capital(what)} ${both(f.measured.mm, f.measured.how.lead)}. The chart has ${f.figure.text}: ${yours}.`;
    }),
  );
}

/** What was taken off the readings for the condition of the part. */
export function condition(asked: readonly MeasuredEnd[]): string[] {
  const all = asked.flatMap((e) => [e.cap, e.across]).filter((m) => m !== undefined);
  const put = [...new Set(all.flatMap((m) => putRight(m.quantity, m.how, m.shift, m.estimate.uncertainty)))];
  return put.length === 0 ? [] : [`${capital(list(put))}: that is put right in these figures.`];
}

/** How far readings and chart together may be off; from the expanded uncertainties. */
export function within(bounds: readonly { quantity: string; mm: number }[], lead: Unit): string {
  return `Readings and chart together can be off by ${list(bounds.map((b) => `±${both(b.mm, lead)} on the ${b.quantity}`))}, so ${bounds.length > 1 ? "these agree" : "this agrees"}.`;
}

/** Coarse figures of the chart, which agree with much. */
export function wholeDigits(fit: RowFit): string[] {
  const coarse = fit.ends.flatMap((e) => e.fits.filter((f) => f.figure.half >= given.wholeDigits));
  const widest = Math.max(...coarse.map((f) => f.figure.half));
  const lead = coarse[0]?.measured.how.lead ?? "mm";
  return coarse.length === 0
    ? []
    : [
        `The chart prints ${list([...new Set(coarse.map((f) => f.figure.text))])} without more digits: a joint ${both(widest, lead)} off would agree too.`,
      ];
}

/** How far all the rest is, in place of how likely this is; the figure is rounded down. Holds are those of the ends. */
export function nothingWithin(mm: number, holds: readonly Hold[], lead: Unit): string[] {
  if (!Number.isFinite(mm) || mm < 0.01) return [];
  const step = mm < 0.1 ? 100 : 10;
  const millimetres = `${Math.floor(mm * step) / step} mm`;
  const inches = `${(Math.floor((mm / inch) * 1000) / 1000).toFixed(3)} in`;
  const [hold = "unknown"] = holds;
  const alike = holds.every((h) => h === hold);
  const held = !alike ? " that is held as yours is" : hold === "unknown" ? "" : ` that is held by ${holdWords[hold]}`;
  return [
    `Nothing else in the chart${held} comes within ${lead === "in" ? `${inches} (${millimetres})` : `${millimetres} (${inches})`} of yours in both cap and across.`,
  ];
}

/** A cap below its size, and what two sources allow. */
export function worn(w: Worn, lead: Unit): string {
  return `The cap${ofEnd(w.end)} reads ${both(w.short, lead)} below its size: wear, unless the reading is off. Sources differ on how much play a fitted joint may have: up to ${both(given.playAllowed, lead)} (Toyota, propeller-shaft assembly), or up to ${both(given.playRenew, lead)}, and above that renew it (Dana, driveshaft service manual).`;
}

export function nextNearest(size: Size): string {
  const miss = size.because.slice(0, 1).toLowerCase() + size.because.slice(1);
  return `The nearest other size is ${size.names[0] ?? ""}: ${miss}`;
}

export function nearestMisses(size: Size): string {
  const miss = size.because.slice(0, 1).toLowerCase() + size.because.slice(1);
  return `The nearest is ${size.names[0] ?? ""}, and it does not match: ${miss}`;
}

/** What the chart's figures, hold and faces rest on; the last two only where they rest on less. */
export function basis(fit: RowFit): string[] {
  const says = [`The chart's figures for it are ${basisWords[fit.row.basis]}.`];
  const weak = (end: EndFit): string[] => {
    if (fit.row.basis === "memory" || end.end.hold === "unknown") return [];
    const parts: string[] = [];
    if (end.end.holdBasis === "memory") parts.push(`that it is held by ${holdWords[end.end.hold]}`);
    if (end.end.facesBasis === "memory" && end.end.faces !== "unknown")
      parts.push(`that it is measured ${facesWords[end.end.faces]}`);
    return parts;
  };
  const parts = [...new Set(fit.ends.flatMap(weak))];
  if (parts.length > 0) says.push(`${capital(list(parts))} is recalled, not published.`);
  return says;
}

export const otherHolds = (sizes: readonly Size[]): string[] =>
  sizes.map(
    (s) =>
      `${s.names.join(" and ")} ${s.names.length > 1 ? "have" : "has"} the same figures but ${s.names.length > 1 ? "are" : "is"} held by ${holdWords[s.hold]}.`,
  );

/** What was compared, and what was not. */
export function checked(compared: readonly Quantity[], asked: readonly MeasuredEnd[]): string {
  const seen = asked.every((e) => e.hold !== "unknown") ? ", and how it is held" : "";
  const other = asked.length === 1 ? "the other pair of caps, " : "";
  const yokes = asked.filter((e) => e.yoke !== undefined).length;
  if (yokes > 0) return checkedYokes(list([...new Set(compared)]), seen, asked);
  return `Compared: ${list([...new Set(compared)])}${seen}. Not compared: ${other}clip thickness, wear inside the caps, the yokes.`;
}

export const holdNotInChart = (hold: Hold): string =>
  `The chart has no row held by ${holdWords[hold]}.${hold === "injected" ? " The joint sold to replace one usually has inside clips." : ""}`;
export const notComplete = (): string =>
  "The chart is not complete: a joint that is not in it can still be a common one.";
export const facesInChart = (hold: Hold, asked: Faces, right: readonly Faces[]): string =>
  `Your across is ${facesWords[asked]}. The chart has ${hold === "unknown" ? "acrosses" : `joints held by ${holdWords[hold]}`} ${list(
    right.map((f) => facesWords[f]),
    "or",
  )} only, and the two differ by more than the step between some sizes.`;
export const coarseReadings = (): string => "Readings and figures this coarse cannot part sizes this close.";
