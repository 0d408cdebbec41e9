// One picture: cap upwards, across to the right, the readings in the middle, every length to the scale of its axis.
// Where only one of the two was measured, there is one axis.
import { local } from "../../matcher/speech-number";
import type { Quantity, Unit } from "../../matcher/types";
import { mmPerInch } from "../identify/lengths";
import { quantityWords } from "words:terms";
import { placeName, type Box } from "./labels";
import { inView, ticks, type Place, type Spot, type View } from "./places";
import { words } from "words:neighbourhood";

const wide = 300;
const plot: Box = { left: 44, top: 22, right: 292, bottom: 236 };
const foot = 40; // below the plot: figures and the name of the axis
const flat = 110; // height of the plot of one axis

/** What a mark tells when it is touched or reached by keyboard. */
export interface Told {
  place: Place | null; // null: the readings themselves
  says: string;
}

export interface PictureOptions {
  spot: Spot;
  view: View;
  lead: Unit;
  label: string;
  says: (place: Place | null) => string;
  told: (says: string) => void;
}

export function picture(options: PictureOptions): SVGElement {
  const { spot, view, lead } = options;
  const along: Quantity = spot.quantities.includes("across") ? "across" : "cap";
  const up: Quantity | null = spot.quantities.length > 1 ? "cap" : null;
  const bounds = up ? plot : { ...plot, left: 12, bottom: plot.top + flat };
  const middle = { x: (bounds.left + bounds.right) / 2, y: (bounds.top + bounds.bottom) / 2 };
  const perX = (bounds.right - bounds.left) / 2 / (view[along] ?? 1);
  const perY = up ? (bounds.bottom - bounds.top) / 2 / (view[up] ?? 1) : 0;
  const at = (place: Place) => ({
    x: middle.x - (place.at[along]?.difference ?? 0) * perX,
    y: middle.y + (up ? (place.at[up]?.difference ?? 0) * perY : 0),
  });
  const shown = spot.places.filter((p) => inView(p, view));
  const taken: Box[] = [{ x: middle.x, y: middle.y }, ...shown.map(at)].map(({ x, y }) => around(x, y, 8, 8));

  function named(name: string, x: number, y: number): SVGElement {
    const box = placeName(name, x, y, bounds, taken);
    taken.push(box);
    return svg("text", { x: fix(box.left + 1), y: fix(box.bottom - 3) }, name);
  }

  function mark(kind: string, x: number, y: number, says: string, ...children: SVGElement[]): SVGElement {
    const g = svg("g", { class: `hood__mark hood__mark--${kind}`, role: "img", tabindex: "0", "aria-label": says });
    g.append(svg("circle", { class: "hood__touch", cx: fix(x), cy: fix(y), r: "22" }), ...children);
    for (const event of ["focus", "click"]) g.addEventListener(event, () => options.told(says));
    return g;
  }

  const own = (q: Quantity | null, per: number): number => (q ? (spot.read[q]?.uncertainty ?? 0) * per : 6);
  const you = mark(
    "you",
    middle.x,
    middle.y,
    options.says(null),
    rect("hood__own", middle.x, middle.y, own(along, perX), own(up, perY)),
    path(`M${fix(middle.x - 9)} ${fix(middle.y)}h18M${fix(middle.x)} ${fix(middle.y - 9)}v18`),
    named(words.youShort, middle.x, middle.y),
  );
  const marks = shown.map((place) => {
    const { x, y } = at(place);
    const reach = (q: Quantity | null, per: number): number => (q ? (place.at[q]?.uncertainty ?? 0) * per : 10);
    return mark(
      place.kind,
      x,
      y,
      options.says(place),
      rect("hood__reach", x, y, reach(along, perX), reach(up, perY)),
      shape(place, x, y),
      named(short(place.names[0] ?? ""), x, y),
    );
  });

  const height = bounds.bottom + foot;
  const root = svg("svg", {
    class: "hood__picture",
    viewBox: `0 0 ${wide} ${height}`,
    width: String(wide),
    height: String(height),
    role: "group",
    "aria-label": options.label,
  });
  const clip = svg("svg", {
    x: fix(bounds.left),
    y: fix(bounds.top),
    width: fix(bounds.right - bounds.left),
    height: fix(bounds.bottom - bounds.top),
    viewBox: [bounds.left, bounds.top, bounds.right - bounds.left, bounds.bottom - bounds.top].map(fix).join(" "),
  });
  clip.append(...marks, you);
  root.append(svg("path", { class: "hood__frame", d: outline(bounds) }));
  root.append(...axis(along, true), ...(up ? axis(up, false) : []), clip);
  return root;

  // The figures of an axis in the leading unit; the other unit is told in words with each mark.
  function axis(quantity: Quantity, level: boolean): SVGElement[] {
    const one = lead === "in" ? mmPerInch : 1;
    const value = spot.read[quantity]?.value ?? 0;
    const half = view[quantity] ?? 1;
    const { values, digits } = ticks((value - half) / one, (value + half) / one);
    const out: SVGElement[] = [];
    for (const v of values) {
      const off = v * one - value;
      const [x, y] = level ? [middle.x + off * perX, bounds.bottom] : [bounds.left, middle.y - off * perY];
      out.push(path(level ? `M${fix(x)} ${fix(y)}v4` : `M${fix(x)} ${fix(y)}h-4`, "hood__tick"));
      const text = level
        ? { x: fix(x), y: fix(y + 16), "text-anchor": "middle" }
        : { x: fix(x - 6), y: fix(y + 4), "text-anchor": "end" };
      out.push(svg("text", { class: "hood__figure", ...text, "aria-hidden": "true" }, local(v.toFixed(digits))));
    }
    const name = level
      ? { x: fix(bounds.right), y: fix(bounds.bottom + 33), "text-anchor": "end" }
      : { x: "2", y: fix(bounds.top - 8) };
    out.push(
      svg("text", { class: "hood__axis", ...name, "aria-hidden": "true" }, `${quantityWords[quantity]}, ${lead}`),
    );
    return out;
  }
}

function shape(place: Place, x: number, y: number): SVGElement {
  if (place.kind === "left") return rect("hood__shape", x, y, 5, 5);
  if (place.kind === "same") return path(`M${fix(x)} ${fix(y - 9)}l8 15h-16z`, "hood__shape");
  return svg("circle", { class: "hood__shape", cx: fix(x), cy: fix(y), r: "5" });
}

function short(name: string): string {
  return name.length > 16 ? `${name.slice(0, 15)}…` : name;
}

function around(x: number, y: number, wide: number, high: number): Box {
  return { left: x - wide, top: y - high, right: x + wide, bottom: y + high };
}

function outline(b: Box): string {
  return `M${b.left} ${b.top}H${b.right}V${b.bottom}H${b.left}Z`;
}

function rect(kind: string, x: number, y: number, wide: number, high: number): SVGElement {
  const size = { width: fix(2 * wide), height: fix(2 * high) };
  return svg("rect", { class: kind, x: fix(x - wide), y: fix(y - high), ...size });
}

function path(d: string, kind = "hood__cross"): SVGElement {
  return svg("path", { class: kind, d });
}

function svg(tag: string, attributes: Record<string, string>, text = ""): SVGElement {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.textContent = text;
  return element;
}

function fix(n: number): string {
  return String(Math.round(n * 100) / 100);
}
