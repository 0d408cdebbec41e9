// How likely each size is, among the sizes that agree and "not in the chart".
//
// A heavy-tailed likelihood (Student's t) for each measured quantity, times a prior by
// basis. A joint that is in no chart is likeliest where joints are (absent.ts).
import * as given from "./given";
import { unlisted } from "./absent";
import type { MeasuredEnd, RowFit } from "./agree";
import { logDensity } from "./density";
import type { Prepared } from "./prepared";
import { logPrior, logShare } from "./prior";

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
  const share = logShare(chart, asked.length);
  const logs = [...groups.values()].map((group) => Math.max(...group.map((f) => share + logWeight(f))));
  const absent = logAbsent(asked, chart);
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
  const twins = chart.twins(a.row);
  return (
    Number(b.agrees) - Number(a.agrees) || twins.indexOf(a.row) - twins.indexOf(b.row) || logWeight(b) - logWeight(a) // the likelier order of a conversion joint's ends
  );
}

function logWeight(fit: RowFit): number {
  let sum = logPrior(
    fit.row.basis,
    fit.ends.map((e) => e.end),
  );
  for (const end of fit.ends) {
    for (const f of end.fits) {
      if (f.other) sum += Math.log(given.priorOther);
      sum += logDensity(f.measured, f.figure);
    }
    for (const quantity of end.missing) {
      sum -= Math.log(
        quantity === "cap" ? given.greatestCap - given.leastCap : given.greatestAcross - given.leastAcross,
      );
    }
  }
  return sum;
}

/** ln of the prior and the density of readings of a joint that is in no row. */
export function logAbsent(asked: readonly MeasuredEnd[], chart: Prepared): number {
  let sum = Math.log(given.priorAbsent);
  for (const end of asked) sum += Math.log(Math.max(unlisted(end, chart), Number.MIN_VALUE));
  return sum;
}
