// Which slip explains readings that agree with nothing as they are.
//
//   every slip x every row -> density of the readings -> beside no slip, and "in no row"
//
// All weights are densities of the readings as they were entered, so that a unit, a shift
// of one certain length and a clip of unknown thickness can be set beside each other. What
// is not known, such as a clip, is integrated over. Nothing found here is ever applied.
import type { Basis, Hold, Quantity, SlipFound } from "./types";
import { fitEnd, namedEnd, nearAtMost, sameFaces, sameHold, type MeasuredEnd } from "./agree";
import type { Measured } from "./estimate";
import { type Box, type Look, ordered, within } from "./candidates";
import { logDensity, tailFreedom } from "./density";
import * as given from "./given";
import * as gum from "./gum";
import type { Figure, KnownEnd, KnownRow, Prepared } from "./prepared";
import type { AskedEnd } from "./query";
import { type Hypothesis, hypotheses, type Measure, ofClips, type Slip } from "./slips-kinds";
import * as say from "./speech-slips";
import { logPrior, logShare } from "./prior";
import { ofEnd } from "./speech-words";
import { logAbsent } from "./weigh";
import { quantities } from "./words";

/** A size under a hypothesis, with the row and the order of its ends that weigh most. */
interface Explained {
  hypothesis: Hypothesis;
  row: KnownRow;
  ends: readonly KnownEnd[];
  log: number;
}

/** findSlips lists the slips that are likely enough to speak of, likeliest first. It is certain that there is one when
 *  no joint has such lengths. */
export function findSlips(
  asked: readonly AskedEnd[],
  ends: readonly MeasuredEnd[],
  measure: Measure,
  certain: boolean,
  chart: Prepared,
): SlipFound[] {
  const all: Explained[] = [];
  const absent: number[] = certain ? [] : [logAbsent(ends, chart)];
  for (const h of hypotheses(asked, ends, measure)) {
    if (h.slip === "wrong-hold" && !listed(ends[h.end]?.hold, chart)) continue;
    if (h.slip === undefined && certain) continue;
    const found = explain(h, chart);
    all.push(...found);
    // Readings put right may still be of a joint in no row.
    if ((certain || found.length > 0) && h.ends.some((e, n) => e !== ends[n]))
      absent.push(h.logPrior + logAbsent(h.ends, chart));
  }
  const top = Math.max(...absent, ...all.map((e) => e.log));
  const weight = (log: number): number => Math.exp(log - top);
  const total = [...absent, ...all.map((e) => e.log)].reduce((sum, log) => sum + weight(log), 0);

  const slips = new Map<string, Explained[]>();
  for (const e of all) {
    if (e.hypothesis.slip === undefined) continue;
    const key = `${e.hypothesis.slip} ${e.hypothesis.end} ${e.hypothesis.of ?? ""}`;
    slips.set(key, [...(slips.get(key) ?? []), e]);
  }
  return [...slips.values()]
    .map((group) => {
      const sum = group.reduce((s, e) => s + weight(e.log), 0);
      return { group: bySize(group, sum, weight), probability: Math.min(sum / total, 1) };
    })
    .filter((g) => g.probability >= given.slipAt)
    .sort((a, b) => b.probability - a.probability)
    .slice(0, 3)
    .flatMap((g) => told(g.group, g.probability, chart));
}

// Of a hold the chart has no rows of, nobody can say that it was chosen wrongly.
function listed(hold: Hold | undefined, chart: Prepared): boolean {
  return hold !== undefined && chart.faces.has(hold);
}

// The sizes of one slip that hold a fair share of it, likeliest first, all by the same corrected reading.
function bySize(group: readonly Explained[], sum: number, weight: (log: number) => number): Explained[] {
  const sorted = [...group].sort((a, b) => b.log - a.log || a.row.index - b.row.index);
  const same = sorted.filter((e) => e.hypothesis === sorted[0]?.hypothesis);
  return same.filter((e, i) => i === 0 || (i < 3 && weight(e.log) >= given.slipAt * sum));
}

