// A cell and a source as the tables are written: in the order of capspan fmt, digits as they are, everything else that
// could be read as something else in quotes.
import type { Cell, Measurement, NewSource, Told } from "./facts";
import { surrogate, written } from "./letters";

const plain = /^[A-Za-z0-9]([A-Za-z0-9 ._/()+-]*[A-Za-z0-9._/()+-])?$/;
const reserved = /^(null|true|false|yes|no|on|off|y|n)$/i;

/** One text as YAML reads it back; what shows nothing is written out by its code. */
export function scalar(text: string): string {
  if (plain.test(text) && !reserved.test(text)) return text;
  let out = "";
  for (const c of text) {
    const code = c.codePointAt(0) ?? 0;
    if (c === '"' || c === "\\") out += `\\${c}`;
    else if (written(code))
      out += code > 0xffff ? `\\U${hex(code, 8)}` : `\\u${hex(surrogate(code) ? 0xfffd : code, 4)}`;
    else out += c;
  }
  return `"${out}"`;
}

const hex = (code: number, digits: number): string => code.toString(16).padStart(digits, "0");

type Pair = [key: string, value: string | undefined];

function braces(pairs: Pair[]): string {
  return `{${pairs.flatMap(([key, value]) => (value === undefined ? [] : [`${key}: ${value}`])).join(", ")}}`;
}

function maybe(text: string | undefined): string | undefined {
  return text === undefined ? undefined : scalar(text);
}

function list(texts: readonly string[] | undefined): string | undefined {
  return texts === undefined ? undefined : `[${texts.map(scalar).join(", ")}]`;
}

function toldPairs(told: Told): Pair[] {
  return [
    ["is", scalar(told.is)],
    ["unit", maybe(told.unit)],
    ["faces", maybe(told.faces)],
    ["faces-basis", maybe(told.facesBasis)],
    ["basis", maybe(told.basis)],
    ["source", told.source?.length === 0 ? undefined : list(told.source)],
    ["at", maybe(told.at)],
  ];
}

function measurementPairs(m: Measurement): Pair[] {
  return [
    ["readings", list(m.readings)],
    ["tool", scalar(m.tool)],
    ["condition", maybe(m.condition)],
    ["faces", maybe(m.faces)],
    ["on", maybe(m.on)],
    ["by", maybe(m.by)],
  ];
}

/** The braces of a cell. */
export function cellText(cell: Cell): string {
  const items = (all: readonly string[] | undefined): string | undefined =>
    all === undefined || all.length === 0 ? undefined : `[${all.join(", ")}]`;
  return braces([
    ...toldPairs(cell),
    ["others", items(cell.others?.map((o) => braces(toldPairs(o))))],
    ["measured", items(cell.measured?.map((m) => braces(measurementPairs(m))))],
  ]);
}

/** An entry of the registry, a line a key. */
export function sourceLines(source: NewSource, indent: string): string[] {
  const keys = ["id", "kind", "title", "publisher", "edition", "date", "where"] as const;
  return keys.flatMap((key, n) => {
    const text = source[key];
    return text === undefined ? [] : [`${indent}${n === 0 ? "- " : "  "}${key}: ${scalar(text)}`];
  });
}
