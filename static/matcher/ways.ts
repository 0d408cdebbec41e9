// Ways to join two known ends that no row joins: one yoke stays, the other is changed to
// one that takes a plain joint, or the far end of a conversion joint.
import type { Quantity, Way } from "./types";
import { fitRow, sameHold, type MeasuredEnd, type RowFit } from "./agree";
import * as given from "./given";
import { type Box, ordered, within } from "./candidates";
import { conversionsNear, fitAll } from "./neighbours";
import { isPlain, type KnownEnd, type KnownRow, type Prepared } from "./prepared";
import { way as says } from "./speech-ways";
import { weigh } from "./weigh";
import { quantities } from "./words";

interface Found {
  way: Way;
  plain: boolean;
  stays: number; // of the changed end: caps, hold
  grows: number; // how far the new yoke's size is from the old one's, mm
  row: KnownRow;
}

/** The ways out, those that leave most as it is first. Both ends must be found, and one that stays must be one size. */
export function ways(asked: readonly MeasuredEnd[], chart: Prepared): Way[] {
  if (asked.length !== 2) return [];
  const found = asked.map((end) => sizesOf(end, chart));
  if (found.some((sizes) => sizes.length === 0)) return [];
  const all = found.flatMap((sizes, n) => {
    const only = sizes.length === 1 ? sizes[0] : undefined;
    if (only === undefined) return [];
    const [plain, ...conversions] = from(asked, n, only, chart);
    return plain === undefined ? [] : [plain, ...conversions.sort(mostStays).slice(0, given.mostWays - 1)];
  });
  return all.sort(mostStays).map((w) => w.way);
}

function mostStays(a: Found, b: Found): number {
  return (
    b.stays - a.stays ||
    Number(b.plain) - Number(a.plain) ||
    recalled(a) - recalled(b) ||
    a.grows - b.grows ||
    a.row.index - b.row.index
  );
}

function recalled(w: Found): number {
  return Number(w.row.row.basis === "memory");
}

// What one end is by itself, a row of each size.
function sizesOf(end: MeasuredEnd, chart: Prepared): RowFit[] {
  const near = fitAll([end], chart).filter((f) => f.held && f.near);
  return weigh([end], near, chart)
    .map((w) => w.fits[0])
    .filter((f): f is RowFit => f?.agrees === true);
}

function from(asked: readonly MeasuredEnd[], n: number, size: RowFit, chart: Prepared): Found[] {
  const [end, other] = [asked[n], asked[1 - n]];
  const plainEnd = size.row.ends[0];
  if (end === undefined || other === undefined || plainEnd === undefined) return [];
  const out = [found(n, size.row, plainEnd, size.row, other, chart)];
  for (const row of conversionsNear(end, chart)) {
    row.ends.forEach((e, i) => {
      const far = row.ends[1 - i];
      const near = fitRow([end], { ...row, ends: [e] }).some((f) => f.held && f.agrees);
      const to = far === undefined || !near ? undefined : plainLike(far, chart);
      if (far !== undefined && to !== undefined) out.push(found(n, row, far, to, other, chart));
    });
  }
  return out;
}

function found(n: number, row: KnownRow, far: KnownEnd, to: KnownRow, other: MeasuredEnd, chart: Prepared): Found {
  const plain = isPlain(row);
  const held = far.hold !== "unknown" && sameHold(far.hold, other.hold);
  const { cap } = other;
  const bare: MeasuredEnd = { hold: "unknown", faces: "unknown", ...(cap === undefined ? {} : { cap }) };
  const caps = fitRow([bare], { ...row, ends: [far] }).some((f) => f.agrees);
  return {
    plain,
    stays: Number(caps) + Number(caps && held),
    grows: off(far, other, "cap") + off(far, other, "across"),
    row,
    way: {
      joint: row.row.ref,
      keeps: [n],
      change: 1 - n,
      to: chart.twins(to).map((r) => r.row.ref),
      says: says({
        joint: row.row.name,
        conversion: !plain,
        keeps: n,
        to: to.row.name,
        caps,
        held,
        recalled: row.row.basis === "memory",
      }),
    },
  };
}

function off(far: KnownEnd, other: MeasuredEnd, quantity: Quantity): number {
  const [a, b] = [far[quantity]?.mm, other[quantity]?.mm];
  return a === undefined || b === undefined ? 0 : Math.abs(a - b);
}

// The plain row whose figures the far end of a conversion joint has.
function plainLike(end: KnownEnd, chart: Prepared): KnownRow | undefined {
  const box: Box = {};
  for (const quantity of quantities) {
    const value = end[quantity];
    if (value !== null) box[quantity] = [value.mm, value.mm];
  }
  return ordered(within(chart, () => box)).find((row) => {
    const [e] = row.ends;
    return e !== undefined && isPlain(row) && e.hold === end.hold && same(e, end);
  });
}

function same(a: KnownEnd, b: KnownEnd): boolean {
  return a.faces === b.faces && a.cap?.mm === b.cap?.mm && a.across?.mm === b.across?.mm;
}