/** otherByFaces says which sizes but those left the readings would be, had they been taken over clips or outer groove
 *  faces. */
export function otherByFaces(ends: readonly MeasuredEnd[], left: ReadonlySet<string>, chart: Prepared): string[] {
  return ends.flatMap((end, n) => {
    const { cap } = end;
    if (cap === undefined || end.across === undefined || end.yoke !== undefined) return [];
    return ofClips(n, ends).flatMap((h) => {
      const look = n === 0 ? withCap(cap, lookFor(h)) : lookFor(h);
      const others = explain(h, chart, look).filter((e) => !left.has(e.row.size) && sameCap(end, e.ends[n]));
      return others.length === 0 ? [] : [say.otherByFaces(supposed(h.slip, others, chart))];
    });
  });
}

// A slip of faces leaves the cap as it is: that must agree outright, and no other cap need be looked at.
function withCap(cap: Measured, look: Look): Look {
  return (widest) => {
    const reach = nearAtMost(cap, widest.cap.limit, widest.cap.made) / given.rivalReach;
    return { ...look(widest), cap: [cap.mm - reach, cap.mm + reach] };
  };
}

function sameCap({ hold, faces, cap }: MeasuredEnd, known: KnownEnd | undefined): boolean {
  return cap !== undefined && known !== undefined && fitEnd({ hold, faces, cap }, known)?.agrees === true;
}

function twins(e: Explained, chart: Prepared): readonly KnownRow[] {
  return chart.twins(e.row);
}

function supposed(slip: Slip, group: readonly Explained[], chart: Prepared): say.Supposed {
  const { end, of, ends } = group[0]?.hypothesis ?? { end: 0, ends: [] };
  const read = of === undefined ? undefined : ends[end]?.[of];
  const out: say.Supposed = {
    slip,
    end: ofEnd(namedEnd(ends, end)),
    lead: read?.how.lead ?? "mm",
    asked: ends[end]?.hold ?? "unknown",
    sizes: group.map((e) => ({
      names: twins(e, chart).map((r) => r.row.name),
      held: e.ends[end]?.hold ?? "unknown",
    })),
    conversion: group[0]?.row.ends.length === 2,
  };
  if (of !== undefined) out.of = of;
  if (read !== undefined) out.mm = read.mm + read.shift; // as it would be read, not put right for the condition
  return out;
}

function told(group: readonly Explained[], probability: number, chart: Prepared): SlipFound[] {
  const lead = group[0];
  const slip = lead?.hypothesis.slip;
  if (lead === undefined || slip === undefined) return [];
  const { end, of } = lead.hypothesis;
  const own = lead.ends[end];
  const words = supposed(slip, group, chart);
  const rows = twins(lead, chart).map((r) => r.row);
  const out: SlipFound = {
    slip,
    end,
    look: slip === "wrong-hold" ? "hold" : ofUnit.includes(slip) ? "unit" : (of ?? "cap"),
    probability,
    rows: rows.map((r) => r.ref),
    names: rows.map((r) => r.name),
    says: say.says(words),
    next: say.next(words),
    guide: say.guide(slip),
  };
  if (own?.cap) out.cap = own.cap.mm;
  if (own?.across) out.across = own.across.mm;
  return [out];
}

const ofUnit: readonly Slip[] = ["inches-for-millimetres", "millimetres-for-inches"];

// ---- one hypothesis beside every row

