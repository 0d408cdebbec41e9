// What an instrument can reach: the sizes that readings could be of, by the bench's own error model and not the core's.
import type { Chart, ChartEnd, ChartFigure, ChartValue, Quantity, Tool } from "../types";
import { otherFigures } from "./joints";
import type { ReadEnd } from "./measure";
import { combined } from "./populations";

/** Coverage factor of about 95 % (JCGM 100 6.3.3). */
const factor = 2;

/** withinReach gives the sizes one of whose plain rows has both figures within reach of the mean readings of one end. */
export function withinReach(chart: Chart, tool: Tool): (end: ReadEnd) => Set<number> {
  const rows = chart.rows.flatMap((row) =>
    row.ends.length === 1 ? row.ends.map((end) => ({ size: row.size, end })) : [],
  );
  return (end) => {
    const sizes = new Set<number>();
    for (const row of rows) if (reached(end, row.end, tool)) sizes.add(row.size);
    return sizes;
  };
}

function reached(read: ReadEnd, end: ChartEnd, tool: Tool): boolean {
  if (end.hold !== read.hold && end.hold !== "unknown") return false;
  return close(read.cap, end.cap, "cap", tool) && close(read.across, end.across, "across", tool);
}

function close(readings: readonly number[], value: ChartValue | null, quantity: Quantity, tool: Tool): boolean {
  if (readings.length === 0 || value === null) return false;
  const mean = readings.reduce((a, b) => a + b) / readings.length;
  const near = (figure: ChartFigure): boolean =>
    Math.abs(mean - Number(figure.mm)) <= factor * combined(quantity, mean, figure, tool);
  return [value, ...otherFigures(value)].some(near);
}
