// A chart in pieces as a page holds it: which pieces a question lacks, what they weigh, and how they come. Every part
// of a page that asks the core of a large chart goes through this file.
//
//   const found = tried(held, () => held.identify(query));
//   if (!found.whole) await held.fetch(found.missing), and try again
import type { Directory, Piece } from "../../matcher/pieces-types";
import type { AnyChart, Prepared } from "../../matcher/prepared";
import type { Answer, Query } from "../../matcher/types";
import { fetchFile } from "./fetch";
import { isKept, lookInto, type File } from "./kept";

/** A directory with what all pieces weigh as a host sends them, bytes, about. */
export interface PiecedChart extends Directory {
  packed: number;
}

export interface Held {
  chart: PiecedChart; // what the core is asked with
  known: Prepared; // what it finds there
  missing: Set<number>; // what the question under way has touched and is not here
  identify(query: Query): Answer; // the core's answer, with the addresses of the rows it names; it throws for missing pieces
  places: readonly number[]; // all pieces
  file(n: number): File;
  bytes(pieces: readonly number[]): number; // what it takes to fetch them, about, as a host sends them
  /** Fetches pieces at once and takes them in; it rejects with what whyLost knows. `anew` gives up requests that hang. */
  fetch(pieces: readonly number[], anew?: boolean): Promise<void>;
}

const all = new WeakMap<AnyChart, Held>();

/** heldOf is the chart that was opened here. */
export function heldOf(chart: AnyChart): Held {
  const held = all.get(chart);
  if (held === undefined) throw new Error("not a chart in pieces");
  return held;
}

/** openPieces reads the directory at an address that ends with its name; it rejects with what whyLost knows. */
export async function openPieces(address: string): Promise<PiecedChart> {
  const directory = new URL(address, location.href);
  const name = /([\w-]+)\.json$/.exec(directory.pathname)?.[1] ?? "";
  const text = await fetchFile(directory.href, name);
  const pieces = new URL("chart/", directory).href;
  await lookInto(pieces);
  return take(JSON.parse(text) as PiecedChart, pieces);
}

/** take holds a directory whose pieces lie in a folder; one that is held stays as it is. */
export function take(chart: PiecedChart, folder: string): PiecedChart {
  if (all.has(chart)) return chart;
  const pieced = CapspanPieces.open(chart);
  const coming = new Map<number, { done: Promise<void>; stop: AbortController }>();
  const entries = entriesOf(chart);

  function file(n: number): File {
    const name = entries[n]?.name ?? "";
    return { name, address: `${folder}${name}.json` };
  }

  function start(n: number): Promise<void> {
    const before = coming.get(n);
    if (before) return before.done;
    const stop = new AbortController();
    const { address, name } = file(n);
    const done = fetchFile(address, name, stop.signal)
      .then((text) => CapspanPieces.add(pieced, n, JSON.parse(text) as Piece))
      .finally(() => {
        if (coming.get(n)?.stop === stop) coming.delete(n);
      });
    coming.set(n, { done, stop });
    return done;
  }

  const held: Held = {
    chart,
    known: pieced.chart,
    missing: pieced.chart.missing,
    identify(query) {
      const answer = CapspanPieces.ask(pieced, query);
      if (Array.isArray(answer)) throw new Error("pieces are missing"); // tried finds them noted
      return answer;
    },
    file,
    places: entries.map((_, n) => n),
    bytes: (pieces) => {
      const far = pieces.filter((n) => !isKept(file(n).address));
      return Math.round(far.reduce((sum, n) => sum + (entries[n]?.packed ?? 0), 0));
    },
    async fetch(pieces, anew = false) {
      if (anew) {
        for (const n of pieces) {
          coming.get(n)?.stop.abort();
          coming.delete(n);
        }
      }
      await Promise.all(pieces.map(start));
    },
  };
  all.set(chart, held);
  return chart;
}

// What each piece is called, and about how much it weighs as a host sends it.
function entriesOf(chart: PiecedChart): { name: string; packed: number }[] {
  const entries = CapspanPieces.entries(chart);
  const all = entries.reduce((sum, { bytes }) => sum + bytes, 0);
  return entries.map(({ name, bytes }) => ({ name, packed: (chart.packed * bytes) / all }));
}

/** tried is what a run that asks the core comes to, or the pieces it lacks. A run may ask several times. */
export function tried<T>(
  { missing }: Held,
  run: () => T,
): { whole: true; came: T } | { whole: false; missing: number[] } {
  missing.clear();
  try {
    const came = run();
    if (missing.size === 0) return { whole: true, came };
  } catch (error) {
    if (missing.size === 0) throw error;
  }
  return { whole: false, missing: [...missing].sort((a, b) => a - b) };
}
