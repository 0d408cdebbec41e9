// From the sizes that are left to a verdict and what is said of it.
import type { Answer, Hold, Quantity, Size, SlipFound } from "./types";
import { compared, type MeasuredEnd, type RowFit } from "./agree";
import { doubts, type Doubt } from "./claim";
import { clearance } from "./clear";
import * as given from "./given";
import { conversions, eachEnd, near, sameFigures } from "./neighbours";
import { stronger, type KnownRow, type Prepared } from "./prepared";
import { learned } from "./learn";
import * as say from "./speech";
import * as next from "./speech-next";
import { fits as fitsBecause } from "./speech-sizes";
import { clipsLeaveOpen, workedOut } from "./speech-yokes";
import { twinsDiffer } from "./twins";
import { worn, wouldBeWorn } from "./wear";
import type { Weighed } from "./weigh";
import { quantities } from "./words";
import { boresBeside, clipsBeside, halfMeasured, onlyYokes, unmeasured } from "./yoke-beside";

/** conclude fills an answer from readings that can be used. */
export function conclude(
  answer: Answer,
  asked: readonly MeasuredEnd[],
  fits: readonly RowFit[],
  left: readonly Weighed[],
  chart: Prepared,
): Answer {
  const keys = new Set(left.map((w) => w.size));
  const found: Answer = {
    ...answer,
    sizes: left.map((w) => size(w, chart)),
    near: near(fits, chart, keys),
    sameFigures: sameFigures(asked, fits, chart, keys),
    ends: eachEnd(asked, chart),
    ways: left.length === 0 ? (learned()?.ways(asked, chart) ?? []) : [],
    tellApart: learned()?.tellApart(asked, left) ?? [],
    conversions: left.length === 1 ? conversions(asked, chart) : [],
  };
  const only = left.length === 1 ? left[0] : undefined;
  if (only !== undefined) return one(found, asked, only, chart);
  return left.length === 0 ? none(found, asked, chart) : several(found, asked, left, chart);
}

function twinsOf(w: Weighed, chart: Prepared): readonly KnownRow[] {
  return w.fits.slice(0, 1).flatMap((f) => chart.twins(f.row));
}

function size(w: Weighed, chart: Prepared): Size {
  const lead = w.fits[0];
  const weighed = w.fits.map((f) => f.row);
  const rows = [...weighed, ...twinsOf(w, chart).filter((r) => !weighed.includes(r))];
  const bases = w.fits.filter((f) => f.agrees).map((f) => f.row.basis);
  return {
    rows: rows.map((r) => r.row.ref),
    names: rows.map((r) => r.row.name),
    probability: w.probability,
    basis: bases.reduce(stronger, lead?.row.basis ?? "memory"),
    hold: lead?.ends[0]?.end.hold ?? "unknown",
    ends: lead === undefined ? [] : lead.ends.map(compared),
    because: lead === undefined ? "" : fitsBecause(lead),
  };
}

function one(answer: Answer, asked: readonly MeasuredEnd[], only: Weighed, chart: Prepared): Answer {
  const against = doubts(asked, only, chart);
  const lead = only.fits[0];
  const left = answer.sizes[0];
  if (lead === undefined || left === undefined) return answer;
  const conversion = lead.row.ends.length === 2;
  const yokes = onlyYokes(asked);
  const nearest = answer.near[0];
  const unit = say.leadOf(asked);
  const wear = worn(asked, lead);
  const because = [
    ...(yokes > 0 ? [workedOut(quantitiesOf(left))] : []),
    ...say.beside(lead),
    ...say.condition(asked),
    say.within(bounds(left), unit),
    ...say.wholeDigits(lead),
    ...say.basis(lead),
    ...boresBeside(asked, [left]),
    ...clipsBeside(asked, left),
    ...say.otherHolds(answer.sameFigures),
    ...wear.map((w) => say.worn(w, unit)),
    ...(against.length === 0
      ? say.nothingWithin(clearance(asked, chart, new Set([only.size])), heldBy(lead), unit)
      : []),
    ...(nearest === undefined ? [] : [say.nextNearest(nearest)]),
    say.checked(quantitiesOf(left), asked),
  ];
  const todo = [
    ...against.map((d: Doubt) => next.settle(d, lead, yokes)),
    ...(learned()?.otherByFaces(asked, new Set([only.size]), chart) ?? []),
    next.everyDigit(asked),
    next.secondReading(asked),
    next.steadier(asked),
    ...wear.map((w) => next.lookAtBores(w.renew)),
    twinsDiffer(twinsOf(only, chart)),
    answer.conversions.length > 0 ? next.otherPair(yokes) : undefined,
    next.checkHold(lead),
    next.beforePressing(yokes),
  ];
  return {
    ...answer,
    verdict: against.length === 0 ? "identified" : "possible",
    says: {
      head:
        against.length === 0
          ? say.identified(left.names, conversion, yokes)
          : say.possible(left.names, conversion, yokes, against[0]),
      because,
      next: said(todo),
    },
  };
}

