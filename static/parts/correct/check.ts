// What the loader would say of a cell, before it is sent: the rules of tables/value.go and tables/measured.go under
// their own ids, by the facts of the column. A test of package build puts thousands of cells, good and bad, to both and
// holds them to the same rules; rules between rows (twins, ids) are the loader's alone.
import type { Cell, Column, Known, Measurement, NewSource, Row, Told } from "./facts";
import { blank, invisible } from "./letters";
import { exact, figure, slack, whole, type Exact, type Figure } from "./number";
import { checkWords as say } from "words:correct";

/** Something the loader refuses: its rule, the key it is about, and what to do. */
export interface Problem {
  rule: string;
  key: string;
  says: string;
}

const longestText = 400;
const longestID = 40;
const idShape = /^[A-Za-z0-9]+([.-][A-Za-z0-9]+)*$/;
const absences = ["unknown", "none"];

/** checkCell judges a new cell of a row. */
export function checkCell(cell: Cell, column: Column, row: Row, known: Known): Problem[] {
  const problems: Problem[] = [];
  const c = new Checker(problems, column, known);
  const value = c.told(cell, "");
  c.faced(cell, value !== null);
  for (const other of cell.others ?? []) c.other(other);
  for (const m of cell.measured ?? []) c.measurement(m);
  c.readingsOf(cell, value, "");
  c.onHold(cell, row);
  return problems;
}

/** checkSource judges an entry for the registry. */
export function checkSource(source: NewSource, known: Known): Problem[] {
  const problems: Problem[] = [];
  const c = new Checker(problems, null, known);
  c.id(source.id, "new.id");
  if (known.sources.includes(source.id)) c.add("duplicate-id", "new.id", say.taken(source.id));
  c.text(source.title, "new.title");
  c.text(source.publisher, "new.publisher");
  for (const key of ["edition", "where"] as const) if (source[key] !== undefined) c.text(source[key], `new.${key}`);
  c.word(source.kind, known.kinds, "unknown-kind", "new.kind");
  if (source.date !== undefined) c.day(source.date, "new.date");
  return problems;
}

class Checker {
  constructor(
    private readonly problems: Problem[],
    private readonly column: Column | null,
    private readonly known: Known,
  ) {}

  add(rule: string, key: string, says: string): void {
    this.problems.push({ rule, key, says });
  }

  text(text: string, key: string): boolean {
    if (blank.test(text)) this.add("empty-value", key, say.empty);
    else if ([...text].length > longestText) this.add("text-length", key, say.tooLong([...text].length, longestText));
    else if (invisible.test(text)) this.add("control-character", key, say.invisible(codeOf(text)));
    else return true;
    return false;
  }

  id(id: string, key: string): void {
    if (!this.text(id, key)) return;
    if (bytesOf(id) > longestID) this.add("text-length", key, say.tooLong(id.length, longestID));
    else if (!idShape.test(id)) this.add("bad-id", key, say.badID);
  }

  day(day: string, key: string): void {
    if (this.text(day, key) && !isDay(day)) this.add("bad-date", key, say.badDate);
  }

  word(word: string, list: readonly string[], rule: string, key: string): void {
    if (this.text(word, key) && !list.includes(word)) this.add(rule, key, say.unknownWord(word));
  }

  /** What a value says and why it is believed; the figure, "" for a word, null for none of them. */
  told(told: Told, under: string): Figure | "" | null {
    const value = this.figure(told, under);
    this.evidence(told, under);
    return value;
  }

  other(told: Told): void {
    const value = this.told(told, "others.");
    if (value === null) {
      this.add("wrong-shape", "others.is", say.othersAreFigures);
      return;
    }
    this.readingsOf(told, value, "others.");
    if (told.faces !== undefined) this.word(told.faces, this.known.faces, "unknown-faces", "others.faces");
  }

  private figure(told: Told, under: string): Figure | "" | null {
    const { column } = this;
    const key = `${under}is`;
    if (column === null) return null;
    if (told.unit !== undefined) this.word(told.unit, column.units ?? [], "unknown-unit", `${under}unit`);
    if (column.kind === "hold") {
      const holds = Object.keys(this.known.holds);
      this.word(told.is, holds, "unknown-hold", key);
      return told.is !== "unknown" && holds.includes(told.is) ? "" : null;
    }
    if (!this.text(told.is, key) || absences.includes(told.is)) return null;
    if (column.kind === "text") return "";
    // A unit nobody knows was reported; the digits are judged all the same.
    const unit = told.unit === undefined || column.units?.includes(told.unit) ? (told.unit ?? column.unit ?? "") : "";
    const value = figure(told.is, unit, column.range === true);
    if (value === null || (column.kind === "count" && !(whole(value.from) && whole(value.to)))) {
      this.add("bad-number", key, say.badNumber(told.is, column.range === true));
      return null;
    }
    if (unit === "" && (column.units ?? []).length > 0) return value;
    this.plausible(value.from, `${told.is} ${unit}`.trim(), key);
    if (value.to !== value.from) this.plausible(value.to, `${told.is} ${unit}`.trim(), key);
    return value;
  }

  private limits(): { least: Exact; greatest: Exact } | null {
    const unit = this.column?.unit ?? "";
    const least = exact(this.column?.least ?? "", unit);
    const greatest = exact(this.column?.greatest ?? "", unit);
    return least === null || greatest === null ? null : { least, greatest };
  }

