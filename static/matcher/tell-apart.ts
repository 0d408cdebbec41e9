// The one measure that separates the sizes that are left, and the tool that can take it.
//
// A tool parts two sizes when three readings of either, taken with it, could not be
// readings of the other: the chart's figures must lie farther apart than both reaches.
import type { Faces, Hold, Quantity, TellApart, Tool } from "./types";
import { namedEnd, type MeasuredEnd, type RowFit } from "./agree";
import { foreseen, type How } from "./estimate";
import * as given from "./given";
import * as gum from "./gum";
import type { Figure } from "./prepared";
import * as say from "./speech-sizes";
import { holdWords } from "./speech-words";
import type { Weighed } from "./weigh";
import { quantities } from "./words";
import { byClip, retold, unmeasured } from "./yoke-beside";

// Three readings show a slip that two only raise.
const readings = 3;

// Seeing a clip settles more than any reading, but a clear difference in size comes first.
const seeing = 20;

// The plainest first: what is most often at hand, and asks least of it.
const plainest: readonly Tool[] = ["steel-rule", "vernier-caliper", "digital-caliper", "micrometer"];

interface Candidate {
  parts: number; // how many pairs of sizes the tool in hand parts, or half a pair less than a better one
  clear: number; // how far the outermost lie apart, in standard uncertainties
  tell: TellApart;
}

export function tellApart(asked: readonly MeasuredEnd[], left: readonly Weighed[]): TellApart[] {
  const leads = left.map((w) => w.fits[0]).filter((f): f is RowFit => f !== undefined);
  const how = asked.flatMap((e) => [e.cap, e.across]).find((m) => m !== undefined)?.how;
  if (leads.length < 2 || how === undefined) return [];
  const found: Candidate[] = [];
  asked.forEach((end, n) => {
    const which = namedEnd(asked, n);
    const holds = new Set(leads.map((f) => holdOf(f, n)));
    if (end.hold === "unknown" && holds.size > 1 && !holds.has("unknown")) found.push(byHold(leads, n, which, how));
    const clip = byClip(asked, n, leads);
    if (clip !== undefined) found.push(clip);
    for (const quantity of quantities) {
      // Measuring between the ears again does not help while the clips are not known.
      if (quantity === "across" && unmeasured(end)) continue;
      const candidate = byLength(leads, n, which, quantity, end[quantity] !== undefined, how);
      if (candidate !== undefined) found.push({ ...candidate, tell: retold(asked, n, candidate.tell, leads) });
    }
  });
  // The first of equals stays first: ends in order, hold before cap before across.
  return found
    .sort((a, b) => b.parts - a.parts || b.clear - a.clear)
    .slice(0, 1)
    .map((f) => f.tell);
}

function holdOf(fit: RowFit, n: number): Hold {
  return fit.ends[n]?.end.hold ?? "unknown";
}

function byHold(leads: readonly RowFit[], n: number, which: number | undefined, how: How): Candidate {
  const alike = new Map<Hold, number>();
  for (const f of leads) alike.set(holdOf(f, n), (alike.get(holdOf(f, n)) ?? 0) + 1);
  return {
    parts: [...alike.values()].reduce((rest, many) => rest - pairsOf(many), pairsOf(leads.length)),
    clear: seeing,
    tell: {
      between: leads.map((f) => f.row.row.ref),
      end: n,
      apart: 0,
      able: true,
      tool: how.tool,
      measure: "hold",
      expect: Object.fromEntries(leads.map((f) => [f.row.row.ref, holdOf(f, n)])),
      says: say.tellHolds(
        which,
        leads.map((f) => ({ name: f.row.row.name, reads: holdWords[holdOf(f, n)] })),
      ),
    },
  };
}

interface Option {
  at: number; // among the sizes that are left
  ref: string;
  name: string;
  figure: Figure;
}

/** How far readings of an option, taken with a tool, may lie from its figure, mm. */
type Reach = (option: Option) => number;

