// How likely a size is before anything is measured: by its basis, and by what the chart
// leaves open about it.
import type { Basis } from "./types";
import * as given from "./given";
import type { KnownEnd, KnownRow, Prepared } from "./prepared";

function ofBasis(basis: Basis): number {
  if (basis === "memory") return given.priorMemory;
  return basis === "common-practice" ? given.priorCommon : 1;
}

/** ln of a row's weight beside a published row with a known hold and known faces. */
export function logPrior(basis: Basis, ends: readonly KnownEnd[]): number {
  let open = 0;
  for (const end of ends) open += Number(end.hold === "unknown") + Number(end.faces === "unknown");
  return logOpen(basis, open);
}

/** The same, of a row about which so much is open: holds and faces that are unknown. */
export function logOpen(basis: Basis, open: number): number {
  return Math.log(ofBasis(basis)) + open * Math.log(given.priorOpen);
}

/** What the sizes of a chart weigh together, beside one or two measured ends. */
export type Together = readonly [one: number, two: number];

export function together(sizes: Iterable<readonly KnownRow[]>): Together {
  const heaviest = (rows: readonly KnownRow[], ends: number): number => {
    let most = -Infinity;
    for (const row of rows) most = Math.max(most, logPrior(row.basis, endsOf(row, ends)));
    return Math.exp(most);
  };
  let [one, two] = [0, 0];
  for (const rows of sizes) {
    if (rows[0]?.ends.length === 1) one += heaviest(rows, 1); // a conversion joint is none of one end
    two += heaviest(rows, 2);
  }
  return [one, two];
}

// A plain joint has the same end twice.
function endsOf({ ends }: KnownRow, asked: number): readonly KnownEnd[] {
  return asked === 2 && ends.length === 1 ? [...ends, ...ends] : ends;
}

/** ln of the chance, before measuring, of a size of weight 1: the sizes share what "in no row" leaves. */
export function logShare(chart: Prepared, ends: number): number {
  return Math.log((1 - given.priorAbsent) / chart.together[ends === 2 ? 1 : 0]);
}
