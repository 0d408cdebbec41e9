// How likely each size is, among the sizes that agree and "not in the chart".
//
// A heavy-tailed likelihood (Student's t) for each measured quantity, times a prior by
// basis. A joint that is in no chart is likeliest where joints are: its density is the
// chart's own, blurred.
import type { Basis } from "./types";
import * as given from "./given";
import * as gum from "./gum";
import type { MeasuredEnd, RowFit } from "./agree";
import { freedom, quantities, sameFaces } from "./agree";
import type { KnownRow, Prepared } from "./prepared";

/** One size with its best row in front. */
export interface Weighed {
  size: string;
  fits: RowFit[]; // strongest basis first, then in the chart's order
  probability: number;
}

export function weigh(asked: readonly MeasuredEnd[], fits: readonly RowFit[], chart: Prepared): Weighed[] {
  const groups = new Map<string, RowFit[]>();
  for (const fit of fits) {
    const group = groups.get(fit.row.size);
    if (group === undefined) groups.set(fit.row.size, [fit]);
    else group.push(fit);
  }
  const share = Math.log((1 - given.priorAbsent) / chart.sizes);
  const logs = [...groups.values()].map((group) => Math.max(...group.map((f) => share + logWeight(f))));
  const absent = Math.log(given.priorAbsent) + logAbsent(asked, chart);
  const top = Math.max(absent, ...logs);
  const total = Math.exp(absent - top) + logs.reduce((sum, l) => sum + Math.exp(l - top), 0);
  return [...groups.entries()]
    .map(([size, group], i) => ({
      size,
      fits: [...group].sort((a, b) => leadFirst(a, b, chart)),
      probability: Math.exp((logs[i] ?? -Infinity) - top) / total,
    }))
    .sort((a, b) => tied(b.probability) - tied(a.probability) || first(a) - first(b));
}

// The last digits of a sum depend on its order: what differs only there is a tie.
function tied(probability: number): number {
  return Math.round(probability * 1e9);
}

function first(w: Weighed): number {
  return w.fits[0]?.row.index ?? 0;
}

function leadFirst(a: RowFit, b: RowFit, chart: Prepared): number {
  const twins = chart.twins.get(a.row.size) ?? [];
  return (
    Number(b.agrees) - Number(a.agrees) || twins.indexOf(a.row) - twins.indexOf(b.row) || logWeight(b) - logWeight(a) // the likelier order of a conversion joint's ends
  );
}

function prior(basis: Basis): number {
  if (basis === "memory") return given.priorMemory;
  return basis === "common-practice" ? given.priorCommon : 1;
}

function logWeight(fit: RowFit): number {
  let sum = Math.log(prior(fit.row.basis));
  for (const end of fit.ends) {
    if (end.end.hold === "unknown") sum += Math.log(given.priorOpen);
    if (end.end.faces === "unknown") sum += Math.log(given.priorOpen);
    for (const f of end.fits) {
      if (f.other) sum += Math.log(given.priorOther);
      sum += gum.studentLogPdf(f.difference / f.standard, Math.min(freedom(f), given.tailDof)) - Math.log(f.standard);
    }
    for (const quantity of end.missing) {
      sum -= Math.log(
        quantity === "cap" ? given.greatestCap - given.leastCap : given.greatestAcross - given.leastAcross,
      );
    }
  }
  return sum;
}

function logAbsent(asked: readonly MeasuredEnd[], chart: Prepared): number {
  let sum = 0;
  for (const end of asked) {
    let density = 0;
    let n = 0;
    for (const row of chart.rows) {
      if (row.ends.length !== 1) continue; // a conversion joint's ends are rows of their own
      n += 1;
      density += blurred(end, row);
    }
    sum += Math.log(Math.max(density / Math.max(n, 1), Number.MIN_VALUE));
  }
  return sum;
}

function blurred(asked: MeasuredEnd, row: KnownRow): number {
  const end = row.ends[0];
  if (end === undefined) return 0;
  let density = 1;
  for (const quantity of quantities) {
    const measured = asked[quantity];
    if (measured === undefined) continue;
    const value = end[quantity];
    if (value === null || (quantity === "across" && !sameFaces(asked.faces, end.faces))) return 0;
    const width = quantity === "cap" ? given.spreadCap : given.spreadAcross;
    const z = (measured.mm - value.mm) / width;
    density *= Math.exp(-0.5 * z * z) / (width * Math.sqrt(2 * Math.PI));
  }
  return density;
}