function byLength(
  leads: readonly RowFit[],
  n: number,
  which: number | undefined,
  quantity: Quantity,
  measured: boolean,
  how: How,
): Candidate | undefined {
  const faces = new Set(leads.map((f) => f.ends[n]?.end.faces ?? "unknown"));
  if (quantity === "across" && faces.size > 1 && !faces.has("unknown")) return undefined; // not the same measure
  const options: Option[] = [];
  for (const f of leads) {
    // Where it was measured, the figure that agreed: another reading of that quantity parts no others.
    const end = f.ends[n];
    const figure = end?.fits.find((x) => x.quantity === quantity)?.figure ?? end?.end[quantity] ?? null;
    if (figure === null) return undefined;
    options.push({ at: options.length, ref: f.row.row.ref, name: f.row.row.name, figure });
  }
  const between = [...faces].find((f) => f !== "unknown") ?? "unknown";
  const rising = options.slice().sort((a, b) => a.figure.mm - b.figure.mm);
  const closest = closestOf(rising);
  if (closest === undefined) return undefined;

  const longest = rising[rising.length - 1]?.figure.mm ?? 0;
  const farthest = longest - (rising[0]?.figure.mm ?? 0);
  const reachOf = (tool: Tool): Reach => {
    const taken = foreseen(quantity, longest, readings, { tool, condition: how.condition }, between);
    const [dof, standard] = [gum.welchSatterthwaite(taken), gum.combine(taken)];
    const reaches = new Map<number, number>(); // by the figure's limit: what making adds is the same for a quantity
    return ({ figure }) => {
      const { limit, made } = figure;
      const found = reaches.get(limit) ?? gum.coverageOfSum(given.agreeLevel, limit, Math.hypot(standard, made), dof);
      reaches.set(limit, found);
      return found;
    };
  };
  const inHand = reachOf(how.tool);
  const able = parted(...closest, inHand);
  const parts = countParted(rising, inHand);
  const better = able
    ? undefined
    : betterTool(quantity === "across" ? between : "unknown", rising, closest, parts, reachOf);
  const other = better?.tool;
  return {
    parts: Math.max(parts, (better?.parts ?? 0) - 0.5), // a tool that is at hand before one that is not
    clear: farthest / gum.combine(foreseen(quantity, longest, readings, how, between)),
    tell: {
      between: options.map((o) => o.ref),
      end: n,
      apart: apart(...closest),
      able,
      tool: other ?? how.tool,
      measure: quantity,
      expect: Object.fromEntries(options.map((o) => [o.ref, o.figure.mm])),
      says: say.tellLengths({
        quantity,
        end: which,
        how,
        options: options.map((o) => ({ name: o.name, reads: say.printed(o.figure) })),
        closest: [closest[0].name, closest[1].name],
        apart: apart(...closest),
        measured,
        able,
        vague: apart(...closest) <= chartReach(closest[0].figure) + chartReach(closest[1].figure),
        ...(better === undefined ? {} : { better }),
      }),
    },
  };
}

// The plainest tool that parts the two closest sizes, else the plainest that parts most
// pairs, when those are more than the tool in hand parts.
function betterTool(
  faces: Faces,
  rising: readonly Option[],
  closest: readonly [Option, Option],
  parts: number,
  reachOf: (tool: Tool) => Reach,
): { tool: Tool; parts: number; closest: boolean } | undefined {
  let best: { tool: Tool; parts: number; closest: boolean } | undefined;
  for (const tool of plainest) {
    // The anvils of a plain micrometer do not go between the faces of a groove.
    if (tool === "micrometer" && faces.startsWith("groove")) continue;
    const reach = reachOf(tool);
    const found = { tool, parts: countParted(rising, reach), closest: parted(...closest, reach) };
    if (found.closest) return found;
    if (found.parts > (best?.parts ?? parts)) best = found;
  }
  return best;
}

// Reach of a figure of the chart by itself: no tool makes up for digits that are not there.
function chartReach(figure: Figure): number {
  return gum.coverageOfSum(given.agreeLevel, figure.limit, figure.made, Infinity);
}

function apart(a: Option, b: Option): number {
  return Math.abs(a.figure.mm - b.figure.mm);
}

function parted(a: Option, b: Option, reach: Reach): boolean {
  return apart(a, b) > reach(a) + reach(b);
}

// How many pairs there are whose figures lie farther apart than both reaches. There are few reaches.
function countParted(rising: readonly Option[], reach: Reach): number {
  const alike = new Map<number, number[]>();
  for (const option of rising) {
    const r = reach(option);
    const { mm } = option.figure;
    const group = alike.get(r);
    if (group === undefined) alike.set(r, [mm]);
    else group.push(mm);
  }
  let parts = 0;
  for (const [one, lower] of alike) {
    for (const [other, upper] of alike) {
      let first = 0;
      for (const mm of lower) {
        while (first < upper.length && (upper[first] ?? 0) - mm <= one + other) first++;
        parts += upper.length - first;
      }
    }
  }
  return parts;
}

// The two that lie closest of those that differ; of as close ones those that stand first.
function closestOf(rising: readonly Option[]): readonly [Option, Option] | undefined {
  let closest: readonly [Option, Option] | undefined;
  let last = rising[0];
  for (const option of rising) {
    if (last === undefined || option.figure.mm === last.figure.mm) continue;
    const pair = last.at < option.at ? ([last, option] as const) : ([option, last] as const);
    const [a, b] = closest ?? pair;
    if (closest === undefined || (apart(...pair) - apart(a, b) || pair[0].at - a.at || pair[1].at - b.at) < 0)
      closest = pair;
    last = option;
  }
  return closest;
}

function pairsOf(many: number): number {
  return (many * (many - 1)) / 2;
}
