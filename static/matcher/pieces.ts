// A chart in pieces. Its rows come into the core as they are needed: whoever asks is told which pieces the question
// touches that are not here, fetches them, and asks again. What is here is looked into exactly as a chart held whole,
// and there is an answer only when nothing is missing that was looked for: so it is the answer of the whole chart.
import type * as core from "./index";
import type { Answer, Faces, Hold, Quantity } from "./types";
import type { Kind } from "./absent";
import type { Box } from "./candidates";
import type { Directory, DirectoryKind, Piece, Standing } from "./pieces-types";
import { readFigure, unpack, type Unpacked } from "./pieces-rows";
import { figure, widen, type KnownRow, type Part, type Prepared, type Widest } from "./prepared";
import { logOpen, type Together } from "./prior";
import { refsOf } from "./refs";
import { addressOf } from "./size-key";
import { otherChart } from "./speech-query";

declare const CapspanCore: typeof core; // left by matcher.js

/** A chart of which some pieces are here. */
export interface Pieced {
  directory: Directory;
  chart: Prepared & { missing: Set<number> };
  here: Map<number, Part>;
  homes: WeakMap<KnownRow, Unpacked>; // where the rows that questions came upon are
  made: Map<number, KnownRow>; // those rows, by their place in the chart
  named: Map<string, KnownRow>; // and by their refs
}

/** open reads a directory; it throws for one of another format. */
export function open(directory: Directory): Pieced {
  if (directory.format !== 2) throw new Error(otherChart());
  const here = new Map<number, Part>();
  const homes = new WeakMap<KnownRow, Unpacked>();
  const missing = new Set<number>();
  const chart = {
    version: directory.version,
    together: togetherOf(directory),
    plain: directory.plain,
    kinds: directory.kinds.map((kind) => kindOf(directory, kind)),
    faces: new Map(Object.entries(directory.faces).map(([hold, faces]) => [hold as Hold, new Set<Faces>(faces)])),
    widest: { cap: widestOf(directory, "cap"), across: widestOf(directory, "across") },
    missing,
    parts: (box: Box): Part[] =>
      touched(directory, box).flatMap((n) => {
        const part = here.get(n);
        if (part === undefined) missing.add(n);
        return part ?? [];
      }),
    twins: (row: KnownRow) => homes.get(row)?.twins(row) ?? [row],
  };
  CapspanCore.hold(directory, chart);
  return { directory, chart, here, homes, made: new Map(), named: new Map() };
}

/** touched are the pieces that may have ends in the box. */
export function touched(directory: Directory, box: Box): number[] {
  return directory.pieces.flatMap(([capLeast, capGreatest, least, greatest], n) =>
    meets(box.cap, capLeast, capGreatest) && meets(box.across, least, greatest) ? n : [],
  );
}

function meets(range: readonly [number, number] | undefined, least: number | null, greatest: number | null): boolean {
  const [from, to] = range ?? [-Infinity, Infinity];
  return (least ?? -Infinity) <= to * 1000 && (greatest ?? Infinity) >= from * 1000;
}

/** add takes a piece in, by its place in the directory. */
export function add(to: Pieced, n: number, piece: Piece): void {
  if (to.here.has(n)) return;
  const rows: Unpacked = unpack(to.directory, piece, (index, make) => {
    const before = to.made.get(index);
    if (before !== undefined) return before; // a conversion joint is in the pieces of both its ends
    const row = make();
    to.made.set(index, row);
    to.named.set(row.row.ref, row);
    to.homes.set(row, rows);
    return row;
  });
  to.here.set(n, rows);
}

/** ask is identify, with the address of each row that is named, or the pieces that must be added first. */
export function ask(of: Pieced, query: unknown): Answer | number[] {
  const { missing } = of.chart;
  missing.clear();
  try {
    const answer = CapspanCore.identify(of.directory, query);
    return { ...answer, at: addresses(of, answer) };
  } catch (error) {
    if (missing.size === 0) throw error;
    return [...missing].sort((a, b) => a - b);
  }
}

function addresses({ named }: Pieced, answer: Answer): Record<string, string> {
  const at: Record<string, string> = {};
  for (const ref of refsOf(answer)) {
    const row = named.get(ref);
    if (row !== undefined) at[ref] = addressOf(row);
  }
  return at;
}

function kindOf(directory: Directory, { caps, ...kind }: DirectoryKind): Kind {
  return { ...kind, caps: caps.map(([sign, n, basis, ends]) => [readFigure(directory, "cap", sign, n, basis), ends]) };
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

function widestOf({ halves }: Directory, quantity: Quantity): Widest {
  const out = { limit: 0, made: 0, standard: 0 };
  for (const [basis, half] of Object.entries(halves[quantity])) {
    widen(out, figure(quantity, basis as keyof typeof halves.cap, 0, half, ""));
  }
  return out;
}
