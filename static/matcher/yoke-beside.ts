// A yoke beside the sizes: what its bores, and the clips that were or were not measured,
// would do with each.
import type { Size, TellApart } from "./types";
import { namedEnd, reach, type MeasuredEnd, type RowFit } from "./agree";
import * as given from "./given";
import * as gum from "./gum";
import { lookAtHold } from "./speech-next";
import { printed } from "./speech-sizes";
import * as say from "./speech-yokes";

/** How many yokes were read, when nothing but yokes was: then the answer speaks of them. */
export function onlyYokes(asked: readonly MeasuredEnd[]): number {
  return asked.every((e) => e.yoke !== undefined) ? asked.length : 0;
}

/** What the clips of these yokes would do with the joint of a size. */
export function clipsBeside(asked: readonly MeasuredEnd[], size: Size): string[] {
  return asked.flatMap((end, n) => clips(asked, size, end, n));
}

/** What their bores would do with the caps of these sizes, and which joint a yoke for injected plastic is compared with. */
export function boresBeside(asked: readonly MeasuredEnd[], sizes: readonly Size[]): string[] {
  const says = sizes.flatMap((size) => asked.flatMap((end, n) => bores(asked, size, end, n)));
  const service = asked.some((e) => e.yoke?.hold === "injected") ? [say.service()] : [];
  return [...new Set([...service, ...says])];
}

/** How a yoke's own measures would come out for each of the sizes: the chart's figures are the joint's. */
export function retold(asked: readonly MeasuredEnd[], n: number, tell: TellApart, leads: readonly RowFit[]): TellApart {
  const end = asked[n];
  const { measure } = tell;
  if (end?.yoke === undefined || (measure !== "cap" && measure !== "across")) return tell;
  const options = leads.map((f) => {
    const figure = f.ends[n]?.end[measure] ?? null;
    return { name: f.row.row.name, text: figure === null ? "" : printed(figure) };
  });
  const { across } = say.yokes[end.yoke.hold];
  if (measure === "across" && across === null) return { ...tell, says: lookAtHold() };
  const says =
    measure === "cap"
      ? say.measureBore(options, namedEnd(asked, n))
      : say.measureDistance(across ?? "", options, end.yoke.clips, namedEnd(asked, n));
  return { ...tell, says };
}

function bores(asked: readonly MeasuredEnd[], size: Size, end: MeasuredEnd, n: number): string[] {
  const cap = size.ends[n]?.cap;
  const { yoke } = end;
  if (cap === undefined || yoke === undefined || yoke.bores.length === 0 || end.cap === undefined) return [];
  const { lead } = end.cap.how;
  // A cap farther off than this is not the yoke's at all.
  if (Math.abs(cap.difference) > given.capOther) return [];
  const says: string[] = [];
  const wide = gum.mean(yoke.bores) - cap.chart;
  const narrowest = Math.min(...yoke.bores);
  if (wide > given.usedBoreLarger + yoke.good) says.push(say.boreWide(wide, lead, namedEnd(asked, n)));
  if (cap.chart - narrowest > given.tightBore + yoke.good)
    says.push(say.boreNarrow(cap.chartText, narrowest, cap.chart - narrowest, lead, namedEnd(asked, n)));
  return says;
}

function clips(asked: readonly MeasuredEnd[], size: Size, end: MeasuredEnd, n: number): string[] {
  const across = size.ends[n]?.across;
  const { yoke } = end;
  const cap = size.ends[n]?.cap;
  if (cap !== undefined && Math.abs(cap.difference) > cap.uncertainty) return []; // not this yoke's joint
  if (across === undefined || yoke?.distance === undefined || !yoke.clips || end.across === undefined) return [];
  const { lead } = end.across.how;
  const fitting = (yoke.distance - across.chart) / 2;
  const possible = fitting >= given.leastClip && fitting <= given.greatestClip;
  if (yoke.clip === undefined) return possible ? [say.clipsFor(fitting, lead, namedEnd(asked, n))] : [];
  const float = yoke.distance - across.chart - 2 * yoke.clip.mm;
  if (float <= given.playRenew && float >= -given.playAllowed) return [];
  return [say.withClips(yoke.clip.mm, float, possible ? fitting : undefined, lead, namedEnd(asked, n))];
}

/** Which clip to look for when one size is left. */
export function clipFor(asked: readonly MeasuredEnd[], n: number, fit: RowFit): string {
  const { distance } = asked[n]?.yoke ?? {};
  const across = fit.ends[n]?.end.across ?? null;
  const lead = asked[n]?.across?.how.lead ?? "mm";
  if (distance === undefined || across === null) return say.measureAnyClip();
  return say.measureClip([{ name: fit.row.row.name, clip: (distance - across.mm) / 2 }], lead, namedEnd(asked, n));
}

/** What parts the sizes best when the clips of a yoke were not measured; `parts` counts the pairs it would part. */
export function byClip(
  asked: readonly MeasuredEnd[],
  n: number,
  leads: readonly RowFit[],
): { parts: number; clear: number; tell: TellApart } | undefined {
  const end = asked[n];
  const { distance } = end?.yoke ?? {};
  if (end?.across === undefined || distance === undefined || !unmeasured(end)) return undefined;
  const options: { ref: string; name: string; clip: number; reach: number }[] = [];
  for (const f of leads) {
    const fit = f.ends[n]?.fits.find((x) => x.quantity === "across");
    if (fit === undefined) return undefined;
    options.push({
      ref: f.row.row.ref,
      name: f.row.row.name,
      clip: (distance - fit.figure.mm) / 2,
      reach: known(reach(fit), fit.standard),
    });
  }
  const apart = options.flatMap((a, i) =>
    options
      .slice(i + 1)
      .map((b) => ({ gap: Math.abs(a.clip - b.clip), sure: 2 * Math.abs(a.clip - b.clip) > a.reach + b.reach })),
  );
  const gaps = apart.map((p) => p.gap);
  if (gaps.length === 0 || Math.max(...gaps) === 0) return undefined;
  return {
    parts: apart.filter((p) => p.sure).length,
    clear: (2 * Math.max(...gaps)) / gum.rectangular(given.playRenew / 2),
    tell: {
      between: options.map((o) => o.ref),
      end: n,
      measure: "clip",
      expect: Object.fromEntries(options.map((o) => [o.ref, o.clip])),
      apart: Math.min(...gaps),
      able: apart.every((p) => p.sure),
      tool: end.across.how.tool,
      says: say.measureClip(options, end.across.how.lead, namedEnd(asked, n)),
    },
  };
}

// The reach that would be left were the clips known.
function known(reach: number, standard: number): number {
  const clips = gum.rectangular(given.thickestClip - given.thinnestClip);
  return (reach / standard) * Math.sqrt(Math.max(standard ** 2 - clips ** 2, 0));
}

/** Something that could have been measured at this end was not. */
export function halfMeasured(end: MeasuredEnd): boolean {
  const across = end.yoke === undefined || say.yokes[end.yoke.hold].across !== null;
  return end.cap === undefined || (across && end.across === undefined);
}

/** Clips lie between, and nobody knows how thick. */
export function unmeasured(end: MeasuredEnd): boolean {
  return end.yoke?.clips === true && end.yoke.distance !== undefined && end.yoke.clip === undefined;
}
