// The columns of the bench: which joints, which person, which slip. A column's `says` is
// its definition and is printed with it; a share is worth no more than that sentence.
import type { Chart, ChartRow, Condition, Tool } from "../types";
import * as given from "./given";
import { barely, clearly, listed, neighbours, unlisted, type Away, type Joint, type Neighbours } from "./joints";
import type { Habit } from "./measure";
import { alone, beset, exact, printedFinely, settled } from "./populations";
import type { Chance } from "./random";
import { slippery, slips, type Slip } from "./slips";

export interface Column {
  id: string;
  says: string;
  tool: Tool;
  readings: number;
  condition?: Condition; // left out: new or used, as in given.ts
  rows?: (chart: Chart) => ChartRow[]; // left out: joints in no row
  edge?: boolean; // of joints in no row: only just
  absent?: number; // share of joints in no row among listed ones
  slip?: Slip;
}

const caliper = { tool: "digital-caliper", readings: 3 } as const;

export const columns: readonly Column[] = [
  { id: "listed", says: "every row of the chart, each as often as the others", ...caliper, rows: (c) => c.rows },
  {
    id: "settled",
    says: "figures published or common practice, hold and faces known, digits to 0.1 mm or finer, no other size within 3 combined standard uncertainties (cap and across both)",
    ...caliper,
    rows: (c) => alone(c, settled(c)),
  },
  {
    id: "crowded",
    says: "as settled, but with another size within 3 combined standard uncertainties",
    ...caliper,
    rows: (c) => beset(c, settled(c), "digital-caliper"),
  },
  {
    id: "whole-mm",
    says: "figures published or common practice, hold and faces known, a figure printed in whole millimetres",
    ...caliper,
    rows: (c) => exact(c).filter((r) => !printedFinely(r)),
  },
  {
    id: "one-reading",
    says: "as settled, one reading each",
    ...caliper,
    readings: 1,
    rows: (c) => alone(c, settled(c)),
  },
  { id: "worn", says: "as settled, worn", ...caliper, condition: "worn", rows: (c) => alone(c, settled(c)) },
  { id: "rusted", says: "as settled, rusted", ...caliper, condition: "rusted", rows: (c) => alone(c, settled(c)) },
  {
    id: "rule",
    says: "steel rule; another size of the same or unknown hold within 3 combined standard uncertainties of a rule",
    tool: "steel-rule",
    readings: 3,
    rows: (c) =>
      beset(
        c,
        c.rows.filter((r) => r.ends.length === 1),
        "steel-rule",
      ),
  },
  {
    id: "no-row",
    says: "in no row: 0.3 mm or more off every row in cap, or 0.6 mm or more in across; half keep a listed cap, a quarter a listed across",
    ...caliper,
  },
  {
    id: "no-row-edge",
    says: "in no row by a hair: one figure of a row, the other off by the limit to 1.1 times it",
    ...caliper,
    edge: true,
  },
  {
    id: "mixed",
    says: "19 listed of every size to 1 in no row (which may be as near as 0.05 mm in cap and 0.15 mm in across); common practice 0.8, recalled rows 0.3 times as often as published; 1 of 10 made to another figure where the row has one: for the reliability table",
    ...caliper,
    rows: (c) => c.rows,
    absent: 0.05,
  },
  ...slips.map(
    (slip): Column => ({
      id: slip.id,
      says: slip.says,
      tool: slip.rule ? "steel-rule" : "digital-caliper",
      readings: 3,
      rows: (c) => c.rows.filter((r) => slippery(r) && r.ends.some((e) => slip.can({ ...e, cap: null, across: null }))),
      slip,
    }),
  ),
];

export interface Stock {
  column: Column;
  rows: ChartRow[];
  plain: ChartRow[]; // with both figures: what joints in no row are made from
  near: Neighbours;
  away: Away;
}

export function stock(chart: Chart, column: Column): Stock {
  const away = column.absent === undefined ? clearly : barely;
  const both = chart.rows.filter(
    (r) => r.ends.length === 1 && r.ends.every((e) => e.cap !== null && e.across !== null),
  );
  const edge = both.filter((r) => slippery(r) && r.ends.every((e) => fine(e.cap?.half) && fine(e.across?.half)));
  const plain = column.absent === undefined ? edge : both;
  return { column, rows: column.rows?.(chart) ?? [], plain, near: neighbours(chart, away), away };
}

// A joint only just in no row must be so beside digits that say where the row is.
function fine(half: string | undefined): boolean {
  return Number(half ?? 1) <= 0.05;
}

/** draw takes one joint and one person out of a column's stock. */
export function draw(from: Stock, dice: Chance): { joint: Joint; habit: Habit } {
  const { column } = from;
  const none = column.rows === undefined || (column.absent !== undefined && dice.happens(column.absent));
  const joint = none
    ? unlisted(from.plain, from.near, from.away, column.edge === true, dice)
    : listed(weighted(from, dice), column.absent === undefined ? 0 : given.otherFigure, dice);
  const unit =
    column.slip?.unit ?? (column.slip?.rule || dice.happens(given.inchReaders[joint.inch ? "in" : "mm"]) ? "in" : "mm");
  const condition = column.condition ?? (dice.happens(given.newShare) ? "new" : "used");
  return { joint, habit: { tool: column.tool, condition, unit, readings: column.readings } };
}

function weighted(from: Stock, dice: Chance): ChartRow {
  for (;;) {
    const row = dice.pick(from.rows);
    if (from.column.absent === undefined || dice.happens(given.often[row.basis])) return row;
  }
}
