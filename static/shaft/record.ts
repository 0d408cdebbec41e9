// The record of one shaft: its joints, what was reckoned for it, what was written down. Plain data; the form in which it
// is kept, saved as a file and read back is static/schemas/shaft-1.json. Whatever is left out was not said by anybody.
//
// No DOM, locale or clock here: the page, the tests and whoever reads a file run the same. The core, CapspanCore, must
// be there first where joints are looked up.
import type { Report } from "../driveline/description";
import type { Ground } from "../driveline/types";
import { tidy } from "../matcher/free-text";
import type { Settled } from "../order/facts";
import { longestPlace } from "../order/slip";

/** What a record may hold at most: one sheet of paper shows it. */
export const most = {
  title: 60,
  line: 60, // job, by, clips, labels and values
  place: longestPlace,
  address: 2000, // a fragment
  note: 120, // of a joint
  sentence: 300,
  notes: 600,
  joints: 3,
  figure: 40, // label and value of one
  figures: 12,
  calculations: 9,
  lines: 60, // of one calculation
} as const;

/** What stood on the page when a joint was put in. */
export interface FoundJoint {
  settled: Settled;
  names: string[];
  says: string;
  chart: string;
}

export interface ShaftJoint {
  place?: string; // "gearbox end"
  identification?: string; // fragment of /identify/
  row?: string; // id of a row chosen by its name
  found?: FoundJoint;
  clips?: string; // as fitted, in words: "1.50 mm, both sides"
  note?: string;
}

/** A figure written down by hand. */
export interface WrittenFigure {
  label: string;
  value: string;
}

/** An input as it was filled. */
export interface KeptInput {
  label: string;
  value: string;
  unit: string;
}

/** A line of a result as it was printed. */
export interface KeptLine {
  label: string;
  value: string;
  unit: string;
  also?: string;
  formula: string;
  source: string[]; // basis and document in words
  valid?: string; // where the formula holds
}

/** A published limit beside what was reckoned: one value, or one for each joint. */
export interface KeptLimit {
  of: string;
  limit: string;
  stands: KeptStand[];
  source: string[];
  says?: string; // where the limit applies
}

export interface KeptStand {
  of: string; // "joint 1"; "" where there is only one
  value: string;
  met: string; // "within", "above", "below", "not known"
}

/** A calculation: its address, which opens it again, and its result as it was. */
export interface KeptCalculation {
  calculation: string; // last part of its page's address: "angles"
  fragment: string;
  title: string;
  given: KeptInput[];
  lines: KeptLine[];
  limits: KeptLimit[];
  unchecked: string[];
  chart?: string;
}

export interface ShaftRecord {
  title: string;
  job?: string; // the vehicle or the customer
  by?: string;
  date?: string; // ISO 8601, 2026-11-25
  chart?: string; // the version the page had when it was last changed
  joints: ShaftJoint[];
  figures: WrittenFigure[];
  calculations: KeptCalculation[];
  notes?: string;
}

export function emptyRecord(title: string): ShaftRecord {
  return { title, joints: [], figures: [], calculations: [] };
}

/** The record as a file holds it; `schema` is the full address of the published form. What matters most comes first, for
 *  a file that is cut keeps its beginning. */
export function recordDocument(record: ShaftRecord, schema: string): unknown {
  const { title, job, by, date, chart, joints, figures, calculations, notes } = record;
  const head = { $schema: schema, kind: "shaft-record", format: 1, title, job, by, date, chart };
  return { ...head, joints, figures, notes, calculations };
}

/** What a record keeps of a calculation's report; `ground` puts what a figure rests on into words. */
export function keptOf(report: Report, ground: (g: Ground) => string, chart?: string): KeptCalculation {
  const cut = (text: string, longest: number = most.sentence): string => tidy(text, longest);
  const out: KeptCalculation = {
    calculation: report.calculation,
    fragment: report.fragment,
    title: cut(report.title),
    given: report.given
      .slice(0, most.lines)
      .map((g) => ({ label: cut(g.label), value: cut(g.value), unit: cut(g.unit, most.line) }))
      .filter((g) => g.value !== ""),
    lines: report.lines.slice(0, most.lines).map((l) => {
      const line: KeptLine = {
        label: cut(l.label),
        value: cut([l.value, ...(l.rows ?? [])].join(" ")) || "-",
        unit: cut(l.unit, most.line),
        formula: cut(l.formula),
        source: l.source.map((g) => cut(ground(g))),
      };
      if (l.also) line.also = cut(l.also);
      if (l.valid) line.valid = cut(l.valid);
      return line;
    }),
    limits: report.limits.slice(0, most.lines).map((l) => {
      const limit: KeptLimit = {
        of: cut(l.of),
        limit: cut(l.limit),
        stands: l.stands.map((s) => ({ of: cut(s.of, most.line), value: cut(s.value) || "-", met: s.met })),
        source: l.source.map((g) => cut(ground(g))),
      };
      if (l.says) limit.says = cut(l.says);
      return limit;
    }),
    unchecked: report.unchecked.map((t) => cut(t)),
  };
  if (chart !== undefined) out.chart = chart;
  return out;
}

/** Puts a calculation into a record: one of the same name and inputs takes its old place. False when there is no room. */
export function putCalculation(record: ShaftRecord, kept: KeptCalculation): boolean {
  const at = record.calculations.findIndex((c) => c.calculation === kept.calculation && c.fragment === kept.fragment);
  if (at < 0 && record.calculations.length >= most.calculations) return false;
  if (at < 0) record.calculations.push(kept);
  else record.calculations[at] = kept;
  return true;
}
