// What stands between one size left and naming it outright. The order is the order in
// which doubts are told: the first one heads the verdict.
import type { Hold, Quantity } from "./types";
import * as given from "./given";
import { reach, type MeasuredEnd } from "./agree";
import type { Weighed } from "./weigh";

export type Doubt =
  | { kind: "one-quantity"; measured: Quantity; missing: Quantity }
  | { kind: "hold-not-asked"; hold: Hold }
  | { kind: "faces-not-asked" }
  | { kind: "memory" }
  | { kind: "chart-hold" }
  | { kind: "chart-faces" }
  | { kind: "other-figure"; quantity: Quantity; text: string }
  | { kind: "no-figure"; quantity: Quantity }
  | { kind: "coarse" }
  | { kind: "second-size"; says: string }
  | { kind: "not-likely" };

export function doubts(asked: readonly MeasuredEnd[], size: Weighed): Doubt[] {
  const lead = size.fits[0];
  if (lead === undefined) return [{ kind: "not-likely" }];
  const out: Doubt[] = [];
  asked.forEach((end, i) => {
    const fit = lead.ends[i];
    if (fit === undefined) return;
    const known = fit.end;
    if (end.cap === undefined && known.cap !== null)
      out.push({ kind: "one-quantity", measured: "across", missing: "cap" });
    if (end.across === undefined) out.push({ kind: "one-quantity", measured: "cap", missing: "across" });
    if (end.hold === "unknown") out.push({ kind: "hold-not-asked", hold: known.hold });
    else if (end.faces === "unknown" && end.across !== undefined) out.push({ kind: "faces-not-asked" });
    if (known.hold === "unknown") out.push({ kind: "chart-hold" });
    else if (known.faces === "unknown") out.push({ kind: "chart-faces" });
    for (const quantity of fit.missing) out.push({ kind: "no-figure", quantity });
    for (const f of fit.fits) {
      if (f.other) out.push({ kind: "other-figure", quantity: f.quantity, text: f.figure.text });
      const limit = f.quantity === "cap" ? given.coarseCap : given.coarseAcross;
      if (reach(f) > limit) out.push({ kind: "coarse" });
      if (f.measured.doubt !== undefined) out.push({ kind: "second-size", says: f.measured.doubt });
    }
  });
  if (lead.row.basis === "memory") out.push({ kind: "memory" });
  if (size.probability < given.claimAt) out.push({ kind: "not-likely" });
  return ordered(out);
}

const order: readonly Doubt["kind"][] = [
  "one-quantity",
  "second-size",
  "hold-not-asked",
  "faces-not-asked",
  "coarse",
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
