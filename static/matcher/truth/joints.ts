// Joints as they really are: made after a row of the chart, or after no row of it.
import type { Chart, ChartEnd, ChartFigure, ChartRow, ChartValue, Faces, Hold, Quantity } from "../types";
import * as given from "./given";
import type { TrueEnd } from "./measure";
import type { Chance } from "./random";

export interface Joint {
  ends: TrueEnd[]; // as many as are measured: two of a conversion joint
  row: ChartRow | null; // null: in no row
  inch: boolean; // its figures are printed in inches
}

const usualFaces: Partial<Record<Hold, Faces>> = {
  "inside-clip": "groove-inner",
  injected: "groove-inner",
  plate: "under-plates",
  wing: "wing-outer",
};

/** listed makes a joint after a row: to the figures it leads with, or, so often, to another that is given there. Where
 *  the chart does not know the hold or the faces, it is one of the common ones. */
export function listed(row: ChartRow, other: number, dice: Chance): Joint {
  return { ends: row.ends.map((end) => made(end, other, dice)), row, inch: inches(row) };
}

/** Whether a joint could have been made after a row, or lies so near that nobody could tell. */
export function couldBe(joint: Joint, row: ChartRow): boolean {
  const orders = row.ends.length === 2 ? [row.ends, [...row.ends].reverse()] : [[...row.ends, ...row.ends]];
  return orders.some((ends) =>
    joint.ends.every((it, i) => {
      const end = ends[i];
      const gap = given.madeCap / 2;
      return (
        end !== undefined &&
        (end.hold === it.hold || end.hold === "unknown") &&
        within(end.cap, "cap", it.cap, -gap, gap) &&
        within(end.across, "across", it.across, 0, 2 * given.madeAcross)
      );
    }),
  );
}

function within(
  value: ChartValue | null,
  quantity: Quantity,
  mm: number | null,
  shift: number,
  spread: number,
): boolean {
  if (value === null || mm === null) return value === mm;
  return [value, ...otherFigures(value)].some(
    (figure) => Math.abs(mm - Number(figure.mm) - shift) <= leeway(figure, quantity) + spread,
  );
}

function inches(row: ChartRow): boolean {
  return row.ends.some((end) => (end.cap ?? end.across)?.unit === "in");
}

function made(end: ChartEnd, other: number, dice: Chance): TrueEnd {
  const hold = end.hold === "unknown" ? dice.pick<Hold>(["outside-clip", "outside-clip", "inside-clip"]) : end.hold;
  return {
    hold,
    faces: end.faces === "unknown" ? (usualFaces[hold] ?? "over-caps") : end.faces,
    cap: end.cap === null ? null : nominal(meant(end.cap, other, dice), "cap", dice) - dice.between(0, given.madeCap),
    across: end.across === null ? null : nominal(meant(end.across, other, dice), "across", dice) + spread(dice),
  };
}

// The figure a joint is made to, of those the sources give.
function meant(value: ChartValue, other: number, dice: Chance): ChartFigure {
  const others = otherFigures(value);
  return others.length > 0 && dice.happens(other) ? dice.pick(others) : value;
}

/** Other figures than the first: "27 mm" beside 1.062 in says the same with fewer digits. */
export function otherFigures(value: ChartValue): ChartFigure[] {
  return (value.others ?? []).filter((o) => Math.abs(Number(o.mm) - Number(value.mm)) > Number(o.half));
}

function nominal(value: ChartFigure, quantity: Quantity, dice: Chance): number {
  const off = leeway(value, quantity);
  return Number(value.mm) + dice.between(-off, off);
}

// How far a nominal may lie from the figure that is printed for it.
function leeway(value: ChartFigure, quantity: Quantity): number {
  return Math.max(Number(value.half), given.offBy[value.basis][quantity]);
}

function spread(dice: Chance): number {
  const most = 2 * given.madeAcross;
  return Math.max(-most, Math.min(most, given.madeAcross * dice.normal()));
}

/** How far from every row a joint in no row lies, mm: this far in cap or in across. */
export interface Away {
  cap: number;
  across: number;
}

/** What the figures are asked for. */
export const clearly: Away = { cap: 0.3, across: 0.6 };
/** Anything but the same size, by the rule that makes twins of two rows. */
export const barely: Away = { cap: 0.05, across: 0.15 };

/** A joint in no row: half share a listed cap and half do not; `edge` puts it at the limit itself. */
export function unlisted(plain: readonly ChartRow[], near: Neighbours, away: Away, edge: boolean, dice: Chance): Joint {
  for (let tries = 0; tries < 10000; tries++) {
    const row = dice.pick(plain);
    const end = row.ends[0];
    if (end === undefined || end.cap === null || end.across === null) continue;
    const it = made(end, 0, dice);
    const sign = (): number => (dice.happens(0.5) ? 1 : -1);
    const cap = Number(end.cap.mm);
    const across = Number(end.across.mm);
    const stray = dice.uniform();
    const far = (least: number, most: number): number =>
      sign() * (edge ? least * dice.between(1, 1.1) : dice.between(least, most));
    // The joint keeps what its row has, but for the quantity that strays.
    if (stray >= 0.5 || !edge) it.cap = stray < 0.5 ? it.cap : cap + far(away.cap, 3);
    if (stray < 0.5 || (!edge && stray >= 0.75)) it.across = across + far(away.across, 12);
    if (it.cap === null || it.across === null || it.cap < 10 || it.across < it.cap * 1.2) continue;
    if (near(it)) continue;
    return { ends: [it], row: null, inch: inches(row) };
  }
  throw new Error("no room for a joint in no row");
}

/** Whether any row, of any hold that may be the same, is nearer than `away` in both figures. */
export type Neighbours = (end: TrueEnd) => boolean;

export function neighbours(chart: Chart, away: Away): Neighbours {
  interface End {
    hold: Hold;
    cap: number;
    across: number[];
  }
  const byCap = new Map<number, End[]>(); // by whole millimetre
  for (const row of chart.rows) {
    for (const end of row.ends) {
      if (end.cap === null || end.across === null) continue;
      for (const cap of figures(end.cap)) {
        const shelf = byCap.get(Math.floor(cap));
        const one = { hold: end.hold, cap, across: figures(end.across) };
        if (shelf === undefined) byCap.set(Math.floor(cap), [one]);
        else shelf.push(one);
      }
    }
  }
  return (it) => {
    const [cap, across] = [it.cap ?? 0, it.across ?? 0];
    const at = Math.floor(cap);
    return [at - 1, at, at + 1].some((mm) =>
      byCap
        .get(mm)
        ?.some(
          (e) =>
            (e.hold === it.hold || e.hold === "unknown") &&
            Math.abs(e.cap - cap) < away.cap &&
            e.across.some((x) => Math.abs(x - across) < away.across),
        ),
    );
  };
}

function figures(value: ChartValue): number[] {
  return [Number(value.mm), ...(value.others ?? []).map((o) => Number(o.mm))];
}
