// A chart in pieces as a page holds it: which pieces a question lacks, what they weigh, and how they come. Every part
// of a page that asks the core of a large chart goes through this file.
//
//   const found = tried(held, () => held.identify(query));
//   if (!found.whole) await held.fetch(found.missing), and try again
import type { Directory, Entries, Piece, Roll } from "../../matcher/pieces-types";
import type { AnyChart, Prepared } from "../../matcher/prepared";
import type { Answer, Query } from "../../matcher/types";
import { fetchFile } from "./fetch";
import { isKept, lookInto, type File } from "./kept";

/** A directory with what all other files weigh as a host sends them, bytes, about. */
export interface PiecedChart extends Directory {
  packed: number;
}

export interface Held {
  chart: PiecedChart; // what the core is asked with
  known: Prepared; // what it finds there
  missing: Set<number>; // what the question under way has touched and is not here: files, by number
  identify(query: Query): Answer; // the core's answer, with the addresses of the rows it names; it throws for missing files
  files: number; // how many there are, from 0 on
  /** The parts of the directory that are not here, and say what others are called. */
  parts(): number[];
  /** All files, once the parts are here; a roll is beside its piece. */
  all(): File[];
  bytes(files: readonly number[]): number; // what it takes to fetch them, about, as a host sends them
  /** Fetches files at once and takes them in; it rejects with what whyLost knows. `anew` gives up requests that hang. */
  fetch(files: readonly number[], anew?: boolean): Promise<void>;
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
  const { pieces, parts } = pieced.files;
  const coming = new Map<number, { done: Promise<void>; stop: AbortController }>();
  const numbered = (from: number, many: number): number[] => Array.from({ length: many }, (_, n) => from + n);

  const fileOf = (name: string): File => ({ name, address: `${folder}${name}.json` });

  function file(n: number): File | undefined {
    const name = CapspanPieces.nameOf(pieced, n);
    return name === undefined ? undefined : fileOf(name);
  }

  function start(n: number): Promise<void> {
    const before = coming.get(n);
    if (before) return before.done;
    const { address, name } = file(n) ?? fileOf("");
    const stop = new AbortController();
    const done = fetchFile(address, name, stop.signal)
      .then((text) => CapspanPieces.add(pieced, n, JSON.parse(text) as Piece | Roll | Entries))
      .finally(() => {
        if (coming.get(n)?.stop === stop) coming.delete(n);
      });
    coming.set(n, { done, stop });
    return done;
  }

  // A piece is kept with its roll.
  function isHere(n: number): boolean {
    const kept = file(n < pieces ? n : n < 2 * pieces ? n - pieces : n);
    return kept !== undefined && isKept(kept.address);
  }

  // About, as a host sends it: files of a kind weigh much the same.
  const long = chart.bytes.reduce((sum, of) => sum + of, 0);
  const weights = [pieces, pieces, parts].map(
    (many, kind) => ((chart.bytes[kind] ?? 0) * chart.packed) / (many * long),
  );

  const held: Held = {
    chart,
    known: pieced.chart,
    missing: pieced.chart.missing,
    identify(query) {
      const answer = CapspanPieces.ask(pieced, query);
      if (Array.isArray(answer)) throw new Error("pieces are missing"); // tried finds them noted
      return answer;
    },
    files: 2 * pieces + parts,
    parts: () => numbered(2 * pieces, parts).filter((n) => !pieced.files.hasPart(n - 2 * pieces)),
    all() {
      const beside = (bytes: Uint8Array): File => fileOf((JSON.parse(new TextDecoder().decode(bytes)) as Piece)[0]);
      const known = (n: number): File[] => [file(n)].flatMap((f) => f ?? []);
      return [
        ...numbered(2 * pieces, parts).flatMap(known),
        ...numbered(0, pieces).flatMap((n) => known(n).map((f): File => ({ ...f, beside }))),
      ];
    },
    bytes: (files) =>
      Math.round(files.reduce((sum, n) => sum + (isHere(n) ? 0 : (weights[Math.floor(n / pieces)] ?? 0)), 0)),
    async fetch(files, anew = false) {
      if (anew) {
        for (const n of files) {
          coming.get(n)?.stop.abort();
          coming.delete(n);
        }
      }
      await Promise.all(files.map(start));
    },
  };
  all.set(chart, held);
  return chart;
}

/** tried is what a run that asks the core comes to, or the files it lacks. A run may ask several times. */
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
