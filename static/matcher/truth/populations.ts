// Which rows of a chart belong to a column.
import type { Chart, ChartEnd, ChartRow, ChartValue, Quantity, Tool } from "../types";
import * as given from "./given";

/** Half of the last printed digit up to which digits are fine enough to order on, mm. */
const fineHalf = 0.05;

/** Times the combined standard uncertainty within which another size counts as near. */
const within = 3;

/** Farther apart than anything that is within reach of a rule, mm. */
const farApart = 5;

/** Rows whose figures are published or common practice, with hold, faces and every figure known. */
export function exact(chart: Chart): ChartRow[] {
  return chart.rows.filter(
    (row) =>
      row.basis !== "memory" &&
      row.ends.every(
        (e) =>
          e.hold !== "unknown" &&
          e.faces !== "unknown" &&
          [e.cap, e.across].every((v) => v !== null && v.basis !== "memory"),
      ),
  );
}

/** exact, printed finely. */
export function settled(chart: Chart): ChartRow[] {
  return exact(chart).filter(printedFinely);
}

export function printedFinely(row: ChartRow): boolean {
  return row.ends.every((e) => [e.cap, e.across].every((v) => Number(v?.half) <= fineHalf));
}

/** Those with no other size near, for a caliper. */
export function alone(chart: Chart, rows: readonly ChartRow[]): ChartRow[] {
  const crowded = crowding(chart, "digital-caliper");
  return rows.filter((row) => !crowded(row));
}

/** Those with another size near, for that tool. */
export function beset(chart: Chart, rows: readonly ChartRow[], tool: Tool): ChartRow[] {
  return rows.filter(crowding(chart, tool));
}

// Rows on shelves of one millimetre of cap, so that a row is set beside its like only.
function crowding(chart: Chart, tool: Tool): (row: ChartRow) => boolean {
  const shelves = new Map<number, Set<ChartRow>>();
  const caps = (row: ChartRow): number[] =>
    row.ends.flatMap((e) =>
      e.cap === null ? [-1] : [e.cap, ...(e.cap.others ?? [])].map((v) => Math.floor(Number(v.mm))),
    );
  for (const row of chart.rows) {
    for (const cap of caps(row)) shelves.set(cap, (shelves.get(cap) ?? new Set<ChartRow>()).add(row));
  }
  // Wide enough for whole millimetres and a rule; a recalled cap is no wider.
  const wide = tool === "steel-rule" ? 3 : 2;
  return (row) => {
    const first = row.ends[0]?.cap;
    const at = first === null || first === undefined ? -1 : Math.floor(Number(first.mm));
    for (let mm = at - wide; mm <= at + wide; mm++) {
      for (const other of shelves.get(mm) ?? []) if (beside(row, other, tool)) return true;
    }
    return false;
  };
}

function beside(row: ChartRow, other: ChartRow, tool: Tool): boolean {
  if (other.size === row.size || other.ends.length !== row.ends.length) return false;
  const orders = other.ends.length === 2 ? [other.ends, [...other.ends].reverse()] : [other.ends];
  return orders.some((ends) => row.ends.every((end, i) => ends[i] !== undefined && near(end, ends[i], tool)));
}

function near(end: ChartEnd, other: ChartEnd, tool: Tool): boolean {
  if (end.hold !== other.hold && end.hold !== "unknown" && other.hold !== "unknown") return false;
  return close(end.cap, other.cap, "cap", tool) && close(end.across, other.across, "across", tool);
}

function close(value: ChartValue | null, other: ChartValue | null, quantity: Quantity, tool: Tool): boolean {
  if (value === null || other === null) return value === other;
  if (Math.abs(Number(value.mm) - Number(other.mm)) > farApart && other.others === undefined) return false;
  return [other, ...(other.others ?? [])].some(
    (o) => Math.abs(Number(value.mm) - Number(o.mm)) <= within * combined(quantity, Number(value.mm), o, tool),
  );
}

/** Combined standard uncertainty, by the bench's own error model, of three readings of a
 *  used part beside a figure of the chart (JCGM 100 5.1.2). */
export function combined(
  quantity: Quantity,
  mm: number,
  figure: Pick<ChartValue, "half" | "basis">,
  tool: Tool,
): number {
  const by = given.instruments[tool];
  if (by === undefined) throw new Error(`the error model has no ${tool}`);
  const limit = mm <= 100 ? by.limit : by.limitAbove;
  const wear = given.wear.used[quantity];
  const made = quantity === "cap" ? given.madeCap / Math.sqrt(12) : given.madeAcross;
  const digits = Math.max(Number(figure.half), given.offBy[figure.basis][quantity]) / Math.sqrt(3);
  return Math.hypot(
    limit / Math.sqrt(3),
    by.step / Math.sqrt(12),
    by[quantity] / Math.sqrt(3),
    (wear.high - wear.low) / Math.sqrt(12),
    made,
    digits,
  );
}
