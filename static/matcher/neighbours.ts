// Rows beside the answer: the nearest that do not match, those with the same figures
// under another hold, the conversion joints that have the measured end, and what each
// of two ends is by itself.
import type { Answer, Size } from "./types";
import { compared, distance, fitRow, sameHold, type MeasuredEnd, type RowFit } from "./agree";
import type { KnownRow, Prepared } from "./prepared";
import * as say from "./speech-sizes";

const mostNear = 4;

function plain(row: KnownRow): boolean {
  return row.ends.length === 1;
}

/** One row of each size, the one to speak of first, nearest first. */
function bySize(fits: readonly RowFit[], chart: Prepared): RowFit[] {
  const leads = new Map<string, RowFit>();
  const place = (f: RowFit): number => twins(f, chart).indexOf(f.row);
  for (const f of fits) {
    const before = leads.get(f.row.size);
    if (before === undefined || place(f) < place(before)) leads.set(f.row.size, f);
  }
  return [...leads.values()].sort((a, b) => distance(a) - distance(b) || a.row.index - b.row.index);
}

function twins(fit: RowFit, chart: Prepared): KnownRow[] {
  return chart.twins.get(fit.row.size) ?? [fit.row];
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

function fits(asked: readonly MeasuredEnd[], rows: readonly KnownRow[], anyHold: boolean): RowFit[] {
  return rows
    .map((row) => fitRow(asked, row, anyHold))
    .filter((f): f is RowFit => f !== undefined && f.ends.every((e) => e.missing.length === 0));
}

/** The nearest rows that are not left; one of another hold only when nothing of the asked hold is nearer. */
export function near(asked: readonly MeasuredEnd[], chart: Prepared, left: ReadonlySet<string>): Size[] {
  const rows = chart.rows.filter((r) => !left.has(r.size) && (asked.length === 2 || plain(r)));
  const all = bySize(fits(asked, rows, true), chart);
  const held = (f: RowFit): boolean => f.ends.every((e, i) => sameHold(asked[i]?.hold ?? "unknown", e.end.hold));
  const first = all.findIndex(held);
  const chosen = all.filter((f, i) => held(f) || (!f.agrees && i < first));
  return chosen.slice(0, mostNear).map((f) => size(f, chart, say.misses(f, held(f))));
}

/** Rows whose cap and across both agree, under another hold than the one asked for. */
export function sameFigures(asked: readonly MeasuredEnd[], chart: Prepared, left: ReadonlySet<string>): Size[] {
  const end = asked[0];
  if (asked.length !== 1 || end?.cap === undefined || end.across === undefined || end.hold === "unknown") return [];
  const rows = chart.rows.filter(
    (r) => plain(r) && !left.has(r.size) && !sameHold(end.hold, r.ends[0]?.hold ?? "unknown"),
  );
  return bySize(
    fits(asked, rows, true).filter((f) => f.agrees),
    chart,
  ).map((f) => size(f, chart, say.otherHold(f)));
}

/** Conversion joints of which the one measured end agrees with an end. */
export function conversions(asked: readonly MeasuredEnd[], chart: Prepared): string[] {
  if (asked.length !== 1) return [];
  return chart.rows
    .filter((row) => !plain(row) && row.ends.some((end) => fitRow(asked, { ...row, ends: [end] })?.agrees))
    .map((row) => row.row.ref);
}

/** What each of two measured ends is by itself. */
export function eachEnd(asked: readonly MeasuredEnd[], chart: Prepared): Answer["ends"] {
  if (asked.length !== 2) return [];
  return asked.map((end, n) => {
    const alone = fits([end], chart.rows.filter(plain), false);
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