function explain(h: Hypothesis, chart: Prepared, look = lookFor(h)): Explained[] {
  if (!made(h)) return [];
  const found = new Map<string, Explained>();
  const share = h.logPrior + logShare(chart, h.ends.length);
  const seen = new Map<KnownEnd, Basis>();
  for (const row of ordered(within(chart, look))) {
    const one = row.ends[0];
    const two = row.ends[1];
    if (one === undefined || (two !== undefined && h.ends.length === 1)) continue;
    if (two === undefined) {
      if (seen.get(one) === row.basis) continue; // a twin with the very figures explains no more
      seen.set(one, row.basis);
    }
    const orders =
      two === undefined
        ? [[one, one]]
        : [
            [one, two],
            [two, one],
          ];
    for (const ends of orders) {
      const log = logLikelihood(h, ends);
      if (log === undefined) continue;
      const whole = share + logPrior(row.basis, ends.slice(0, h.ends.length)) + log;
      const before = found.get(row.size);
      if (before === undefined || whole > before.log) found.set(row.size, { hypothesis: h, row, ends, log: whole });
    }
  }
  return [...found.values()];
}

// Whether it is a slip of the hold that was chosen: another has none to be looked for.
function made({ holds, ends, end }: Hypothesis): boolean {
  const hold = ends[end]?.hold;
  return holds === undefined || hold === undefined || hold === "unknown" || holds.includes(hold);
}

// Outside it no row has anything to do with the first end.
function lookFor(h: Hypothesis): Look {
  return (widest) => {
    const box: Box = {};
    for (const q of quantities) {
      const m = h.ends[0]?.[q];
      if (m === undefined) continue;
      const longer = h.end === 0 && q === "across" ? h.longer : undefined;
      const reach = wideOf(h) * given.slipReach * Math.hypot(m.standard, widest[q].standard);
      box[q] = [m.mm - (longer?.most ?? 0) - reach, m.mm - (longer?.least ?? 0) + reach];
    }
    return box;
  };
}

// Without a slip a row is looked at from farther off: it may miss by a hair.
function wideOf(h: Hypothesis): number {
  return h.slip === undefined ? 2 : 1;
}

// Undefined where the two have nothing to do with each other.
function logLikelihood(h: Hypothesis, ends: readonly KnownEnd[]): number | undefined {
  let sum = 0;
  for (let n = 0; n < h.ends.length; n++) {
    const asked = h.ends[n];
    const known = ends[n];
    const own = n === h.end ? h : undefined;
    if (asked === undefined || known === undefined || !goes(asked, known, own)) return undefined;
    for (let i = 0; i < quantities.length; i++) {
      const q = quantities[i] as Quantity;
      const measured = asked[q];
      const figure = known[q];
      if (measured === undefined) continue;
      if (figure === null) return undefined;
      const log = logOne(measured, figure, q === "across" ? own?.longer : undefined, wideOf(h));
      if (log === undefined) return undefined;
      sum += log;
    }
  }
  return sum;
}

function logOne(m: Measured, figure: Figure, longer: Hypothesis["longer"], wide: number): number | undefined {
  const standard = Math.hypot(m.standard, figure.standard);
  const reach = wide * given.slipReach * standard;
  const off = m.mm - figure.mm;
  if (off < (longer?.least ?? 0) - reach || off > (longer?.most ?? 0) + reach) return undefined;
  if (longer === undefined) return logDensity(m, figure);
  // The mean of the density over all the amounts by which it may be too long.
  const dof = tailFreedom(m, standard);
  const below = (amount: number): number => gum.studentCdf((off - amount) / standard, dof);
  return Math.log((below(longer.least) - below(longer.most)) / (longer.most - longer.least));
}

function goes(asked: MeasuredEnd, known: KnownEnd, own: Hypothesis | undefined): boolean {
  if (asked.hold === "wing" && known.hold !== "wing" && known.cap !== null) return false;
  // Whoever took it for another hold took it between the faces he saw.
  if (own?.slip === "wrong-hold") return !sameHold(asked.hold, known.hold);
  if (!sameHold(asked.hold, known.hold)) return false;
  if (asked.across !== undefined && !sameFaces(asked.faces, known.faces)) return false;
  const hold: Hold = asked.hold === "unknown" ? known.hold : asked.hold;
  return own?.holds === undefined || own.holds.includes(hold);
}
