// The bench of truth, inside: joints made up, measured with errors, put to the core and to
// the nearest-row rule, and counted. The Go program around it bundles this, runs it in as
// many processes as there are cores, adds up and prints.
import type { Answer, Chart, ChartRow, Query, Size } from "../types";
import type * as core from "../index";
import { columns, draw, stock, type Column, type Stock } from "./columns";
import * as given from "./given";
import { couldBe, type Joint } from "./joints";
import { measure, typed, type Habit, type ReadEnd } from "./measure";
import { nearestRow } from "./nearest-row";
import { withinReach } from "./reach";
import { chance, type Chance } from "./random";
import type { Texts } from "./slips";

/** Counts by name: adding two tallies adds the counts. */
export type Tally = Record<string, number>;

export interface Job {
  column: string;
  seed: number;
  from: number; // first set
  to: number; // one past the last
  show: number; // how many wrong answers to show
}

export interface Result {
  tally: Tally;
  shown: string[];
}

export { columns };
export const statement = given.statement;

/** Edges of the reliability table. */
export const bins: readonly number[] = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1.0000001];

export function run(identify: typeof core.identify, chart: Chart, job: Job): Result {
  const column = columns.find((c) => c.id === job.column);
  if (column === undefined) throw new Error(`no column ${job.column}`);
  const from = stock(chart, column);
  const peer = nearestRow(chart);
  const reach = column.tool === "steel-rule" && column.slip === undefined ? withinReach(chart, column.tool) : undefined;
  const byRef = new Map(chart.rows.map((row) => [row.ref, row]));
  const result: Result = { tally: { rows: from.rows.length }, shown: [] };
  if (column.rows !== undefined && from.rows.length === 0) return result;
  const count = (name: string, by = 1): void => {
    result.tally[name] = (result.tally[name] ?? 0) + by;
  };
  for (let set = job.from; set < job.to; set++) {
    const { joint, read, query } = person(from, chance(job.seed, column.id, set));
    if (query === undefined) continue;
    const answer = identify(chart, query);
    count("sets");
    const wrong = judge(answer, joint, column, byRef, count);
    if (wrong && result.shown.length < job.show) result.shown.push(shown(answer, joint, query));
    const sizes = read[0] === undefined ? undefined : reach?.(read[0]);
    if (sizes !== undefined) judgeReach(answer, sizes, byRef, count);
    if (column.slip === undefined) judgePeer(peer(read)?.size, joint, count);
  }
  return result;
}

/** The questions a job would put to the core, for a test that puts them to another core too. */
export function questions(chart: Chart, job: Job): Query[] {
  const column = columns.find((c) => c.id === job.column);
  if (column === undefined) throw new Error(`no column ${job.column}`);
  const from = stock(chart, column);
  const out: Query[] = [];
  if (column.rows !== undefined && from.rows.length === 0) return out;
  for (let set = job.from; set < job.to; set++) {
    const query = person(from, chance(job.seed, column.id, set)).query;
    if (query !== undefined) out.push(query);
  }
  return out;
}

interface Asked {
  joint: Joint;
  read: ReadEnd[];
  query: Query | undefined; // undefined: these readings cannot show the slip
}

// One person at one joint.
function person(from: Stock, dice: Chance): Asked {
  const { joint, habit } = draw(from, dice);
  const read = joint.ends.map((end) => measure(from.column.slip?.joint?.(end, dice) ?? end, habit, dice));
  return { joint, read, query: ask(read, habit, from.column, dice) };
}

function ask(read: readonly ReadEnd[], habit: Habit, column: Column, dice: Chance): Query | undefined {
  const ends: Query["ends"] = [];
  for (const end of read) {
    const texts: Texts = {
      ...end,
      cap: end.cap.map((x) => typed(x, habit)),
      across: end.across.map((x) => typed(x, habit)),
    };
    const slipped = column.slip?.typed === undefined ? texts : column.slip.typed(texts, dice);
    if (slipped === undefined) return undefined;
    ends.push(slipped);
  }
  return { ends, tool: habit.tool, condition: habit.condition };
}

// Counts one answer; true when it names a size outright that the joint is not. A joint made after one row may be what
// another row says: a recalled figure that was a little off, a whole millimetre. Those are counted apart.
function judge(
  answer: Answer,
  joint: Joint,
  column: Column,
  byRef: ReadonlyMap<string, ChartRow>,
  count: (name: string, by?: number) => void,
): boolean {
  const right = (s: Size | undefined): boolean =>
    s !== undefined && joint.row !== null && s.rows.includes(joint.row.ref);
  const lead = answer.sizes[0];
  const among = answer.sizes.some(right);
  const how = among ? "right" : "wrong";
  const alike = lead?.rows.some((ref) => {
    const row = byRef.get(ref);
    return row !== undefined && couldBe(joint, row);
  });
  switch (answer.verdict) {
    case "identified":
      count(`identified ${among ? "right" : alike ? "alike" : "wrong"}`);
      break;
    case "possible":
    case "between":
      count(`${answer.verdict} ${how}`);
      break;
    case "not-in-chart":
    case "measure-again":
      count(answer.verdict);
  }
  const slip = answer.slips[0];
  if (slip !== undefined) {
    count("slip offered");
    count(`offered ${slip.slip}`);
    const meant = column.slip;
    if (meant !== undefined && (slip.slip === meant.id || meant.alike.includes(slip.slip))) {
      count("slip named");
      if (joint.row !== null && slip.rows.includes(joint.row.ref)) count("slip and size named");
    }
  }
  if (lead !== undefined) {
    const bin = bins.findIndex((edge, i) => i > 0 && lead.probability < edge);
    count(`bin ${bin}`);
    count(`bin ${bin} p`, lead.probability);
    if (right(lead)) count(`bin ${bin} right`);
  }
  return answer.verdict === "identified" && !among && alike !== true;
}

// Whoever is within reach of the instrument is to be named, when anything is.
function judgeReach(
  answer: Answer,
  within: ReadonlySet<number>,
  byRef: ReadonlyMap<string, ChartRow>,
  count: (name: string) => void,
): void {
  if (within.size < 2 || answer.verdict === "measure-again") return;
  count("several in reach");
  const named = new Set(answer.sizes.flatMap((s) => s.rows.map((ref) => byRef.get(ref)?.size)));
  if (answer.verdict === "between" && [...within].every((size) => named.has(size))) count("all in reach named");
}

function judgePeer(size: number | undefined, joint: Joint, count: (name: string) => void): void {
  if (size === undefined) count("peer nothing");
  else count(joint.row !== null && size === joint.row.size ? "peer right" : "peer wrong");
}

function shown(answer: Answer, joint: Joint, query: Query): string {
  return JSON.stringify({
    is: joint.row?.ref ?? null,
    ends: joint.ends,
    query,
    names: answer.sizes.map((s) => s.names),
  });
}
