// From the sizes that are left to a verdict and what is said of it.
import type { Answer, Quantity, Size } from "./types";
import { compared, quantities, type MeasuredEnd, type RowFit } from "./agree";
import { doubts, type Doubt } from "./claim";
import { conversions, eachEnd, near, sameFigures } from "./neighbours";
import { stronger, type Prepared } from "./prepared";
import * as say from "./speech";
import * as next from "./speech-next";
import { fits as fitsBecause } from "./speech-sizes";
import { facesWords } from "./speech-words";
import { tellApart } from "./tell-apart";
import type { Weighed } from "./weigh";

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
    tellApart: tellApart(asked, left),
    conversions: left.length === 1 ? conversions(asked, chart) : [],
  };
  const only = left.length === 1 ? left[0] : undefined;
  if (only !== undefined) return one(found, asked, only);
  return left.length === 0 ? none(found, asked, chart) : several(found, asked, left);
}

function size(w: Weighed, chart: Prepared): Size {
  const lead = w.fits[0];
  const weighed = w.fits.map((f) => f.row);
  const rows = [...weighed, ...(chart.twins.get(w.size) ?? []).filter((r) => !weighed.includes(r))];
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

function one(answer: Answer, asked: readonly MeasuredEnd[], only: Weighed): Answer {
  const against = doubts(asked, only);
  const lead = only.fits[0];
  const left = answer.sizes[0];
  if (lead === undefined || left === undefined) return answer;
  const conversion = lead.row.ends.length === 2;
  const nearest = answer.near[0];
  const because = [
    ...say.beside(lead),
    say.within(bounds(left)),
    ...say.wholeDigits(lead),
    ...say.basis(lead),
    ...say.otherHolds(answer.sameFigures),
    ...(nearest === undefined ? [] : [say.nextNearest(nearest)]),
    say.checked(quantitiesOf(left), asked),
  ];
  const todo = [
    ...against.map((d: Doubt) => next.settle(d, lead)),
    next.everyDigit(asked),
    next.secondReading(asked),
    answer.conversions.length > 0 ? next.otherPair() : undefined,
    next.checkHold(lead),
    next.beforePressing(),
  ];
  return {
    ...answer,
    verdict: against.length === 0 ? "identified" : "possible",
    says: {
      head:
        against.length === 0
          ? say.identified(left.names, conversion)
          : say.possible(left.names, conversion, against[0]),
      because,
      next: said(todo),
    },
  };
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

function several(answer: Answer, asked: readonly MeasuredEnd[], left: readonly Weighed[]): Answer {
  const coarse = left.some((w) => doubts(asked, w).some((d) => d.kind === "coarse"));
  const halfMeasured = asked.some((e) => e.cap === undefined || e.across === undefined);
  const told = (measure: string): boolean => answer.tellApart.some((t) => t.measure === measure);
  const second = asked.flatMap((e) => [e.cap?.doubt, e.across?.doubt]);
  const because = [
    ...answer.sizes.slice(0, 4).map((s) => `${s.names.join(" = ")}: ${s.because}`),
    ...say.otherHolds(answer.sameFigures),
    ...(coarse ? [say.coarseReadings()] : []),
    say.checked(answer.sizes.flatMap(quantitiesOf), asked),
  ];
  const todo = [
    ...answer.tellApart.map((t) => t.says),
    halfMeasured && !told("cap") && !told("across") ? next.takeBoth() : undefined,
    asked.some((e) => e.hold === "unknown") && !told("hold") ? next.lookAtHold() : undefined,
    ...second,
    next.everyDigit(asked),
    next.secondReading(asked),
  ];
  return {
    ...answer,
    verdict: "between",
    says: { head: say.between(answer.sizes.map((s) => s.names[0] ?? "")), because, next: said(todo) },
  };
}

function none(answer: Answer, asked: readonly MeasuredEnd[], chart: Prepared): Answer {
  const nearest = answer.near[0];
  const missing = asked.filter(
    (e) => e.hold !== "unknown" && !chart.rows.some((r) => r.ends.some((k) => k.hold === e.hold)),
  );
  const because = [
    ...missing.map((e) => say.holdNotInChart(e.hold)),
    ...(asked.length === 2 ? answer.ends.map((e) => e.says) : []),
    ...(nearest === undefined ? [] : [say.nearestMisses(nearest)]),
    ...say.otherHolds(answer.sameFigures),
    say.notComplete(),
  ];
  const first = asked.find((e) => e.across !== undefined);
  const bothFound = asked.length === 2 && answer.ends.every((e) => e.rows.length > 0);
  const todo = bothFound
    ? [next.whichEnd(), next.orderByFigures(asked)]
    : [
        first === undefined ? undefined : next.checkFaces(first.hold, facesWords[first.faces]),
        next.cleanAndRepeat(),
        next.orderByFigures(asked),
      ];
  return {
    ...answer,
    verdict: "not-in-chart",
    says: { head: say.notInChart(asked.length), because, next: said(todo) },
  };
}

function said(steps: readonly (string | undefined)[]): string[] {
  return [...new Set(steps.filter((s): s is string => s !== undefined))];
}
