// A plot of curves over one axis, as lines of a drawing sheet, with the same in figures beside it. One picture for
// screen and paper: it carries no colours, the style sheet's classes do (static/parts/figure).
import { local } from "../matcher/speech-number";
import type { Element, FigureTable, Picture } from "./description";
import { el, px } from "./element";

export interface Axis {
  label: string; // with its unit
  from: number;
  to: number;
}

export interface Curve {
  label: string;
  points: [number, number][];
  dashed?: boolean;
}

/** A level across the plot, such as a limit. */
export interface Level {
  at: number;
  label: string;
}

export interface Mark {
  x: number;
  y: number;
  label: string;
}

export interface PlotSpec {
  id: string;
  title: string;
  x: Axis;
  y: Axis;
  curves: Curve[];
  levels?: Level[];
  mark?: Mark; // the working point
  head: string[]; // of the table: x, then each curve
  digits: [number, number]; // decimals in the table: of x, of the curves
  every: number; // the table has every n-th point
}

const width = 360;
const height = 250;
const left = 58;
const right = 12;
const top = 16;
const bottom = 44;

/** The plot and its table. */
export function plot(spec: PlotSpec): Picture {
  const { x, y } = spec;
  const atX = (value: number) => left + ((value - x.from) / (x.to - x.from)) * (width - left - right);
  const atY = (value: number) => height - bottom - ((value - y.from) / (y.to - y.from)) * (height - top - bottom);
  const inside = (value: number, axis: Axis) => Math.min(axis.to, Math.max(axis.from, value));

  const grid: Element[] = [];
  for (const value of ticks(x)) {
    grid.push(line(atX(value), top, atX(value), height - bottom, "g"));
    grid.push(text(atX(value), height - bottom + 16, plain(value), "s", "middle"));
  }
  for (const value of ticks(y)) {
    grid.push(line(left, atY(value), width - right, atY(value), "g"));
    grid.push(text(left - 6, atY(value) + 4, plain(value), "s", "end"));
  }
  const frame = el("path", {
    class: "l",
    fill: "none",
    d: `M${px(left)} ${px(top)}V${px(height - bottom)}H${px(width - right)}`,
  });
  const levels = (spec.levels ?? []).flatMap((level) =>
    level.at < y.from || level.at > y.to
      ? []
      : [
          line(left, atY(level.at), width - right, atY(level.at), "c"),
          text(width - right, atY(level.at) - 4, level.label, "s", "end"),
        ],
  );
  const curves = spec.curves.map((curve) =>
    el("polyline", {
      class: curve.dashed ? "curve curve--other" : "curve",
      points: within(curve.points, y)
        .map(([a, b]) => `${px(atX(a))},${px(atY(b))}`)
        .join(" "),
    }),
  );
  const mark: Element[] = [];
  if (spec.mark) {
    const mx = atX(inside(spec.mark.x, x));
    const my = atY(inside(spec.mark.y, y));
    const far = mx > (left + width) / 2;
    mark.push(
      el("circle", { class: "m", fill: "none", cx: px(mx), cy: px(my), r: "5" }),
      text(mx + (far ? -9 : 9), Math.max(my - 7, top + 10), spec.mark.label, "mt", far ? "end" : "start"),
    );
  }
  const tree = el(
    "svg",
    { class: "drawing plot", viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": spec.title },
    ...grid,
    frame,
    ...levels,
    ...curves,
    ...mark,
    text((left + width - right) / 2, height - 8, x.label, "s", "middle"),
    text(left - 50, top - 4, y.label, "s", "start"),
  );
  return { id: spec.id, title: spec.title, tree, table: tableOf(spec) };
}

/** A curve as far as it lies between the ends of the axis, cut where it goes over one. */
function within(points: readonly [number, number][], y: Axis): [number, number][] {
  const fits = (v: number) => v >= y.from && v <= y.to;
  return points.flatMap(([a, b], n): [number, number][] => {
    const own: [number, number][] = fits(b) ? [[a, b]] : [];
    const next = points[n + 1];
    if (next === undefined || fits(b) === fits(next[1])) return own;
    const edge = Math.max(b, next[1]) > y.to ? y.to : y.from;
    return [...own, [a + ((next[0] - a) * (edge - b)) / (next[1] - b), edge]];
  });
}

function tableOf(spec: PlotSpec): FigureTable {
  const first = spec.curves[0]?.points ?? [];
  const rows = first.flatMap(([at], n) => {
    if (n % spec.every !== 0) return [];
    return [
      [fixed(at, spec.digits[0]), ...spec.curves.map((c) => fixed(c.points[n]?.[1] ?? Number.NaN, spec.digits[1]))],
    ];
  });
  return { head: spec.head, rows };
}

/** At most six round steps, of 1, 2 or 5 times a power of ten. */
export function ticks(axis: Axis): number[] {
  const span = axis.to - axis.from;
  if (!(span > 0)) return [axis.from];
  const rough = span / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((n) => n * power >= rough * 0.999) ?? 10) * power;
  const list: number[] = [];
  for (let n = Math.ceil(axis.from / step - 1e-9); n * step <= axis.to + step * 1e-9; n++) list.push(n * step);
  return list;
}

/** A number for an axis: no more digits than it needs. */
function plain(value: number): string {
  const text = String(Number(value.toPrecision(6)));
  return local(text.replace(/^-/, "−"));
}

function fixed(value: number, digits: number): string {
  return Number.isFinite(value) ? local(value.toFixed(digits).replace(/^-/, "−")) : "–";
}

export function line(x1: number, y1: number, x2: number, y2: number, kind: string): Element {
  return el("line", { class: kind, x1: px(x1), y1: px(y1), x2: px(x2), y2: px(y2) });
}

export function text(x: number, y: number, words: string, kind: string, anchor: "start" | "middle" | "end"): Element {
  return el("text", { class: kind, x: px(x), y: px(y), "text-anchor": anchor }, words);
}
