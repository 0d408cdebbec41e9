// What has changed since a link was made. An address carries the name of its chart; the
// record of changes (tables/history.yaml) says what each issue changed. A script of its
// own, fetched with that record when a link's chart is another than the page's.
//
//   where the link's chart stands in the record -> the issues after it -> those of their
//   changes that the answer rests on: rows it names, and rows it would have named by
//   figures they had then
import type { Answer } from "./types";
import type { PartAnswer } from "./part-types";
import { parseReading } from "./reading";
import { refsOf } from "./refs";
import * as say from "./speech-since";

/** One change, as recorded. */
export interface Change {
  of: string; // "joints-inch/1310" as it was called then, a table, or a source
  column: string;
  what: string; // value, basis ... or added, retired, renamed
  old: string; // with its unit
  new: string;
  why: string;
  rows: string[]; // refs of the rows of today it bears on: the row, what took its place, joints that have its figures
}

export interface Issue {
  chart: string;
  from: string; // the one before it; empty when the record does not say
  date: string;
  why: string;
  changes: Change[];
}

export interface Record {
  format: 1;
  chart: string; // the one of this edition
  issues: Issue[]; // newest first
}

/** Where the link's chart stands: `older` is known for sure, `partly` older by its date alone. */
export type Standing = "same" | "older" | "partly" | "newer" | "unknown" | "no-name";

export interface Since {
  standing: Standing;
  made: string;
  now: string;
  rows: string[]; // refs of the rows that changed
  head: string; // empty when the charts are the same
  changes: string[]; // a sentence each, newest first
}

const name = /^(\d{4}-\d\d-\d\d)-[0-9a-f]{7}$/;

/** How near an older figure must have been to a reading for its row to have mattered then, mm. */
const nearOld = 1;

/** changedSince never throws for anything in `made`. */
export function changedSince(record: Record, made: string, answer: Answer | PartAnswer): Since {
  const now = record.chart;
  const out: Since = { standing: "same", made, now, rows: [], head: "", changes: [] };
  if (made === now) return out;
  const day = name.exec(made)?.[1];
  const today = name.exec(now)?.[1] ?? "";
  const at = after(record, made);
  if (day === undefined) out.standing = "no-name";
  else if (at >= 0) out.standing = "older";
  else if (day > today) out.standing = "newer";
  else out.standing = record.issues.some((issue) => issue.date > day) ? "partly" : "unknown";
  if (out.standing === "older" || out.standing === "partly") {
    const issues = at >= 0 ? record.issues.slice(0, at) : record.issues.filter((issue) => issue.date > (day ?? ""));
    const named = refsOf(answer);
    const rows = new Set<string>();
    for (const issue of issues) {
      for (const change of issue.changes) {
        const about = bearsOn(change, named, answer);
        if (about.length === 0) continue;
        for (const ref of about) rows.add(ref);
        out.changes.push(say.changed(change, issue, say.rowsOf(about)));
      }
    }
    out.rows = [...rows];
  }
  // What is newer than the newest recorded issue was never told of.
  const told = record.issues[0]?.chart === now;
  out.head = say.head(out.standing, made, now, out.rows.length, told);
  return out;
}

// How many issues came after the link's chart, by the record; -1 when it has no such chart.
function after(record: Record, made: string): number {
  const own = record.issues.findIndex((issue) => issue.chart === made);
  if (own >= 0) return own;
  const next = record.issues.map((issue) => issue.from).lastIndexOf(made);
  return next < 0 ? -1 : next + 1;
}

// The rows a change is about that the answer rests on; none when it does not matter to it.
function bearsOn(change: Change, named: ReadonlySet<string>, answer: Answer | PartAnswer): string[] {
  const rows = change.rows.filter((ref) => named.has(ref));
  const [own] = change.rows;
  if (own !== undefined && named.has(own)) return [own];
  if (rows.length > 0) return rows;
  if (!change.of.includes("/")) {
    const inTable = [...named].filter((ref) => ref.startsWith(`${change.of}/`));
    return inTable; // a head changed: a unit, what a column means
  }
  if (change.what !== "value" || !wasNear(change, answer)) return [];
  return change.rows.length > 0 ? change.rows.slice(0, 1) : [change.of];
}

// Whether the row had a figure then that one of the readings comes near.
function wasNear(change: Change, answer: Answer | PartAnswer): boolean {
  return answer.readings.some((r) => {
    const column = "column" in r ? r.column : r.quantity;
    if (column !== change.column) return false;
    const figures = ends(change.old);
    if (figures.length === 0) return false;
    const [least, greatest] = [Math.min(...figures), Math.max(...figures)];
    const reach = r.unit === "mm" ? nearOld + r.uncertainty : 0;
    return r.value >= least - reach && r.value <= greatest + reach;
  });
}

// "1.060 in", "0.742-0.747 in" or "36" as numbers: of a length in mm.
function ends(text: string): number[] {
  if (/^\d+$/.test(text)) return [Number(text)];
  const range = /^([\d.]+)-([\d.]+) (in|mm)$/.exec(text);
  const parts = range === null ? [text] : [`${range[1]} ${range[3]}`, `${range[2]} ${range[3]}`];
  return parts.flatMap((p) => {
    const r = parseReading(p);
    return r.ok ? [r.mm] : [];
  });
}
