// What stands between one size left and naming it outright. The order is the order in
// which doubts are told: the first one heads the verdict.
import type { Hold, Quantity } from "./types";
import type { Measured } from "./estimate";
import * as given from "./given";
import * as gum from "./gum";
import { type Fit, reach, sameFaces, sameHold, type MeasuredEnd } from "./agree";
import { type Box, within } from "./candidates";
import type { KnownEnd, Prepared } from "./prepared";
import type { Weighed } from "./weigh";
import { quantities } from "./words";
import { clipFor, unmeasured } from "./yoke-beside";

export type Doubt =
  | { kind: "one-quantity"; measured: Quantity; missing: Quantity; yoke?: Hold }
  | { kind: "hold-not-asked"; hold: Hold }
  | { kind: "faces-not-asked" }
  | { kind: "clips-unmeasured"; says: string }
  | { kind: "service-joint" }
  | { kind: "memory" }
  | { kind: "chart-hold" }
  | { kind: "chart-faces" }
  | { kind: "other-figure"; quantity: Quantity }
  | { kind: "no-figure"; quantity: Quantity }
  | { kind: "coarse" }
  | { kind: "chart-digits"; text: string }
  | { kind: "second-size"; says: string }
  | { kind: "not-likely" };

export function doubts(asked: readonly MeasuredEnd[], size: Weighed, chart: Prepared): Doubt[] {
  const lead = size.fits[0];
  if (lead === undefined) return [{ kind: "not-likely" }];
  const out: Doubt[] = [];
  asked.forEach((end, i) => {
    const fit = lead.ends[i];
    if (fit === undefined) return;
    const known = fit.end;
    const onYoke = end.yoke === undefined ? {} : { yoke: end.yoke.hold };
    if (end.cap === undefined && known.cap !== null)
      out.push({ kind: "one-quantity", measured: "across", missing: "cap", ...onYoke });
    if (end.across === undefined) out.push({ kind: "one-quantity", measured: "cap", missing: "across", ...onYoke });
    if (end.hold === "unknown") out.push({ kind: "hold-not-asked", hold: known.hold });
    else if (end.faces === "unknown" && end.across !== undefined) out.push({ kind: "faces-not-asked" });
    if (unmeasured(end)) out.push({ kind: "clips-unmeasured", says: clipFor(asked, i, lead) });
    if (end.yoke?.hold === "injected") out.push({ kind: "service-joint" });
    if (known.hold === "unknown") out.push({ kind: "chart-hold" });
    else if (known.faces === "unknown") out.push({ kind: "chart-faces" });
    for (const quantity of fit.missing) out.push({ kind: "no-figure", quantity });
    for (const f of fit.fits) {
      if (f.other) out.push({ kind: "other-figure", quantity: f.quantity });
      if (reach(f) > limitOf(f)) {
        const whole = f.figure.half >= given.wholeDigits;
        out.push(whole ? { kind: "chart-digits", text: f.figure.text } : { kind: "coarse" });
      }
      if (f.measured.doubt !== undefined && otherSize(end, f, chart))
        out.push({ kind: "second-size", says: f.measured.doubt });
    }
  });
  if (lead.row.basis === "memory") out.push({ kind: "memory" });
  if (size.probability < given.claimAt) out.push({ kind: "not-likely" });
  return ordered(out);
}

/** Whether a reading by itself is too coarse to name anything by, however finely the chart is printed. */
export function coarseReading(measured: Measured): boolean {
  return gum.coverage(given.agreeLevel, measured.dof) * measured.standard > limitOf(measured);
}

function limitOf({ quantity }: { quantity: Quantity }): number {
  return quantity === "cap" ? given.coarseCap : given.coarseAcross;
}

// Whether the reading that was set aside is what some joint held alike would show: then a
// second size may have been measured, and two readings do not outvote it. What no joint
// shows was a gross error.
function otherSize(end: MeasuredEnd, fit: Fit, chart: Prepared): boolean {
  const { quantity, measured } = fit;
  if (measured.far === undefined || end.yoke !== undefined) return true;
  const round = (mm: number, limit: number): readonly [number, number] => [mm - limit, mm + limit];
  // Another pair of caps may be as wide across as it likes; another across has these caps.
  const box: Box =
    quantity === "cap" || end.cap === undefined
      ? { [quantity]: round(measured.far, quantity === "cap" ? given.coarseCap : given.coarseAcross) }
      : { cap: round(end.cap.mm, given.coarseCap), across: round(measured.far, given.coarseAcross) };
  return within(chart, () => box).some((row) =>
    row.ends.some((e) => sameHold(e.hold, end.hold) && sameFaces(e.faces, end.faces) && inBox(e, box)),
  );
}

function inBox(end: KnownEnd, box: Box): boolean {
  return quantities.every((q) => {
    const [value, range] = [end[q], box[q]];
    if (range === undefined) return true;
    return value !== null && [value, ...value.others].some((v) => v.mm >= range[0] && v.mm <= range[1]);
  });
}

const order: readonly Doubt["kind"][] = [
  "one-quantity",
  "second-size",
  "hold-not-asked",
  "faces-not-asked",
  "clips-unmeasured",
  "service-joint",
  "coarse",
  "chart-digits",
  "memory",
  "chart-hold",
  "chart-faces",
  "other-figure",
  "no-figure",
  "not-likely",
];

// One doubt of a kind is enough, though two ends may both have it.
function ordered(found: readonly Doubt[]): Doubt[] {
  return order.flatMap((kind) => found.filter((d) => d.kind === kind).slice(0, 1));
}
