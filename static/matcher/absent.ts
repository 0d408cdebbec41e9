// How dense joints that are in no row lie where these readings are. Makers have few caps and many widths: such a joint
// has a cap of the chart, or one that is spread round the chart's caps; and its across is spread as are those of joints
// with caps like that. What is spread by millimetres needs the chart only in cells, by how many ends lie in each.
import type { Faces, Hold, Quantity } from "./types";
import { sameFaces, sameHold, type MeasuredEnd } from "./agree";
import { logDensity } from "./density";
import type { Measured } from "./estimate";
import * as given from "./given";
import { isPlain, type Figure, type KnownRow, type Prepared } from "./prepared";

/** The ends of plain rows that are held alike and have the same faces. A conversion joint's ends are rows of their own. */
export interface Kind {
  hold: Hold;
  faces: Faces;
  cells: readonly Cell[];
  caps: readonly Alike[];
}

/** How many ends lie in a cell, by its number along cap and across; 0 stands for no figure. */
export type Cell = readonly [cap: number, across: number, ends: number];

/** How many ends have the same cap, as surely known. */
export type Alike = readonly [cap: Figure, ends: number];

// A cell is half as wide as what it is spread by, and the spread so much less that both together are what is given
// (Sheppard's correction).
const cell: Readonly<Record<Quantity, number>> = { cap: given.spreadCap / 2, across: given.spreadAcross / 2 };
const less = Math.sqrt(1 - 1 / 48);
const spread: Readonly<Record<Quantity, number>> = { cap: given.spreadCap * less, across: given.spreadAcross * less };

function cellOf(quantity: Quantity, figure: Figure | null): number {
  return figure === null ? 0 : Math.floor(figure.mm / cell[quantity]) + 1;
}

export function kindsOf(rows: readonly KnownRow[]): Kind[] {
  const kinds = new Map<string, { hold: Hold; faces: Faces; cells: Map<string, Cell>; caps: Map<string, Alike> }>();
  for (const row of rows) {
    const [end] = row.ends;
    if (end === undefined || !isPlain(row)) continue;
    const { hold, faces, cap, across } = end;
    const name = `${hold} ${faces}`;
    const kind = kinds.get(name) ?? { hold, faces, cells: new Map<string, Cell>(), caps: new Map<string, Alike>() };
    kinds.set(name, kind);
    const at = [cellOf("cap", cap), cellOf("across", across)] as const;
    kind.cells.set(`${at}`, [...at, (kind.cells.get(`${at}`)?.[2] ?? 0) + 1]);
    if (cap === null) continue;
    const as = `${cap.mm} ${cap.limit}`;
    kind.caps.set(as, [cap, (kind.caps.get(as)?.[1] ?? 0) + 1]);
  }
  return [...kinds.values()].map((k) => ({ ...k, cells: [...k.cells.values()], caps: [...k.caps.values()] }));
}

/** Density of the readings of one end, were they of a joint in no row; per mm for each quantity that was measured. */
export function unlisted(asked: MeasuredEnd, chart: Prepared): number {
  let density = 0;
  for (const kind of chart.kinds) {
    // They are held as the chart's are, and what the chart leaves open weighs as little here as in its rows.
    if (!sameHold(asked.hold, kind.hold) || (asked.across !== undefined && !sameFaces(asked.faces, kind.faces)))
      continue;
    const open = (kind.hold === "unknown" ? given.priorOpen : 1) * (kind.faces === "unknown" ? given.priorOpen : 1);
    density += open * ofKind(asked, kind);
  }
  // Far from every row it counts as if there were a trace of them, in favour of "not in the chart".
  return Math.max(density / Math.max(chart.plain, 1), trace / (given.spreadCap * given.spreadAcross));
}

const trace = 1e-14;

function ofKind(asked: MeasuredEnd, { cells, caps }: Kind): number {
  const inCap = spreadTo("cap", asked.cap);
  const inAcross = spreadTo("across", asked.across);
  let both = 0;
  let ofCap = 0;
  cells.forEach((at) => {
    const near = at[2] * inCap(at[0]);
    ofCap += near;
    both += near * inAcross(at[1]);
  });
  const { cap } = asked;
  if (cap === undefined || both === 0) return both;
  let shared = 0;
  caps.forEach((alike) => {
    const figure = alike[0];
    const far = farCap * (cap.standard + figure.standard);
    if (Math.abs(cap.mm - figure.mm) < far) shared += alike[1] * Math.exp(logDensity(cap, figure));
  });
  return both * (1 - given.sharedCap + (given.sharedCap * shared) / ofCap);
}

// Beyond so many standard uncertainties a cap is not the row's; the spread is far above it there.
const farCap = 20;

const root = Math.sqrt(2 * Math.PI);

// How dense those of a cell are where was measured: 0 where they have no figure, 1 where nothing was measured.
function spreadTo(quantity: Quantity, measured: Measured | undefined): (n: number) => number {
  if (measured === undefined) return () => 1;
  const known: number[] = [0];
  return (n) => {
    const z = (measured.mm - (n - 0.5) * cell[quantity]) / spread[quantity];
    const density = known[n] ?? Math.exp(-0.5 * z * z) / (spread[quantity] * root);
    known[n] = density;
    return density;
  };
}
