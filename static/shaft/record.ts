// The record of one shaft: its joints, what was reckoned for it, what was written down. Plain data; the form in which it
// is kept, saved as a file and read back is static/schemas/shaft-1.json. Whatever is left out was not said by anybody.
//
// No DOM, locale or clock here: the page, the tests and whoever reads a file run the same. The core, CapspanCore, must
// be there first where joints are looked up.
import type { Report } from "../driveline/description";
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

/** A line of a result as it was printed. */
export interface KeptLine {
  label: string;
  value: string;
  unit: string;
  also?: string;
  formula: string;
  source: string[]; // "published: key, place", or the basis alone
}

export interface KeptLimit {
  of: string;
  value: string;
  limit: string;
  met: string;
  source: string[];
}

/** A calculation: its address, which opens it again, and its result as it was. */
export interface KeptCalculation {
  calculation: string; // last part of its page's address: "angles"
  fragment: string;
  title: string;
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

/** What a record keeps of a calculation's report. */
export function keptOf(report: Report, chart?: string): KeptCalculation {
  const source = (grounds: { basis: string; source: string; at?: string }[]): string[] =>
    grounds.map((g) => [g.source ? `${g.basis}: ${g.source}` : g.basis, g.at ?? ""].filter((t) => t !== "").join(", "));
  const out: KeptCalculation = {
    calculation: report.calculation,
    fragment: report.fragment,
    title: report.title,
    lines: report.lines.slice(0, most.lines).map((l) => ({
      label: l.label,
      value: l.value,
      unit: l.unit,
      ...(l.also === undefined ? {} : { also: l.also }),
      formula: l.formula,
      source: source(l.source),
    })),
    limits: report.limits.slice(0, most.lines).map((l) => ({
      of: l.of,
      value: l.value,
      limit: l.limit,
      met: l.met,
      source: source(l.source),
    })),
    unchecked: report.unchecked,
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
