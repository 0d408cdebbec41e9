// The way from a query to an answer:
//
//   understand -> estimate -> can these readings be used? -> fit every row -> weigh -> verdict
//
// and where that ends with no size, whether a slip explains the readings.
import type { Answer, Faces, SlipFound, Verdict } from "./types";
import type { MeasuredEnd, RowFit } from "./agree";
import { coarseReading } from "./claim";
import * as given from "./given";
import { estimate, leadUnit, type How, type Measured, type Trouble } from "./estimate";
import { fitAll } from "./neighbours";
import { prepare, type AnyChart, type Prepared } from "./prepared";
import { understand, type Asked, type AskedEnd } from "./query";
import { learned } from "./learn";
import * as say from "./speech";
import { otherChart } from "./speech-query";
import * as next from "./speech-next";
import { facesWords, list } from "./speech-words";
import { conclude, slipped } from "./verdict";
import { weigh, type Weighed } from "./weigh";
import { fromYoke } from "./yoke";
import { onlyYokes } from "./yoke-beside";

declare const capspanInPieces: boolean; // put in by the bundler (static/bundle.go)

/** identify never throws for anything in the query; it does for a chart of another format, and for one of which a piece
 *  that matters is not here. */
export function identify(chart: AnyChart, query: unknown): Answer {
  const known = prepare(chart);
  const asked = understand(query);
  const lead = leadUnit(asked.ends.flatMap((end) => [...end.cap, ...end.across]));
  const how: How = { tool: asked.tool, condition: asked.condition, lead };
  const ends = asked.ends.map((end, n) => measure(end, n, how));
  const measured = ends.flatMap((e) => [e.cap, e.across]).filter((m): m is Measured => m !== undefined);
  const clips = ends.map((e) => e.yoke?.clip).filter((m): m is Measured => m !== undefined);
  const answer = blank(known, [...measured, ...clips], asked);
  const found = unusable(answer, ends, measured, known) ?? compare(answer, ends, known);
  const whole = slipped(found, slips(found, asked, ends, how, known));
  if (capspanInPieces && known.missing?.size) throw new Error(otherChart());
  return whole;
}

function measure(end: AskedEnd, n: number, how: How): MeasuredEnd {
  if (end.taken === "yoke") return fromYoke(n, end, how);
  const out: MeasuredEnd = { hold: end.hold, faces: end.faces };
  if (end.cap.length > 0) out.cap = estimate(n, "cap", end.cap, how, end.faces);
  if (end.across.length > 0) out.across = estimate(n, "across", end.across, how, end.faces);
  return out;
}

// A slip is looked for only where the plain reading explains nothing: no row agrees, or no joint is that long.
function slips(found: Answer, asked: Asked, ends: MeasuredEnd[], how: How, chart: Prepared): SlipFound[] {
  const late = learned();
  if (late === undefined || (capspanInPieces && chart.partial)) return []; // what is not here may explain it yet
  const again = (end: AskedEnd, n: number): MeasuredEnd => measure(end, n, how);
  if (found.verdict === "not-in-chart") {
    const bothKnown = found.ends.length === 2 && found.ends.every((e) => e.rows.length > 0);
    return bothKnown ? [] : late.findSlips(asked.ends, ends, again, false, chart);
  }
  if (asked.lengths === 0 || asked.lengths < asked.complaints.length) return [];
  const whole = asked.ends.map((e) => ({
    ...e,
    cap: [...e.cap, ...e.beyond.cap],
    across: [...e.across, ...e.beyond.across],
  }));
  return late.findSlips(whole, whole.map(again), again, true, chart);
}

function compare(answer: Answer, ends: readonly MeasuredEnd[], chart: Prepared): Answer {
  const fits = fitAll(ends, chart);
  return conclude(answer, ends, fits, left(ends, fits, chart), chart);
}