  private plausible(value: Exact, text: string, key: string): void {
    const limits = this.limits();
    if (limits === null || (value >= limits.least && value <= limits.greatest)) return;
    const { least = "", greatest = "", unit = "" } = this.column ?? {};
    this.add("implausible", key, say.implausible(text, least, `${greatest} ${unit}`.trim()));
  }

  private evidence(told: Told, under: string): void {
    const sourced = told.source !== undefined && told.source.length > 0;
    if (told.basis !== undefined) this.word(told.basis, this.known.bases, "unknown-basis", `${under}basis`);
    else if (!absences.includes(told.is)) this.add("missing-basis", `${under}basis`, say.noBasis);
    for (const id of told.source ?? []) {
      if (this.text(id, `${under}source`) && !this.known.sources.includes(id))
        this.add("unknown-source", `${under}source`, say.unknownSource(id));
    }
    if (told.at !== undefined) this.text(told.at, `${under}at`);
    if (told.basis === "published" && !sourced) this.add("missing-source", `${under}source`, say.noSource);
    else if (sourced && weak(told.basis)) this.add("senseless-source", `${under}source`, say.senselessSource);
    else if (told.at !== undefined && !sourced) this.add("senseless-source", `${under}at`, say.placeOfNothing);
  }

  faced(cell: Cell, given: boolean): void {
    if (this.column?.faces !== true) return;
    if (cell.faces === undefined) {
      if (given) this.add("missing-faces", "faces", say.noFaces);
    } else if (cell.is === "none") this.add("wrong-faces", "faces", say.facesOfNothing);
    else this.word(cell.faces, this.known.faces, "unknown-faces", "faces");
    if (cell.facesBasis !== undefined) this.word(cell.facesBasis, this.known.bases, "unknown-basis", "facesBasis");
  }

  // Hold and across of a row must go together, whichever of the two is new.
  onHold(cell: Cell, row: Row): void {
    const [hold, across] =
      this.column?.kind === "hold"
        ? [cell.is, row.cells["across"]]
        : [row.cells["hold"]?.is ?? "unknown", this.column?.faces === true ? cell : undefined];
    const fitting = this.known.holds[hold] ?? [];
    const faces = across?.faces;
    if (across === undefined || across.is === "none" || faces === undefined || fitting.length === 0) return;
    if (faces !== "unknown" && this.known.faces.includes(faces) && !fitting.includes(faces))
      this.add("wrong-faces", this.column?.kind === "hold" ? "is" : "faces", say.facesOfAnotherHold(fitting));
  }

  measurement(m: Measurement): void {
    if (m.readings.length === 0) this.add("empty-value", "measured.readings", say.noReadings);
    for (const reading of m.readings) this.reading(reading);
    this.word(m.tool, this.known.tools, "unknown-tool", "measured.tool");
    if (m.condition !== undefined)
      this.word(m.condition, this.known.conditions, "unknown-condition", "measured.condition");
    if (m.faces !== undefined) this.word(m.faces, this.known.faces, "unknown-faces", "measured.faces");
    if (m.on !== undefined) this.day(m.on, "measured.on");
    if (m.by !== undefined) this.id(m.by, "measured.by");
  }

  private reading(text: string): void {
    const key = "measured.readings";
    if (!this.text(text, key)) return;
    const read = readingOf(text);
    if (read === null) this.add("missing-unit", key, say.noUnit(text));
    else if (read.value === null) this.add("bad-number", key, say.badNumber(text, false));
    else this.plausible(read.value, text, key);
  }

  /** What only a value that is called measured can do wrong. */
  readingsOf(told: Cell, value: Figure | "" | null, under: string): void {
    if (this.column?.kind !== "length" || value === null || value === "" || told.basis !== "measured") return;
    const sourced = told.source !== undefined && told.source.length > 0;
    if (told.measured === undefined || told.measured.length === 0) {
      if (!sourced) this.add("missing-readings", `${under}measured`, say.noReadings);
      return;
    }
    if (value.from !== value.to) return;
    const readings = told.measured
      .filter((m) => m.faces === undefined || !this.known.faces.includes(m.faces) || m.faces === told.faces)
      .flatMap((m) => m.readings.map((r) => readingOf(r)?.value ?? null))
      .filter((r): r is Exact => r !== null);
    if (readings.length === 0) return;
    if (readings.every((r) => r - value.from > slack) || readings.every((r) => value.from - r > slack))
      this.add("not-as-measured", "is", say.notAsMeasured);
  }
}

// A basis nobody knows was reported; a source beside it is judged when it is mended.
function weak(basis: string | undefined): boolean {
  return basis === undefined || basis === "memory" || basis === "common-practice";
}

// A reading is a length that ends in its unit; null for anything else.
function readingOf(text: string): { value: Exact | null } | null {
  const parts = /^(.*) (in|mm)$/.exec(text);
  return parts === null ? null : { value: exact(parts[1] ?? "", parts[2] ?? "") };
}

function isDay(text: string): boolean {
  const parts = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/.exec(text);
  if (parts === null) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day >= 1 && day <= (days[month - 1] ?? 0);
}

// In UTF-8, as the loader counts.
function bytesOf(text: string): number {
  return [...text].reduce((n, c) => {
    const code = c.codePointAt(0) ?? 0;
    return n + (code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4);
  }, 0);
}

function codeOf(text: string): string {
  const code = invisible.exec(text)?.[0]?.codePointAt(0) ?? 0;
  return `U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
}
