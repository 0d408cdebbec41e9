// From what somebody typed to the cell it makes of the one in the chart, with every problem. Pure: the page shows it,
// the tests of package build run it by itself.
import { local } from "../../matcher/speech-number";
import type { Faces, Unit } from "../../matcher/types";
import { checkCell, checkSource, type Problem } from "./check";
import type { Cell, Column, Known, Measurement, NewSource, Row, Told } from "./facts";
import { cellText } from "./yaml";
import { typedWords as say } from "words:correct";

export { checkCell, checkSource } from "./check";
export { blank, invisible } from "./letters";
export { applied, editCell, editSources, patchOf } from "./patch";
export { cellText } from "./yaml";

/** How somebody knows: a document prints it, they measured it, or they saw or counted it. */
export type Way = "published" | "measured" | "seen";

export interface Typed {
  way: Way;
  value: string; // as typed
  unit: string; // of a bare number
  faces: string; // "": as the chart has them
  facesPrinted: boolean; // the document says between which faces
  source: string; // the id, "+" for a new one, "" for none
  fresh: { kind: string; title: string; publisher: string; edition: string; date: string; where: string };
  at: string;
  beside: boolean; // sources differ: the chart's own figure stays
  tool: string;
  condition: string;
  readings: string; // one a line
  on: string;
  by: string;
}

export interface Proposal {
  cell: Cell;
  source?: NewSource;
  understood: string[]; // what was made of the typed figures
  problems: Problem[];
}

/** Ways that make sense for a column. */
export function waysFor(column: Column): Way[] {
  if (column.kind === "length") return ["published", "measured"];
  return column.kind === "torque" || column.kind === "number" ? ["published"] : ["published", "seen"];
}

export function propose(typed: Typed, column: Column, row: Row, old: Cell, known: Known): Proposal {
  const out: Proposal = { cell: old, understood: [], problems: [] };
  if (typed.way === "measured") measured(out, typed, column, old);
  else told(out, typed, column, old, known);
  if (out.problems.length > 0) return out;
  const sources = out.source === undefined ? known.sources : [...known.sources, out.source.id];
  out.problems = [
    ...(out.source === undefined ? [] : checkSource(out.source, known)),
    ...checkCell(out.cell, column, row, { ...known, sources }),
  ];
  if (out.problems.length === 0 && cellText(out.cell) === cellText(old))
    out.problems.push({ rule: "nothing-new", key: "is", says: say.nothingNew });
  return out;
}

// ---- a document prints it, or somebody saw it

function told(out: Proposal, typed: Typed, column: Column, old: Cell, known: Known): void {
  const figure = typedFigure(typed.value, column, typed.unit);
  if (figure.refused !== undefined) {
    out.problems.push({ rule: "bad-number", key: "is", says: figure.refused });
    return;
  }
  if (figure.understood !== undefined) out.understood.push(figure.understood);
  const value: Told = { is: figure.is };
  if (figure.unit !== undefined && figure.unit !== column.unit) value.unit = figure.unit;
  if (typed.way === "seen") {
    out.cell = kept(old, { ...value, basis: "measured" });
    return;
  }
  value.basis = "published";
  if (typed.source === "+") {
    out.source = freshSource(typed.fresh, known.sources);
    value.source = [out.source.id];
  } else if (typed.source !== "") value.source = [typed.source];
  if (typed.at !== "") value.at = typed.at;
  if (column.faces === true && value.is !== "none") between(value, typed, old);
  out.cell = typed.beside ? { ...old, others: [...(old.others ?? []), noFacesBasis(value)] } : kept(old, value);
}

// The faces are as well founded as the document makes them, or as they were.
function between(value: Told, typed: Typed, old: Cell): void {
  const faces = typed.faces === "" ? old.faces : (typed.faces as Faces);
  if (faces === undefined) return;
  value.faces = faces;
  if (typed.facesPrinted) return;
  const before = faces === old.faces ? (old.facesBasis ?? old.basis ?? "memory") : "memory";
  if (before !== "published") value.facesBasis = before;
}

function noFacesBasis({ facesBasis: _, ...value }: Told): Told {
  return value;
}

// A new figure in the old one's place: what stands beside it stays, between the faces it was taken between.
function kept(old: Cell, value: Told): Cell {
  const cell: Cell = { ...value };
  if (old.others !== undefined) cell.others = old.others;
  if (old.measured !== undefined) cell.measured = old.measured;
  const { faces } = old;
  if (faces === undefined || faces === value.faces) return cell;
  if (cell.others !== undefined) cell.others = cell.others.map((o) => ({ faces, ...o }));
  if (cell.measured !== undefined) cell.measured = cell.measured.map((m) => ({ faces, ...m }));
  return cell;
}

function freshSource(fresh: Typed["fresh"], taken: readonly string[]): NewSource {
  const { kind, title, publisher } = fresh;
  const source: NewSource = { id: freshID(title, taken), kind, title, publisher };
  for (const key of ["edition", "date", "where"] as const) if (fresh[key] !== "") source[key] = fresh[key];
  return source;
}