function blank(chart: Prepared, measured: readonly Measured[], asked: Asked): Answer {
  return {
    verdict: "measure-again",
    says: { head: "", because: [], next: [] },
    sizes: [],
    near: [],
    sameFigures: [],
    conversions: [],
    ends: [],
    ways: [],
    readings: measured.map((m) => m.estimate),
    complaints: asked.complaints,
    slips: [],
    tellApart: [],
    chart: { version: chart.version },
  };
}

// Reasons not to look into the chart at all, in the order a person should mend them.
function unusable(
  answer: Answer,
  ends: readonly MeasuredEnd[],
  measured: readonly Measured[],
  chart: Prepared,
): Answer | undefined {
  const stop = (head: string, because: string[], todo: string[]): Answer => {
    const verdict: Verdict = "measure-again";
    return { ...answer, verdict, says: { head, because, next: todo } };
  };
  if (answer.complaints.length > 0) {
    return stop(
      say.cannotRead(answer.complaints.length),
      [...new Set(answer.complaints.map((c) => c.says))],
      [next.putRight()],
    );
  }
  if (measured.length === 0) return stop(say.nothingMeasured(), [], [next.firstReading()]);
  const troubles = measured.map((m) => m.trouble).filter((t): t is Trouble => t !== undefined);
  if (troubles.length > 0) {
    const todo = troubles.map((t) => (t.twoEnds ? next.eachPair() : next.cleanAndRepeat(onlyYokes(ends))));
    return stop(
      say.doNotBelong(),
      troubles.map((t) => t.says),
      [...new Set(todo)],
    );
  }
  for (const end of ends) {
    const right = facesOfChart(end, chart);
    if (right !== undefined) {
      const words = list(
        right.map((f) => facesWords[f]),
        "or",
      );
      return stop(
        say.otherFaces(right),
        [say.facesInChart(end.hold, end.faces, right)],
        [next.measureOtherFaces(words)],
      );
    }
  }
  return undefined;
}

// The faces the chart has for that hold, when none of its rows can be compared with the
// faces that were measured; undefined when some can.
function facesOfChart(end: MeasuredEnd, chart: Prepared): Faces[] | undefined {
  if (end.across === undefined || end.faces === "unknown") return undefined;
  const faces = new Set<Faces>();
  for (const [hold, all] of chart.faces) {
    if (end.hold === "unknown" || hold === end.hold) for (const f of all) faces.add(f);
  }
  if (faces.size === 0 || faces.has(end.faces) || (end.hold !== "unknown" && faces.has("unknown"))) return undefined;
  faces.delete("unknown");
  return faces.size === 0 ? undefined : [...faces];
}

// The sizes that are left, likeliest first: all that agree, for a size that agrees cannot be ruled out by being less
// usual. One that misses by a hair stays in the weighing: were it dropped, its neighbour would look certain.
function left(ends: readonly MeasuredEnd[], fits: readonly RowFit[], chart: Prepared): Weighed[] {
  const close = fits.filter((f) => f.held && f.near);
  const weighed = weigh(ends, close, chart);
  const agrees = (w: Weighed): boolean => w.fits.some((f) => f.agrees);
  if (!weighed.some(agrees)) return [];
  const out = weighed.filter((w) => agrees(w) || w.probability >= 1 - given.claimAt);
  const outright = (w: Weighed): boolean => w.fits.some((f) => f.agrees && !byOther(f));
  if (!out.some(outright)) return out;
  // What agrees only with another figure given for it must be likely to be left beside what agrees outright, unless
  // the readings are too coarse to name anything; it still takes away from the claim of the others.
  const rough = ends.some((end) => [end.cap, end.across].some((m) => m !== undefined && coarseReading(m)));
  return out.filter((w) => !agrees(w) || outright(w) || w.probability >= given.otherLeftAt || rough);
}

function byOther(fit: RowFit): boolean {
  return fit.ends.some((e) => e.fits.some((f) => f.other));
}
