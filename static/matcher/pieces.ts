// A chart in pieces. Its rows come into the core as they are needed: whoever asks is told which pieces the question
// touches that are not here, fetches them, and asks again. What is here is looked into exactly as a chart held whole,
// and there is an answer only when nothing is missing that was looked for: so it is the answer of the whole chart.
import type * as core from "./index";
import type { Answer, Faces, Hold } from "./types";
import type { Alike, Cell, Kind } from "./absent";
import type { Look } from "./candidates";
import { Files } from "./pieces-entries";
import { columnOf, summed, valueAt, waysOf, type Way } from "./pieces-figures";
import type { Directory, DirectoryKind, Entries, Piece, Roll, Standing } from "./pieces-types";
import { Row, type Met } from "./pieces-row";
import { Unpacked } from "./pieces-rows";
import type { AnyChart, KnownRow, Part, Prepared } from "./prepared";
import { logOpen, type Together } from "./prior";
import { refsOf } from "./refs";
import { addressOf } from "./size-key";
import { otherChart } from "./speech-query";

declare const CapspanCore: typeof core; // left by matcher.js

/** A chart of which some pieces are here. */
export interface Pieced {
  directory: Directory;
  files: Files;
  ways: readonly Way[];
  chart: Prepared & { missing: Set<number> };
  here: Map<number, Unpacked>;
  met: Met;
}

// When more rows than that have been made, those of earlier questions are forgotten.
const mostMade = 8000;

/** A file that is not the directory. */
type File = Piece | Roll | Entries;

/** open reads a directory; it throws for one of another format. Where all files are at hand, `take` gives one by its
 *  number: then none is ever missing, and a question is gone through once. */
export function open(directory: Directory, take?: (n: number) => File): Pieced {
  if (directory.format !== 3) throw new Error(otherChart());
  const here = new Map<number, Unpacked>();
  const missing = new Set<number>();
  const files = new Files(directory);
  const ways = waysOf(directory.written);
  const chart = {
    version: directory.version,
    together: togetherOf(directory),
    plain: directory.plain,
    kinds: directory.kinds.map((kind) => kindOf(ways, kind)),
    faces: new Map(directory.faces.map(([hold, ...faces]): [Hold, Set<Faces>] => [hold, new Set(faces)])),
    missing,
    get partial() {
      return [...missing].some((n) => files.rollOf(n) < 0);
    },
    parts: (look: Look): Part[] => {
      let found = files.touched(look);
      const parts = take === undefined ? [] : found.filter((n) => files.partOf(n) >= 0);
      parts.forEach(lack);
      if (parts.length > 0) found = files.touched(look);
      return found.flatMap((n) => {
        if (!here.has(n)) lack(n);
        return here.get(n)?.parts ?? [];
      });
    },
    twins: (row: KnownRow) => (row instanceof Row ? row.home.twins(row) : [row]),
  };
  CapspanCore.hold(directory, chart);
  function lack(n: number): void {
    if (take === undefined) missing.add(n);
    else add(pieced, n, take(n));
  }
  const met: Met = {
    rows: 0,
    joints: new Map(),
    named: new Map(),
    tables: { ends: summed(directory.inTables), called: directory.tables },
    // While rows are missing nobody knows which are named.
    lacks: (piece) => {
      if (!chart.partial) lack(files.roll(piece));
    },
  };
  const pieced: Pieced = { directory, files, ways, chart, here, met };
  opened.set(directory, pieced);
  return pieced;
}

const opened = new WeakMap<AnyChart, Pieced>();

/** placesOf are the addresses of the rows that the last answer out of an opened chart names. */
export function placesOf(directory: AnyChart, answer: Answer): Record<string, string> {
  const of = opened.get(directory);
  return of === undefined ? {} : addresses(of, answer);
}

/** nameOf is what the file is called that has a number; undefined while nothing that is here says so. */
export function nameOf({ files, here }: Pieced, n: number): string | undefined {
  return files.nameOf(n) ?? here.get(files.rollOf(n))?.roll;
}

/** add takes in a file by its number, which is a piece's place in the directory. */
export function add({ files, ways, here, met }: Pieced, n: number, file: File): void {
  const piece = here.get(files.rollOf(n));
  if (piece !== undefined) piece.take(file as Roll);
  else if (files.partOf(n) >= 0) files.take(files.partOf(n), file as Entries);
  else if (files.nameOf(n) === undefined) throw new Error(otherChart());
  else if (!here.has(n)) here.set(n, new Unpacked(ways, file as Piece, n, met));
}

/** ask is identify, with the address of each row that is named, or the files that must be added first. */
export function ask(of: Pieced, query: unknown): Answer | number[] {
  const { missing } = of.chart;
  missing.clear();
  if (of.met.rows > mostMade) forget(of);
  try {
    const answer = CapspanCore.identify(of.directory, query);
    return { ...answer, at: addresses(of, answer) };
  } catch (error) {
    if (missing.size === 0) throw error;
    return [...missing].sort((a, b) => a - b);
  }
}

function forget({ met, here }: Pieced): void {
  met.rows = 0;
  met.joints.clear();
  met.named.clear();
  for (const piece of here.values()) piece.forget();
}

function addresses({ met }: Pieced, answer: Answer): Record<string, string> {
  const at: Record<string, string> = {};
  for (const ref of refsOf(answer)) {
    const row = met.named.get(ref);
    if (row !== undefined) at[ref] = addressOf(row);
  }
  return at;
}

function kindOf(ways: readonly Way[], { hold, faces, cells, caps, alike }: DirectoryKind): Kind {
  const [cap, across] = [summed(cells[0]), summed(cells[1])];
  const column = columnOf(caps);
  return {
    hold,
    faces,
    cells: cells[2].map((ends, i): Cell => [cap[i] ?? 0, across[i] ?? 0, ends]),
    caps: alike.flatMap((ends, i): Alike[] => {
      const figure = valueAt(column, i, "cap", ways);
      return figure === undefined ? [] : [[figure, ends]];
    }),
  };
}

function togetherOf({ sizes, conversions }: Directory): Together {
  const heaviest = (rows: readonly Standing[], ends: number): number =>
    Math.exp(Math.max(...rows.map(([basis, open]) => logOpen(basis, open * ends))));
  let [one, two] = [0, 0];
  for (const [count, ...rows] of sizes) {
    one += count * heaviest(rows, 1);
    two += count * heaviest(rows, 2);
  }
  for (const [count, row] of conversions) two += count * heaviest([row], 1);
  return [one, two];
}
