// Rows beside the answer: the nearest that do not match, those with the same figures
// under another hold, the conversion joints that have the measured end, and what each
// of two ends is by itself.
import type { Answer, Size } from "./types";
import { compared, fitRow, nearAtMost, type MeasuredEnd, type RowFit } from "./agree";
import { boxRound, ordered, type Look, within } from "./candidates";
import { isPlain, type KnownRow, type Prepared } from "./prepared";
import * as say from "./speech-sizes";

declare const capspanInPieces: boolean; // put in by the bundler (static/bundle.go)

const mostNear = 4;

/** One row of each size, the one to speak of first and its better order, nearest first. */
function bySize(fits: readonly RowFit[], chart: Prepared): RowFit[] {
  const leads = new Map<string, RowFit>();
  const place = (f: RowFit): number => twins(f, chart).indexOf(f.row);
  const better = (a: RowFit, b: RowFit): number =>
    place(a) - place(b) || Number(b.held) - Number(a.held) || a.away - b.away;
  for (const f of fits) {
    const before = leads.get(f.row.size);
    if (before === undefined || better(f, before) < 0) leads.set(f.row.size, f);
  }
  return [...leads.values()].sort((a, b) => a.away - b.away || a.row.index - b.row.index);
}

function twins(fit: RowFit, chart: Prepared): readonly KnownRow[] {
  return chart.twins(fit.row);
}

function size(fit: RowFit, chart: Prepared, because: string): Size {
  const rows = twins(fit, chart);
  return {
    rows: rows.map((r) => r.row.ref),
    names: rows.map((r) => r.row.name),
    probability: 0,
    basis: fit.row.basis,
    hold: fit.ends[0]?.end.hold ?? "unknown",
    ends: fit.ends.map(compared),
    because,
  };
}

// How far round the readings to look first, and how far at most, in their own standard uncertainties.
const [firstLook, lastLook] = [12, 1e6];

/** The rows that agree or nearly do, and those nearest to the readings, a conversion joint in both orders: the rest of
 *  the answer is chosen from these. */
export function fitAll(asked: readonly MeasuredEnd[], chart: Prepared): RowFit[] {
  for (let away = firstLook; ; away *= 2) {
    const rows = within(chart, lookRound(asked[0], away)).filter((row) => asked.length === 2 || isPlain(row));
    const fits = capspanInPieces ? fitAlike(asked, rows) : rows.flatMap((row) => fitRow(asked, row));
    if (away > lastLook || (capspanInPieces && chart.partial) || enough(fits, away, chart)) return fits;
  }
}

// In pieces, rows of a size that are written alike share their end: of those that are not even near one tells all.
function fitAlike(asked: readonly MeasuredEnd[], rows: readonly KnownRow[]): RowFit[] {
  const fits: RowFit[] = [];
  let before: RowFit | undefined;
  for (const row of rows) {
    if (isPlain(row) && before !== undefined && before.row.ends[0] === row.ends[0]) {
      if (before.near) fits.push({ ...before, row });
      continue;
    }
    const found = fitRow(asked, row);
    before = found[0];
    fits.push(...found);
  }
  return fits;
}

// Round the first end. No row outside agrees or nearly does, and all that are nearer than `away` are inside.
function lookRound(asked: MeasuredEnd | undefined, away: number): Look {
  return (widest) =>
    boxRound(asked, (m, q) => Math.max(away * m.standard, nearAtMost(m, widest[q].limit, widest[q].made)));
}

// Whether as many sizes as are spoken of are nearer than `away`, beside those that may be left.
function enough(fits: readonly RowFit[], away: number, chart: Prepared): boolean {
  const left = new Set(fits.filter((f) => f.held && f.near).map((f) => f.row.size));
  const sizes = bySize(fits.filter(whole), chart);
  return sizes.filter((f) => f.held && f.away <= away && !left.has(f.row.size)).length >= mostNear;
}

function whole(fit: RowFit): boolean {
  return fit.ends.every((e) => e.missing.length === 0);
}

/** The nearest rows that are not left; one of another hold only when nothing of the asked hold is nearer. */
export function near(fits: readonly RowFit[], chart: Prepared, left: ReadonlySet<string>): Size[] {
  const all = bySize(
    fits.filter((f) => whole(f) && !left.has(f.row.size)),
    chart,
  );
  const first = all.findIndex((f) => f.held);
  const chosen = all.filter((f, i) => f.held || (!f.agrees && (first < 0 || i < first)));
  return chosen.slice(0, mostNear).map((f) => size(f, chart, say.misses(f)));
}

/** Rows whose cap and across both agree, under another hold than the one asked for. */
export function sameFigures(
  asked: readonly MeasuredEnd[],
  fits: readonly RowFit[],
  chart: Prepared,
  left: ReadonlySet<string>,
): Size[] {
  const end = asked[0];
  if (asked.length !== 1 || end?.cap === undefined || end.across === undefined || end.hold === "unknown") return [];
  const same = fits.filter((f) => f.agrees && !f.held && whole(f) && !left.has(f.row.size));
  return bySize(same, chart).map((f) => size(f, chart, say.otherHold(f)));
}

/** Conversion joints of which the one measured end agrees with an end. */
export function conversions(asked: readonly MeasuredEnd[], chart: Prepared): string[] {
  if (asked.length !== 1) return [];
  const has = (row: KnownRow): boolean =>
    row.ends.some((end) => fitRow(asked, { ...row, ends: [end] }).some((f) => f.held && f.agrees));
  return conversionsNear(asked[0], chart)
    .filter(has)
    .map((row) => row.row.ref);
}

/** The conversion joints that may have an end like that. */
export function conversionsNear(end: MeasuredEnd | undefined, chart: Prepared): KnownRow[] {
  return ordered(within(chart, lookRound(end, 0)).filter((row) => !isPlain(row)));
}

/** What each of two measured ends is by itself. */
export function eachEnd(asked: readonly MeasuredEnd[], chart: Prepared): Answer["ends"] {
  if (asked.length !== 2) return [];
  return asked.map((end, n) => {
    const alone = fitAll([end], chart).filter((f) => f.held && whole(f));
    const found = bySize(
      alone.filter((f) => f.agrees),
      chart,
    );
    const closest = bySize(alone, chart)[0];
    return {
      rows: found.flatMap((f) => twins(f, chart).map((r) => r.row.ref)),
      says: say.endIs(
        n,
        found.map((f) => f.row.row.name),
        closest,
      ),
    };
  });
}