function heldBy(fit: RowFit): Hold[] {
  return fit.ends.map((e) => e.end.hold);
}

function quantitiesOf(size: Size): Quantity[] {
  return quantities.filter((q) => size.ends.some((e) => e[q] !== undefined));
}

// The widest bound of each quantity, over both ends.
function bounds(size: Size): { quantity: string; mm: number }[] {
  const widest = (quantity: "cap" | "across"): { quantity: string; mm: number }[] => {
    const all = size.ends.map((e) => e[quantity]?.uncertainty).filter((u): u is number => u !== undefined);
    return all.length === 0 ? [] : [{ quantity, mm: Math.max(...all) }];
  };
  return [...widest("cap"), ...widest("across")];
}

function several(answer: Answer, asked: readonly MeasuredEnd[], left: readonly Weighed[], chart: Prepared): Answer {
  const coarse = left.some((w) => doubts(asked, w, chart).some((d) => d.kind === "coarse"));
  const half = asked.some(halfMeasured);
  const told = (measure: string): boolean => answer.tellApart.some((t) => t.measure === measure);
  const second = asked.flatMap((e) => [e.cap?.doubt, e.across?.doubt]);
  const because = [
    ...answer.sizes
      .slice(0, 4)
      .map((s) => `${s.names.join(" = ")}: ${[s.because, ...clipsBeside(asked, s)].join(" ")}`),
    ...boresBeside(asked, answer.sizes),
    ...say.otherHolds(answer.sameFigures),
    ...(coarse && !half ? [asked.some(unmeasured) ? clipsLeaveOpen() : say.coarseReadings()] : []),
    say.checked(answer.sizes.flatMap(quantitiesOf), asked),
  ];
  const todo = [
    ...answer.tellApart.map((t) => t.says),
    half && !told("cap") && !told("across") ? next.takeBoth() : undefined,
    asked.some((e) => e.hold === "unknown") && !told("hold") ? next.lookAtHold() : undefined,
    ...second,
    ...(learned()?.otherByFaces(asked, new Set(left.map((w) => w.size)), chart) ?? []),
    next.everyDigit(asked),
    next.secondReading(asked),
    next.steadier(asked),
    ...left.slice(0, 2).map((w) => twinsDiffer(twinsOf(w, chart))),
  ];
  const found = said(todo);
  return {
    ...answer,
    verdict: "between",
    says: {
      head: say.between(answer.sizes.map((s) => s.names[0] ?? "")),
      because,
      next: found.length > 0 ? found : [next.orderByFigures(asked)], // nothing parts what is given the same figures
    },
  };
}

function none(answer: Answer, asked: readonly MeasuredEnd[], chart: Prepared): Answer {
  const nearest = answer.near[0];
  const missing = asked.filter((e) => e.hold !== "unknown" && !chart.faces.has(e.hold));
  const because = [
    ...missing.map((e) => say.holdNotInChart(e.hold)),
    ...(asked.length === 2 ? answer.ends.map((e) => e.says) : []),
    ...(nearest === undefined ? [] : [say.nearestMisses(nearest)]),
    ...(nearest === undefined ? [] : [...boresBeside(asked, [nearest]), ...clipsBeside(asked, nearest)]),
    ...say.otherHolds(answer.sameFigures),
    say.notComplete(),
  ];
  const wornCap = wouldBeWorn(asked, nearest);
  const first = asked.find((e) => e.across !== undefined);
  const bothFound = asked.length === 2 && answer.ends.every((e) => e.rows.length > 0);
  const todo = bothFound
    ? [next.whichEnd(), answer.ways.length > 0 ? learned()?.wayOut() : undefined, next.orderByFigures(asked)]
    : [
        first === undefined ? undefined : next.checkFaces(first),
        wornCap === undefined ? undefined : next.tryWorn(wornCap.name, wornCap.short, say.leadOf(asked)),
        next.cleanAndRepeat(onlyYokes(asked)),
        next.orderByFigures(asked),
      ];
  return {
    ...answer,
    verdict: "not-in-chart",
    says: { head: say.notInChart(asked.length, onlyYokes(asked)), because, next: said(todo) },
  };
}

/** slipped adds slips to an answer that names no size; a slip that is likely enough is its verdict. */
export function slipped(answer: Answer, slips: SlipFound[]): Answer {
  const [first, late] = [slips[0], learned()];
  if (first === undefined || late === undefined) return answer;
  const sure = first.probability >= given.slipStrongAt;
  return {
    ...answer,
    slips,
    verdict: sure ? "measure-again" : answer.verdict,
    says: {
      head: sure ? late.head(first) : answer.says.head,
      because: [...slips.slice(sure ? 1 : 0).map((s) => s.says), ...answer.says.because],
      next: said([...slips.map((s) => s.next), ...answer.says.next]),
    },
  };
}

function said(steps: readonly (string | undefined)[]): string[] {
  return [...new Set(steps.filter((s): s is string => s !== undefined))];
}
