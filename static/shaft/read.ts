// A record read back from a file or from the device: everything that can be used is kept, everything else is named with
// its place and what to do. Nothing throws, whatever comes in.
import { tidy } from "../matcher/free-text";
import {
  emptyRecord,
  type FoundJoint,
  type KeptCalculation,
  type KeptInput,
  type KeptLimit,
  type KeptLine,
  type KeptStand,
  most,
  type ShaftJoint,
  type ShaftRecord,
  type WrittenFigure,
} from "./record";
import { rescue } from "./rescue";
import { readWords as say } from "words:shaft";

/** Largest file looked at, in characters; a full record has a few ten thousand. */
export const longestFile = 1_000_000;

export interface Complaint {
  at: string; // "joints[1].clips"; "" for the file as a whole
  says: string;
}

export type ReadRecord = { ok: true; record: ShaftRecord; complaints: Complaint[] } | { ok: false; says: string };

/** More would not be read by anybody. */
const mostComplaints = 20;

/** readRecord reads the text of a file. */
export function readRecord(text: string): ReadRecord {
  if (text.trim() === "") return { ok: false, says: say.empty };
  if (text.length > longestFile) return { ok: false, says: say.tooLong };
  const { value, fault } = rescue(text.replace(/^\ufeff/, ""));
  const broken = fault === undefined ? "" : say.fault(fault.line, fault.column, fault.found);
  if (!isObject(value)) return { ok: false, says: broken || say.notOurs };
  if (value["kind"] === "enquiry") return { ok: false, says: say.enquiry };
  if (value["kind"] !== "shaft-record") return { ok: false, says: [say.notOurs, broken].filter((t) => t).join(" ") };
  const form = value["format"];
  const reader = new Form();
  if (broken !== "") reader.complain("", broken);
  if (typeof form === "number" && form > 1) reader.complain("format", say.later);
  else if (form !== 1) reader.complain("format", say.noFormat);
  const record = reader.record(value);
  const left = reader.complaints.length - mostComplaints;
  const complaints = reader.complaints.slice(0, mostComplaints);
  if (left > 0) complaints.push({ at: "", says: say.more(left) });
  return { ok: true, record, complaints };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

type Of<T> = { [K in keyof T]-?: (value: unknown, at: string) => T[K] | undefined };

/** Reads the parts of the form one by one, and notes what it leaves out. */
class Form {
  readonly complaints: Complaint[] = [];

  complain(at: string, says: string): undefined {
    this.complaints.push({ at, says });
    return undefined;
  }

  record(value: Record<string, unknown>): ShaftRecord {
    const given = { ...value };
    for (const own of ["$schema", "kind", "format"]) delete given[own];
    const line = this.text(most.line);
    const found = this.fields<ShaftRecord>(given, "", {
      title: this.text(most.title),
      job: line,
      by: line,
      date: (v, at) => this.date(v, at),
      chart: line,
      joints: this.list(most.joints, (v, at) => this.joint(v, at)),
      figures: this.list(most.figures, (v, at) => this.figure(v, at)),
      calculations: this.list(most.calculations, (v, at) => this.calculation(v, at)),
      notes: this.notes(),
    });
    if (found.title === undefined) this.complain("title", say.noTitle);
    return { ...emptyRecord(say.untitled), ...found };
  }

  private joint(value: Record<string, unknown>, at: string): ShaftJoint {
    const line = this.text(most.line);
    return this.fields<ShaftJoint>(value, at, {
      place: this.text(most.place),
      identification: this.text(most.address),
      row: line,
      found: (v, where) => (isObject(v) ? this.found(v, where) : this.wrong(where, v, say.object)),
      clips: line,
      note: this.text(most.note),
    });
  }

  private found(value: Record<string, unknown>, at: string): FoundJoint | undefined {
    return this.every(
      this.fields<FoundJoint>(value, at, {
        settled: (v, where) => settledWords.find((w) => w === v) ?? this.wrong(where, v, say.word(settledWords)),
        names: this.texts(),
        says: this.text(most.sentence * 2),
        chart: this.text(most.line),
      }),
      ["settled", "names", "says", "chart"],
      at,
    );
  }

  private figure(value: Record<string, unknown>, at: string): WrittenFigure | undefined {
    const text = this.text(most.figure);
    return this.every(this.fields<WrittenFigure>(value, at, { label: text, value: text }), ["label", "value"], at);
  }

  private calculation(value: Record<string, unknown>, at: string): KeptCalculation | undefined {
    const sentence = this.text(most.sentence);
    const found = this.fields<KeptCalculation>(value, at, {
      calculation: (v, where) =>
        typeof v === "string" && /^[a-z][a-z-]{0,39}$/.test(v) ? v : this.wrong(where, v, say.page),
      fragment: this.text(most.address),
      title: sentence,
      given: this.list(most.lines, (v, where) => this.input(v, where)),
      lines: this.list(most.lines, (v, where) => this.line(v, where)),
      limits: this.list(most.lines, (v, where) => this.limit(v, where)),
      unchecked: this.texts(),
      chart: this.text(most.line),
    });
    const whole = { given: [], lines: [], limits: [], unchecked: [], ...found };
    return this.every<KeptCalculation>(whole, ["calculation", "fragment", "title"], at);
  }

  private input(value: Record<string, unknown>, at: string): KeptInput | undefined {
    const text = this.text(most.sentence);
    const found = this.fields<KeptInput>(value, at, { label: text, value: text, unit: this.text(most.line, true) });
    return this.every<KeptInput>({ unit: "", ...found }, ["label", "value"], at);
  }

  private line(value: Record<string, unknown>, at: string): KeptLine | undefined {
    const text = this.text(most.sentence);
    const found = this.fields<KeptLine>(value, at, {
      label: text,
      value: text,
      unit: this.text(most.line, true),
      also: text,
      formula: this.text(most.sentence, true),
      source: this.texts(),
      valid: text,
    });
    return this.every<KeptLine>({ unit: "", formula: "", source: [], ...found }, ["label", "value"], at);
  }

  private limit(value: Record<string, unknown>, at: string): KeptLimit | undefined {
    const text = this.text(most.sentence);
    const found = this.fields<KeptLimit>(value, at, {
      of: text,
      limit: text,
      stands: this.list(most.lines, (v, where) => this.stand(v, where)),
      source: this.texts(),
      says: text,
    });
    return this.every<KeptLimit>({ source: [], ...found }, ["of", "limit", "stands"], at);
  }

  private stand(value: Record<string, unknown>, at: string): KeptStand | undefined {
    const text = this.text(most.sentence);
    const found = this.fields<KeptStand>(value, at, { of: this.text(most.line, true), value: text, met: text });
    return this.every<KeptStand>({ of: "", ...found }, ["value", "met"], at);
  }

  // Each known field by its own reader; an unknown one is named.
  private fields<T>(value: Record<string, unknown>, at: string, readers: Of<T>): Partial<T> {
    const out: Partial<T> = {};
    const inside = (key: string): string => (at === "" ? key : `${at}.${key}`);
    const known = Object.keys(readers) as (keyof T & string)[];
    const given = new Map(Object.entries(value)); // never what every object has
    for (const key of given.keys()) {
      if (!known.some((k) => k === key)) this.complain(inside(key.slice(0, 40)), say.unknown);
    }
    for (const key of known) {
      if (!given.has(key)) continue;
      const read = readers[key](given.get(key), inside(key));
      if (read !== undefined) out[key] = read;
    }
    return out;
  }

  // A part that lacks what it cannot do without is left out as a whole.
  private every<T>(found: Partial<T>, needed: (keyof T & string)[], at: string): T | undefined {
    const missing = needed.filter((key) => found[key] === undefined);
    return missing.length === 0 ? (found as T) : this.complain(at, say.lacks(missing.join(", ")));
  }

  private text(longest: number, mayBeEmpty = false): (value: unknown, at: string) => string | undefined {
    return (value, at) => {
      if (typeof value !== "string") return this.wrong(at, value, say.text);
      const clean = tidy(value, longest);
      if (clean.length < tidy(value, value.length).length) this.complain(at, say.cut(longest));
      return clean !== "" || mayBeEmpty ? clean : undefined;
    };
  }

  // Notes keep their lines.
  private notes(): (value: unknown, at: string) => string | undefined {
    return (value, at) => {
      if (typeof value !== "string") return this.wrong(at, value, say.text);
      const clean = lines(value);
      if (clean.length > most.notes) this.complain(at, say.cut(most.notes));
      return clean.slice(0, most.notes).trim() || undefined;
    };
  }

  private texts(): (value: unknown, at: string) => string[] | undefined {
    return (value, at) => {
      if (!Array.isArray(value)) return this.wrong(at, value, say.list);
      const one = this.text(most.sentence);
      return value
        .slice(0, most.lines)
        .map((v: unknown, n) => one(v, `${at}[${n}]`))
        .filter((t): t is string => t !== undefined);
    };
  }

  private list<T>(
    longest: number,
    one: (value: Record<string, unknown>, at: string) => T | undefined,
  ): (value: unknown, at: string) => T[] | undefined {
    return (value, at) => {
      if (!Array.isArray(value)) return this.wrong(at, value, say.list);
      if (value.length > longest) this.complain(at, say.tooMany(value.length, longest));
      const out: T[] = [];
      value.slice(0, longest).forEach((v: unknown, n) => {
        const where = `${at}[${n}]`;
        const read = isObject(v) ? one(v, where) : this.wrong(where, v, say.object);
        if (read !== undefined) out.push(read);
      });
      return out;
    };
  }

  private date(value: unknown, at: string): string | undefined {
    return typeof value === "string" && isDay(value) ? value : this.wrong(at, value, say.date);
  }

  private wrong(at: string, value: unknown, wanted: string): undefined {
    return this.complain(at, say.wrong(shown(value), wanted));
  }
}

const settledWords = ["identified", "possible", "between", "not-in-chart", "measure-again", "chosen", "open"] as const;

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? "";
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

/** Whether a text is a day as ISO 8601 writes it. */
export function isDay(text: string): boolean {
  return /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(text);
}

/** Text of several lines without controls or marks of direction. */
export function lines(text: string): string {
  return text
    .replace(/\r\n?/g, "\n")
    .split("\n")
    .map((line) => tidy(line, line.length))
    .join("\n")
    .trim();
}
