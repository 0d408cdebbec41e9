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
  return {
    parts: pairs(leads, (a, b) => holdOf(a, n) !== holdOf(b, n)).length,
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
  ref: string;
  name: string;
  figure: Figure;
}

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
    options.push({ ref: f.row.row.ref, name: f.row.row.name, figure });
  }
  const between = [...faces].find((f) => f !== "unknown") ?? "unknown";
  const apart = (a: Option, b: Option): number => Math.abs(a.figure.mm - b.figure.mm);
  const unlike = pairs(options, (a, b) => apart(a, b) > 0).sort((p, q) => apart(...p) - apart(...q));
  const [closest, farthest] = [unlike[0], unlike[unlike.length - 1]];
  if (closest === undefined || farthest === undefined) return undefined;

  const longest = Math.max(...options.map((o) => o.figure.mm));
  const parted = (tool: Tool): ((a: Option, b: Option) => boolean) => {
    const taken = foreseen(quantity, longest, readings, { tool, condition: how.condition }, between);
    const dof = gum.welchSatterthwaite(taken);
    const reaches = new Map<number, number>(); // by the figure's limit: what making adds is the same for a quantity
    const reach = ({ figure }: Option): number => {
      const rest = Math.hypot(gum.combine(taken), figure.made);
      const found = reaches.get(figure.limit) ?? gum.coverageOfSum(given.agreeLevel, figure.limit, rest, dof);
      reaches.set(figure.limit, found);
      return found;
    };
    return (a, b) => apart(a, b) > reach(a) + reach(b);
  };
  const inHand = parted(how.tool);
  const able = inHand(...closest);
  const parts = pairs(options, inHand).length;
  const better = able
    ? undefined
    : betterTool(quantity === "across" ? between : "unknown", options, closest, parts, parted);
  const other = better?.tool;
  return {
    parts: Math.max(parts, (better?.parts ?? 0) - 0.5), // a tool that is at hand before one that is not
    clear: apart(...farthest) / gum.combine(foreseen(quantity, longest, readings, how, between)),
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
  options: readonly Option[],
  closest: [Option, Option],
  parts: number,
  parted: (tool: Tool) => (a: Option, b: Option) => boolean,
): { tool: Tool; parts: number; closest: boolean } | undefined {
  // The anvils of a plain micrometer do not go between the faces of a groove.
  const fit = plainest.filter((t) => t !== "micrometer" || !faces.startsWith("groove"));
  const tried = fit.map((tool) => {
    const test = parted(tool);
    return { tool, parts: pairs(options, test).length, closest: test(...closest) };
  });
  const most = Math.max(...tried.map((t) => t.parts));
  return tried.find((t) => t.closest) ?? tried.find((t) => t.parts === most && most > parts);
}

// Reach of a figure of the chart by itself: no tool makes up for digits that are not there.
function chartReach(figure: Figure): number {
  return gum.coverageOfSum(given.agreeLevel, figure.limit, figure.made, Infinity);
}

function pairs<T>(of: readonly T[], when: (a: T, b: T) => boolean): [T, T][] {
  return of.flatMap((a, i) => of.slice(i + 1).flatMap((b): [T, T][] => (when(a, b) ? [[a, b]] : [])));
}
