// The one measure that separates the sizes that are left.
import type { Quantity, TellApart } from "./types";
import { quantities, type MeasuredEnd, type RowFit } from "./agree";
import * as given from "./given";
import * as gum from "./gum";
import * as say from "./speech-sizes";
import { holdWords } from "./speech-words";
import type { Weighed } from "./weigh";

// What a fresh set of caliper readings would know, for a quantity that was not measured.
const fresh: Record<Quantity, number> = {
  cap: gum.combine([
    { standard: given.capRepeat, dof: 1 },
    { standard: gum.rectangular(given.usedPart), dof: 1 },
  ]),
  across: gum.combine([
    { standard: given.acrossRepeat, dof: 1 },
    { standard: gum.rectangular(given.usedPart), dof: 1 },
  ]),
};

// Seeing a clip settles more than any reading, but a clear difference in size comes first.
const seeing = 20;

export function tellApart(asked: readonly MeasuredEnd[], left: readonly Weighed[]): TellApart[] {
  const leads = left.map((w) => w.fits[0]).filter((f): f is RowFit => f !== undefined);
  if (leads.length < 2) return [];
  const found: { power: number; says: TellApart }[] = [];
  asked.forEach((end, n) => {
    const which = asked.length === 2 ? n : undefined; // the end needs naming only when there are two
    const holds = new Set(leads.map((f) => f.ends[n]?.end.hold ?? "unknown"));
    if (end.hold === "unknown" && holds.size > 1 && !holds.has("unknown"))
      found.push({ power: seeing, says: byHold(leads, n, which) });
    for (const quantity of quantities) {
      const says = byLength(leads, n, which, quantity, end[quantity] !== undefined);
      if (says !== undefined)
        found.push({ power: says.gap / (end[quantity]?.standard ?? fresh[quantity]), says: says.says });
    }
  });
  // The first of equals stays first: ends in order, hold before cap before across.
  return found
    .sort((a, b) => b.power - a.power)
    .slice(0, 1)
    .map((f) => f.says);
}

function byHold(leads: readonly RowFit[], n: number, which: number | undefined): TellApart {
  const holdOf = (f: RowFit) => f.ends[n]?.end.hold ?? "unknown";
  return {
    between: leads.map((f) => f.row.row.ref),
    end: n,
    apart: 0,
    able: true,
    tool: "digital-caliper",
    measure: "hold",
    expect: Object.fromEntries(leads.map((f) => [f.row.row.ref, holdOf(f)])),
    says: say.tellApart(
      "hold",
      which,
      leads.map((f) => ({ name: f.row.row.name, value: holdWords[holdOf(f)] })),
      false,
      0,
    ),
  };
}

function byLength(
  leads: readonly RowFit[],
  n: number,
  which: number | undefined,
  quantity: Quantity,
  measured: boolean,
): { gap: number; says: TellApart } | undefined {
  const faces = new Set(leads.map((f) => f.ends[n]?.end.faces));
  if (quantity === "across" && faces.size > 1 && !faces.has("unknown")) return undefined; // not the same measure
  const figures = leads.map((f) => f.ends[n]?.end[quantity] ?? null);
  const lengths = figures.map((f) => f?.mm ?? NaN);
  if (lengths.some(Number.isNaN)) return undefined;
  const gap = Math.max(...lengths) - Math.min(...lengths);
  if (gap === 0) return undefined;
  const options = leads.map((f, i) => ({ name: f.row.row.name, value: figures[i]?.text ?? "" }));
  return {
    gap,
    says: {
      between: leads.map((f) => f.row.row.ref),
      end: n,
      apart: gap,
      able: true,
      tool: "digital-caliper",
      measure: quantity,
      expect: Object.fromEntries(leads.map((f, i) => [f.row.row.ref, lengths[i] ?? NaN])),
      says: say.tellApart(quantity, which, options, measured, gap),
    },
  };
}
