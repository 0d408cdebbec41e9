// The way from a query to an answer:
//
//   understand -> estimate -> can these readings be used? -> fit every row -> weigh -> verdict
import type { Answer, Chart, Faces, Verdict } from "./types";
import type { MeasuredEnd, RowFit } from "./agree";
import * as given from "./given";
import { estimate, type Measured, type Trouble } from "./estimate";
import { fitAll } from "./neighbours";
import { prepare, type Prepared } from "./prepared";
import { understand, type Asked } from "./query";
import * as say from "./speech";
import * as next from "./speech-next";
import { facesWords, list } from "./speech-words";
import { conclude } from "./verdict";
import { weigh, type Weighed } from "./weigh";

/** identify never throws for anything in the query; it does for a chart of another format. */
export function identify(chart: Chart, query: unknown): Answer {
  const known = prepare(chart);
  const asked = understand(query);
  const ends = asked.ends.map((end, n): MeasuredEnd => {
    const out: MeasuredEnd = { hold: end.hold, faces: end.faces };
    if (end.cap.length > 0) out.cap = estimate(n, "cap", end.cap, asked.tool, asked.condition, end.faces);
    if (end.across.length > 0) out.across = estimate(n, "across", end.across, asked.tool, asked.condition, end.faces);
    return out;
  });
  const measured = ends.flatMap((e) => [e.cap, e.across]).filter((m): m is Measured => m !== undefined);
  const answer = blank(known, measured, asked);
  return unusable(answer, ends, measured, known) ?? compare(answer, ends, known);
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
    const todo = troubles.map((t) => (t.twoEnds ? next.eachPair() : next.cleanAndRepeat()));
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
  for (const row of chart.rows) {
    for (const e of row.ends) if (end.hold === "unknown" || e.hold === end.hold) faces.add(e.faces);
  }
  if (faces.size === 0 || faces.has(end.faces) || (end.hold !== "unknown" && faces.has("unknown"))) return undefined;
  faces.delete("unknown");
  return faces.size === 0 ? undefined : [...faces];
}

function byOther(fit: RowFit): boolean {
  return fit.ends.some((e) => e.fits.some((f) => f.other));
}

// The sizes that are left, likeliest first. A row that misses by a hair stays in the
// weighing: were it dropped, its neighbour would look certain.
function left(ends: readonly MeasuredEnd[], fits: readonly RowFit[], chart: Prepared): Weighed[] {
  const close = fits.filter((f) => f.held && f.near);
  const weighed = weigh(ends, close, chart);
  const agrees = (w: Weighed): boolean => w.fits.some((f) => f.agrees);
  if (!weighed.some(agrees)) return [];
  const out = weighed.filter((w) => w.probability >= (agrees(w) ? given.leftAt : 1 - given.claimAt));
  // What agrees only with another figure given for it must be likelier than that to be
  // left beside what agrees outright; it still takes away from the claim of the others.
  const outright = out.filter((w) => w.fits.some((f) => f.agrees && !byOther(f)));
  if (outright.length > 0) {
    return out.filter((w) => !agrees(w) || outright.includes(w) || w.probability >= given.otherLeftAt);
  }
  return out.some(agrees) ? out : weighed.filter(agrees).slice(0, 1);
}
