// How dense joints that are in no row lie where these readings are: the chart's own sizes,
// blurred. Makers have few caps and many widths, so that part of those joints have a cap
// of the chart, and only their across is blurred.
import type { Faces, Hold, Quantity } from "./types";
import { sameFaces, sameHold, type MeasuredEnd } from "./agree";
import { boxRound, firstAbove } from "./candidates";
import { logDensity } from "./density";
import type { Measured } from "./estimate";
import * as given from "./given";
import { isPlain, type Figure, type KnownEnd, type Part, type Prepared } from "./prepared";

// The ends of plain rows that have a figure of one quantity, smallest first, as flat
// numbers: all of them count for each question. A conversion joint's ends are rows of
// their own.
interface Blur {
  hold: Hold;
  faces: Faces;
  mm: Float64Array; // of the quantity they are sorted by
  cap: (Figure | null)[];
  across: Float64Array; // NaN: none
}

/** One for each hold with each faces, by the quantity they are sorted by. */
export type Blurs = Readonly<Record<Quantity, readonly Blur[]>>;

// They are kept with the part and not here: the late script has this file once more.
function blursOf(part: Part): Blurs {
  part.blurs ??= blur(part);
  return part.blurs;
}

function blur(part: Part): Blurs {
  const kinds = new Map<string, KnownEnd[]>();
  for (const row of part.rows()) {
    const [end] = row.ends;
    if (end === undefined || !isPlain(row)) continue;
    const kind = `${end.hold} ${end.faces}`;
    const before = kinds.get(kind);
    if (before === undefined) kinds.set(kind, [end]);
    else before.push(end);
  }
  const by = (quantity: Quantity): Blur[] => [...kinds.values()].map((ends) => sorted(ends, quantity));
  return { cap: by("cap"), across: by("across") };
}

// Ends of one kind by a quantity; a cap that has the same figure twice by how sure it is.
function sorted(kind: readonly KnownEnd[], quantity: Quantity): Blur {
  const at = (end: KnownEnd): number => end[quantity]?.mm ?? Infinity;
  const wide = (end: KnownEnd): number => end.cap?.standard ?? 0;
  const ends = kind.filter((e) => e[quantity] !== null).sort((a, b) => at(a) - at(b) || wide(a) - wide(b));
  const { hold, faces } = kind[0] ?? { hold: "unknown", faces: "unknown" };
  const made = {
    hold,
    faces,
    mm: new Float64Array(ends.length),
    cap: ends.map((e) => e.cap),
    across: new Float64Array(ends.length),
  };
  ends.forEach((end, i) => {
    made.mm[i] = at(end);
    made.across[i] = end.across?.mm ?? NaN;
  });
  return made;
}

// What lies so many blurs away counts for nothing: 1e-14 of the middle.
const reaches = 8;
const leftOut = Math.exp((-reaches * reaches) / 2);

// Beyond so many standard uncertainties a cap is not the row's; the blur is far above it there.
const farCap = 20;

/** Density of the readings of one end, were they of a joint in no row; per mm for each quantity that was measured. */
export function unlisted(asked: MeasuredEnd, chart: Prepared): number {
  const by: Quantity = asked.cap === undefined ? "across" : "cap";
  if (chart.plain === 0) return 0;
  const reach = (m: Measured, q: Quantity): number =>
    q === "cap"
      ? Math.max(reaches * given.spreadCap, farCap * (m.standard + chart.widest.cap.standard))
      : reaches * given.spreadAcross;
  const box = boxRound(asked, reach);
  const range = box[by];
  if (range === undefined) return 0;
  let density = 0;
  for (const part of chart.parts(box)) {
    for (const blur of blursOf(part)[by]) {
      // They are held as the chart's are, and what the chart leaves open weighs as little here as in its rows.
      if (!sameHold(asked.hold, blur.hold) || (asked.across !== undefined && !sameFaces(asked.faces, blur.faces)))
        continue;
      density += open(blur) * sum(asked, blur, range);
    }
  }
  // What was left out comes to no more than this. Far from every row it is all there is: then it counts as if it were so
  // much, in favour of "not in the chart".
  const most = (chart.plain * leftOut) / (given.spreadCap * given.spreadAcross);
  return Math.max(density, most) / chart.plain;
}

function open(blur: Blur): number {
  return (blur.hold === "unknown" ? given.priorOpen : 1) * (blur.faces === "unknown" ? given.priorOpen : 1);
}

// An unlisted joint may be like any end from least to greatest: like its cap or near it, and near its across.
function sum(asked: MeasuredEnd, blur: Blur, [least, greatest]: readonly [number, number]): number {
  const { cap } = asked;
  const across = asked.across?.mm;
  let density = 0;
  let before: Figure | null = null;
  let ofCap = 1;
  for (let i = firstAbove(blur.mm, least); i < blur.mm.length && (blur.mm[i] ?? Infinity) <= greatest; i++) {
    const off = across === undefined ? 0 : across - (blur.across[i] ?? NaN);
    if (!(Math.abs(off) <= reaches * given.spreadAcross)) continue; // also of an end without a figure
    if (cap !== undefined) {
      const figure = blur.cap[i] ?? null;
      if (figure === null) continue;
      // Many joints share a cap: what was worked out for it holds for the next.
      if (before === null || figure.mm !== before.mm || figure.standard !== before.standard) {
        before = figure;
        ofCap = likeCap(cap, figure);
      }
    }
    density += across === undefined ? ofCap : ofCap * normal(off, given.spreadAcross);
  }
  return density;
}

function likeCap(cap: Measured, figure: Figure): number {
  const off = cap.mm - figure.mm;
  const own = Math.abs(off) > farCap * (cap.standard + figure.standard) ? 0 : Math.exp(logDensity(cap, figure));
  return given.sharedCap * own + (1 - given.sharedCap) * normal(off, given.spreadCap);
}

const root = Math.sqrt(2 * Math.PI);

function normal(off: number, width: number): number {
  const z = off / width;
  return Math.exp(-0.5 * z * z) / (width * root);
}
