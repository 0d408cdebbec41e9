// The peer: the rule people use without the core. The mean of the readings, the row with
// the nearest figures under the hold they see, and that is the joint; it always names one.
import type { Chart, ChartRow, ChartValue, Hold } from "../types";
import type { ReadEnd } from "./measure";

interface Known {
  hold: Hold;
  cap: number | undefined;
  across: number | undefined;
}

/** A row without a figure is taken as this far off in it, mm. */
const noFigure = 5;

export function nearestRow(chart: Chart): (ends: readonly ReadEnd[]) => ChartRow | undefined {
  const rows = chart.rows.map((row) => {
    const ends = row.ends.map((e): Known => ({ hold: e.hold, cap: length(e.cap), across: length(e.across) }));
    return { row, orders: ends.length === 2 ? [ends, [...ends].reverse()] : [[...ends, ...ends]] };
  });
  const plain = rows.filter((r) => r.row.ends.length === 1);
  return (ends) => {
    const means = ends.map((e): Known => ({ hold: e.hold, cap: mean(e.cap), across: mean(e.across) }));
    let best: ChartRow | undefined;
    let least = Infinity;
    for (const { row, orders } of means.length === 1 ? plain : rows) {
      for (const order of orders) {
        const off = distance(means, order, least);
        if (off < least) {
          best = row;
          least = off;
        }
      }
    }
    return best;
  };
}

// Beyond `enough` nobody asks how far.
function distance(means: readonly Known[], order: readonly Known[], enough: number): number {
  let off = 0;
  for (let i = 0; i < means.length && off < enough; i++) {
    const m = means[i];
    const end = order[i];
    if (m === undefined || end === undefined) continue;
    if (end.hold !== m.hold && end.hold !== "unknown") return Infinity;
    if (m.cap !== undefined) off += (end.cap === undefined ? noFigure : m.cap - end.cap) ** 2;
    if (m.across !== undefined) off += (end.across === undefined ? noFigure : m.across - end.across) ** 2;
  }
  return off;
}

function length(value: ChartValue | null): number | undefined {
  return value === null ? undefined : Number(value.mm);
}

function mean(xs: readonly number[]): number | undefined {
  return xs.length === 0 ? undefined : xs.reduce((a, b) => a + b) / xs.length;
}
