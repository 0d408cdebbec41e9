// Where things lie in the picture: the readings in the middle, and round them every row the answer compares with.
import type { Answer, Comparison, Estimate, Quantity, Size } from "../../matcher/types";
import { quantities } from "../identify/state";

export type Kind = "left" | "same" | "part" | "near";

/** A size of the chart beside the readings of one end. */
export interface Place {
  kind: Kind;
  names: string[];
  at: Partial<Record<Quantity, Comparison>>;
}

/** One end's readings and what lies round them. */
export interface Spot {
  end: number;
  read: Partial<Record<Quantity, Estimate>>;
  quantities: Quantity[]; // those the picture has an axis for
  places: Place[]; // only such as can be compared in all of them
}

/** Half the height and half the width of a picture whose middle is the reading, mm. */
export type View = Partial<Record<Quantity, number>>;

/** One spot for each end that has something to be set beside. */
export function spotsOf(answer: Answer): Spot[] {
  const ends = [...new Set(answer.readings.map((r) => r.end))];
  return ends.flatMap((end) => {
    const read: Spot["read"] = {};
    for (const r of answer.readings) if (r.end === end && r.quantity !== "clip") read[r.quantity] = r;
    const has = quantities.filter((q) => read[q]);
    const place =
      (kind: Kind) =>
      (size: Size): Place[] => {
        const at = size.ends[end] ?? {};
        if (!has.every((q) => at[q])) return [];
        // Of a row that does not match as a whole, one end may.
        const part = kind === "near" && size.ends.length > 1 && has.every((q) => agrees(at[q]));
        return [{ kind: part ? "part" : kind, names: size.names, at }];
      };
    const places = [
      ...answer.sizes.flatMap(place("left")),
      ...answer.sameFigures.flatMap(place("same")),
      ...answer.near.flatMap(place("near")),
    ];
    return places.length > 0 ? [{ end, read, quantities: has, places }] : [];
  });
}

function agrees(c: Comparison | undefined): boolean {
  return c !== undefined && Math.abs(c.difference) <= c.uncertainty;
}

// A picture stretched more than this one way would make what is near look far.
const stretch = 6;

/** The pictures worth drawing: all that lies round, and, where that leaves the readings a dot, a close one. */
export function viewsOf(spot: Spot): View[] {
  const matching = spot.places.filter((p) => p.kind !== "near");
  const close = view(spot, matching.length > 0 ? matching : spot.places.slice(0, 1));
  const wide = view(spot, spot.places);
  const closer = spot.quantities.some((q) => (wide[q] ?? 0) > 3 * (close[q] ?? 0));
  return closer ? [close, wide] : [wide];
}

function view(spot: Spot, places: Place[]): View {
  const out: View = {};
  for (const q of spot.quantities) {
    const reaches = places.map((p) => Math.abs(p.at[q]?.difference ?? 0) + (p.at[q]?.uncertainty ?? 0));
    out[q] = 1.15 * Math.max(2 * (spot.read[q]?.uncertainty ?? 0), ...reaches);
  }
  const most = Math.max(...Object.values(out));
  for (const q of spot.quantities) out[q] = Math.max(out[q] ?? 0, most / stretch);
  return out;
}

/** Whether a place lies in the picture. */
export function inView(place: Place, view: View): boolean {
  return Object.entries(view).every(([q, half]) => Math.abs(place.at[q as Quantity]?.difference ?? 0) <= half);
}

/** Round figures between two lengths, about four of them, with the digits they need. */
export function ticks(from: number, to: number): { values: number[]; digits: number } {
  const rough = (to - from) / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((n) => n * power >= rough) ?? 10);
  const values: number[] = [];
  for (let n = Math.ceil(from / step); n * step <= to; n++) values.push(n * step);
  return { values, digits: Math.max(0, -Math.floor(Math.log10(step))) };
}
