// How dense joints that are in no row lie where these readings are: the chart's own sizes,
// blurred. Makers have few caps and many widths, so that part of those joints have a cap
// of the chart, and only their across is blurred.
import type { Faces, Hold, Quantity } from "./types";
import { sameFaces, sameHold, type MeasuredEnd } from "./agree";
import { firstAbove, widestFigure } from "./candidates";
import { logDensity } from "./density";
import type { Measured } from "./estimate";
import * as given from "./given";
import type { Figure, KnownEnd, Prepared } from "./prepared";

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

export interface Blurs {
  plain: number; // how many plain rows there are
  cap: Blur[]; // one for each hold with each faces
  across: Blur[];
}

// They are kept with the chart and not here: the late script has this file once more.
function blursOf(chart: Prepared): Blurs {
  chart.blurs ??= blur(chart);
  return chart.blurs;
}

function blur(chart: Prepared): Blurs {
  const kinds = new Map<string, KnownEnd[]>();
  let plain = 0;
  for (const { ends } of chart.rows) {
    const [end, other] = ends;
    if (end === undefined || other !== undefined) continue;
    plain++;
    const kind = `${end.hold} ${end.faces}`;
    const before = kinds.get(kind);
    if (before === undefined) kinds.set(kind, [end]);
    else before.push(end);
  }
  const by = (quantity: Quantity): Blur[] => [...kinds.values()].map((ends) => sorted(ends, quantity));
  return { plain, cap: by("cap"), across: by("across") };
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
  const all = blursOf(chart);
  const by: Quantity = asked.cap === undefined ? "across" : "cap";
  const measured = asked[by];
  if (measured === undefined || all.plain === 0) return 0;
  const reach =
    by === "cap"
      ? Math.max(reaches * given.spreadCap, farCap * (measured.standard + widestFigure(chart, "cap").standard))
      : reaches * given.spreadAcross;
  // They are held as the chart's are, and what the chart leaves open weighs as little here as in its rows.
  const fit = all[by].filter(
    (b) => sameHold(asked.hold, b.hold) && (asked.across === undefined || sameFaces(asked.faces, b.faces)),
  );
  const round = (far: number, farAcross: number): number =>
    fit.reduce((d, b) => d + open(b) * sum(asked, b, measured.mm - far, measured.mm + far, farAcross), 0);
  const near = round(reach, reaches * given.spreadAcross);
  // Far from every row what is left out may be all there is.
  const most = (all.plain * leftOut) / (given.spreadCap * given.spreadAcross);
  return (near > most * 1e10 ? near : round(Infinity, Infinity)) / all.plain;
}

function open(blur: Blur): number {
  return (blur.hold === "unknown" ? given.priorOpen : 1) * (blur.faces === "unknown" ? given.priorOpen : 1);
}

// An unlisted joint may be like any end from least to greatest: like its cap or near it, and near its across.
function sum(asked: MeasuredEnd, blur: Blur, least: number, greatest: number, reach: number): number {
  const { cap } = asked;
  const across = asked.across?.mm;
  let density = 0;
  let before: Figure | null = null;
  let ofCap = 1;
  for (let i = firstAbove(blur.mm, least); i < blur.mm.length && (blur.mm[i] ?? Infinity) <= greatest; i++) {
    const off = across === undefined ? 0 : across - (blur.across[i] ?? NaN);
    if (!(Math.abs(off) <= reach)) continue; // also of an end without a figure
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
