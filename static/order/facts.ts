// What can be said of one joint on a slip: the size or sizes with the chart's figures, the readings with their
// uncertainty, and what it must not be mixed up with. Nothing is guessed: what nobody chose, measured or published stays
// open, and the slip has a line for it.
import type { AnyChart } from "../matcher/prepared";
import type {
  Answer,
  ChartEnd,
  ChartFigure,
  ChartRow,
  Estimate,
  Quantity,
  Query,
  Tool,
  Condition,
} from "../matcher/types";
import type { LabelledCell, SlipChart, SlipRow } from "./chart";
import type { Extra, SlipJoint } from "./slip";
import { lineOf } from "./figures";
import { verdictOf } from "./words";

/** A row as a slip asks after it. */
export interface AskedRow extends Pick<ChartRow, "ref" | "name"> {
  size: number | string; // twins share it
  ends: (Pick<ChartEnd, "hold" | "faces"> & Record<Quantity, Pick<ChartFigure, "text" | "unit"> | null>)[];
}

/** A chart as a slip asks it: held whole, or in pieces. Of pieces it has the rows and answers that were looked up. */
export type AskedChart = AnyChart & { rows: readonly AskedRow[]; answer?: (query: Query) => Answer | undefined };

/** How the size came about: what the core concluded, or "chosen" by name, or "open": nothing is known. */
export type Settled = Answer["verdict"] | "chosen" | "open";

/** One size with all its names, as the chart has it. */
export interface NamedSize {
  names: string[]; // all names it is sold under
  row: SlipRow; // the one with the best evidence
  rows: SlipRow[];
  confirm: boolean;
}

export interface Other {
  names: string[];
  line: string; // its figures, in both units
  otherHold: boolean; // cap and across agree and the hold does not
}

export interface Measured {
  estimate: Estimate;
  taken: "joint" | "yoke";
}

export interface JointFacts {
  settled: Settled;
  says: string; // one sentence
  sizes: NamedSize[]; // one when it is named; several when the readings leave several
  more: number; // sizes left beyond those listed
  conversion: boolean; // two unlike ends
  measured: Measured[];
  looked: Query["ends"]; // what was chosen of hold and faces
  tool?: Tool;
  condition?: Condition;
  notThese: Other[];
  fasteners: LabelledCell[];
  open: Open[]; // what nobody has said, each a line to fill in
}

export type Open = "size" | "grease" | "clip-thickness" | Extra;

/** Sizes and others that a slip names: a sheet has room for no more. */
const mostSizes = 3;
const mostOthers = 3;

/** factsOf looks a joint up. An id that the chart does not have leaves the size open and is said. */
export function factsOf(joint: SlipJoint, chart: AskedChart, slips: SlipChart): JointFacts {
  const row = joint.row === undefined ? undefined : chart.rows.find((r) => r.name === joint.row);
  const asked = joint.query ?? (row === undefined ? undefined : askLike(row));
  const answer =
    asked === undefined ? undefined : (capspanInPieces && chart.answer?.(asked)) || CapspanCore.identify(chart, asked);
  const measured = joint.query === undefined ? undefined : answer;
  const chosen = row === undefined ? [] : [sizeOf(twinsOf(row, chart), slips)];
  const left = measured === undefined ? [] : measured.sizes.map((s) => sizeOf(s.rows, slips));
  const settled: Settled = measured?.verdict ?? (row === undefined ? "open" : "chosen");
  const sizes = (measured === undefined ? chosen : left).filter((s): s is NamedSize => s !== undefined);
  const facts: JointFacts = {
    settled,
    says: verdictOf(settled, measured?.says.head, joint.row, row !== undefined),
    sizes: sizes.slice(0, mostSizes),
    more: Math.max(0, sizes.length - mostSizes),
    conversion: sizes.length > 0 && sizes.every((s) => s.row.ends.length === 2),
    measured: (measured?.readings ?? []).map((estimate) => ({
      estimate,
      taken: joint.query?.ends[estimate.end]?.taken ?? "joint",
    })),
    looked: joint.query?.ends ?? [],
    notThese: answer === undefined ? [] : others(answer, sizes, slips),
    fasteners: sizes.length === 1 ? (sizes[0]?.rows ?? []).flatMap((r) => r.fasteners) : [],
    open: [],
  };
  if (joint.query !== undefined && facts.measured.length > 0) {
    facts.tool = joint.query.tool ?? "digital-caliper";
    facts.condition = joint.query.condition ?? "used";
  }
  facts.open = openOf(joint, facts);
  return facts;
}

/** The question that a row's own figures answer, so that what lies near it is found as for readings. */
export function askLike(row: AskedRow): Query {
  return {
    ends: row.ends.map((end) => {
      const out: Query["ends"][number] = { hold: end.hold };
      if (end.faces !== "unknown") out.faces = end.faces;
      if (end.cap !== null) out.cap = [`${end.cap.text} ${end.cap.unit}`];
      if (end.across !== null) out.across = [`${end.across.text} ${end.across.unit}`];
      return out;
    }),
    condition: "new",
  };
}

function twinsOf(row: AskedRow, chart: AskedChart): string[] {
  const others = chart.rows.filter((r) => r.size === row.size && r !== row);
  return [row.ref, ...others.map((r) => r.ref)];
}

function sizeOf(refs: readonly string[], slips: SlipChart): NamedSize | undefined {
  const rows = refs.map((ref) => slips.rows.find((r) => r.ref === ref)).filter((r): r is SlipRow => r !== undefined);
  const [row] = rows;
  if (row === undefined) return undefined;
  const names = [...new Set(rows.flatMap((r) => [r.id, ...r.also]))];
  return { names, row, rows, confirm: rows.every((r) => r.confirm) };
}

// What lies nearest and is not it, and what has the same figures under another hold; never a size that is left.
function others(answer: Answer, sizes: readonly NamedSize[], slips: SlipChart): Other[] {
  const ours = new Set(sizes.flatMap((s) => s.rows.map((r) => r.ref)));
  const out: Other[] = [];
  const take = (refs: readonly string[], otherHold: boolean): void => {
    const size = refs.some((ref) => ours.has(ref)) ? undefined : sizeOf(refs, slips);
    if (size === undefined || out.some((o) => o.names.some((name) => size.names.includes(name)))) return;
    out.push({ names: size.names, line: lineOf(size.row), otherHold });
  };
  for (const s of answer.sameFigures) take(s.rows, true);
  // A row that was asked for by its own figures may leave twins it has no word for: they are as near as can be.
  for (const s of [...answer.sizes, ...answer.near]) take(s.rows, false);
  return out.slice(0, mostOthers);
}

function openOf(joint: SlipJoint, facts: JointFacts): Open[] {
  const open: Open[] = [];
  if (facts.sizes.length !== 1 || facts.more > 0) open.push("size");
  if (joint.grease === undefined) open.push("grease");
  for (const w of joint.extras) {
    if (w.count === undefined) open.push(w.item);
    if (w.item === "clips") open.push("clip-thickness");
  }
  return open;
}