function freshID(title: string, taken: readonly string[]): string {
  const words = title.toLowerCase().match(/[a-z0-9]+/g) ?? ["source"];
  const stem = words.join("-").slice(0, 32).replace(/-$/, "");
  let id = stem;
  for (let n = 2; taken.includes(id); n++) id = `${stem}-${n}`;
  return id;
}

// ---- somebody measured it

function measured(out: Proposal, typed: Typed, column: Column, old: Cell): void {
  const readings: string[] = [];
  for (const line of typed.readings.split(/[\n;]/)) {
    if (line.trim() === "") continue;
    const reading = CapspanMeasured.parseReading(line, typed.unit as Unit);
    if (reading.ok) {
      readings.push(plainly(reading.text));
      if (plainly(reading.text) !== line.trim())
        out.understood.push(say.reading(line.trim(), local(plainly(reading.text))));
    } else
      out.problems.push({ rule: "bad-number", key: "measured.readings", says: say.refused(line.trim(), reading.says) });
  }
  if (out.problems.length > 0) return;
  const m: Measurement = { readings, tool: typed.tool as Measurement["tool"] };
  if (column.condition === true) m.condition = typed.condition as NonNullable<Measurement["condition"]>;
  if (typed.on !== "") m.on = typed.on;
  if (typed.by !== "") m.by = typed.by;
  const faces = column.faces === true && typed.faces !== "" ? (typed.faces as Faces) : old.faces;
  const given = old.is !== "unknown" && old.is !== "none";
  if (given && faces !== undefined && faces !== old.faces) m.faces = faces;
  const all = [...(old.measured ?? []), m];
  out.cell = { ...old, measured: all };
  if (readings.length === 0 || given) return;
  out.cell = { is: "unknown", basis: "measured", measured: all, ...(faces === undefined ? {} : { faces }) };
  meanOf(out.cell, column);
}

// Where the chart has nothing, the mean of the readings is the figure, with as many digits as the readings.
function meanOf(cell: Cell, column: Column): void {
  const list = cell.measured ?? [];
  const { combined } = CapspanMeasured.comesTo({
    column: column.id === "cap" || column.id === "across" ? column.id : "length",
    ...(cell.faces === undefined ? {} : { faces: cell.faces }),
    measurements: list,
  });
  if (combined === null) return;
  const readings = list.flatMap((m) => m.readings);
  const unit = readings.every((r) => r.endsWith(" in")) ? "in" : "mm";
  const digits = readings
    .filter((r) => r.endsWith(unit))
    .map((r) => (r.includes("/") ? 3 : (/\.(\d+)/.exec(r)?.[1] ?? "").length));
  cell.is = (combined.mm / (unit === "in" ? 25.4 : 1)).toFixed(Math.max(...digits));
  if (unit !== column.unit) cell.unit = unit;
}

// ---- numbers as people type them

interface Figure {
  is: string;
  unit?: string;
  understood?: string;
  refused?: string;
}

/** A reading's canonical text without noughts in front, which the tables do not take. */
function plainly(text: string): string {
  return text.replace(/^0+(?=\d)/, "");
}

/** What a typed figure is in a cell: its digits as they are, its unit, and what was understood. */
export function typedFigure(input: string, column: Column, unit: string): Figure {
  const text = input.trim();
  if (column.kind === "hold" || column.kind === "text" || text === "unknown" || text === "none") return { is: text };
  const range = /^([\d.,]+)\s*[-\u2010-\u2014]\s*([\d.,]+)\s*([^\d]*)$/.exec(text);
  if (column.kind === "length" && !(range !== null && column.range === true)) {
    const reading = CapspanMeasured.parseReading(text, unit as Unit);
    if (!reading.ok) return { is: text, refused: reading.says };
    const is = plainly(reading.text).replace(/ (in|mm)$/, "");
    return {
      is,
      unit: reading.unit,
      understood: say.understood(local(plainly(reading.text)), other(reading.mm, reading.unit)),
    };
  }
  const [, from, to, word] = range ?? [];
  const number = range === null ? /^(.*?)\s*([a-zA-Z"][^\d]*)?$/.exec(text) : null;
  const is = range === null ? pointed(number?.[1] ?? text) : `${pointed(from ?? "")}-${pointed(to ?? "")}`;
  if (column.units === undefined) return { is: range === null ? pointed(text) : is };
  const written = (range === null ? number?.[2] : word)?.trim() ?? "";
  const named = written === "" ? unit : unitOf(written);
  if (named === undefined || !column.units.includes(named))
    return { is, refused: say.whichUnit(written, column.units) };
  return { is, unit: named, understood: say.understood(local(`${is} ${named}`), "") };
}

function pointed(number: string): string {
  return number.replace(",", ".");
}

function unitOf(word: string): string | undefined {
  const w = word.toLowerCase().replace(/[\s.·*-]/g, "");
  if (["lbfft", "ftlbf", "lbft", "ftlb", "ftlbs", "lbsft"].includes(w)) return "lbf.ft";
  if (["nm"].includes(w)) return "N.m";
  return { in: "in", inch: "in", '"': "in", mm: "mm" }[w];
}

function other(mm: number, unit: Unit): string {
  return local(unit === "in" ? `${mm.toFixed(3)} mm` : `${(mm / 25.4).toFixed(4)} in`);
}
