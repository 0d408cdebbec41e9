// How far the rest of the chart lies from the readings: what is said of a size that is
// named, in place of a share of a hundred.
import { sameFaces, sameHold, type MeasuredEnd } from "./agree";
import { boxRound, within } from "./candidates";
import type { KnownEnd, KnownRow, KnownValue, Prepared } from "./prepared";
import { quantities } from "./words";

declare const capspanInPieces: boolean; // put in by the bundler (static/bundle.go)

/** Every size but those left, held as asked, is at least this far off in cap or across, mm. Infinity: there is none. */
export function clearance(asked: readonly MeasuredEnd[], chart: Prepared, left: ReadonlySet<string>): number {
  for (let look = firstLook; ; look *= 4) {
    const least = among(
      within(chart, () => boxRound(asked[0], () => look)),
      asked,
      left,
    );
    if (least <= look || look > lastLook || (capspanInPieces && chart.partial)) return least;
  }
}

// How far round the readings to look first, and how far at most, mm.
const [firstLook, lastLook] = [0.5, 1e4];

function among(rows: readonly KnownRow[], asked: readonly MeasuredEnd[], left: ReadonlySet<string>): number {
  const [one, two] = asked;
  let least = Infinity;
  if (one === undefined) return least;
  for (const row of rows) {
    const [first, second] = row.ends;
    if (first === undefined || left.has(row.size) || (two === undefined && second !== undefined)) continue;
    if (two === undefined) {
      least = Math.min(least, away(one, first, least));
      continue;
    }
    const other = second ?? first; // a conversion joint may lie either way round
    least = Math.min(least, Math.max(away(one, first, least), away(two, other, least)));
    least = Math.min(least, Math.max(away(one, other, least), away(two, first, least)));
  }
  return least;
}

// The quantity that is farther off decides; what the chart leaves open takes nothing
// away. Beyond `enough` nobody asks how far.
function away(asked: MeasuredEnd, end: KnownEnd, enough: number): number {
  if (!sameHold(asked.hold, end.hold) || !sameFaces(asked.faces, end.faces)) return Infinity;
  if (asked.hold === "wing" && end.hold !== "wing" && end.cap !== null) return Infinity; // plain caps are no wings
  let most = 0;
  for (const quantity of quantities) {
    const measured = asked[quantity];
    const value = end[quantity];
    if (measured !== undefined && value !== null) most = Math.max(most, nearest(value, measured.mm));
    if (most >= enough) return most;
  }
  return most;
}

function nearest(value: KnownValue, mm: number): number {
  let off = Math.abs(value.mm - mm);
  for (const other of value.others) off = Math.min(off, Math.abs(other.mm - mm));
  return off;
}
