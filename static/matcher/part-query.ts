// A query about a table without joints, from a stranger, checked word by word. Whatever
// comes in, what goes out is usable and a list of complaints; nothing throws.
import type { Condition, Tool, Unit } from "./types";
import type { Between, Edges, PartColumn, PartComplaint, PartTable } from "./part-types";
import { holeSign } from "./part-circle";
import { parseReading, type Reading } from "./reading";
import * as say from "./speech-part-query";
import { conditions, tools, unitWords } from "./words";

export const betweens: readonly Between[] = ["next", "farthest"];
export const allEdges: readonly Edges[] = ["outer", "inner", "same", "centres"];

/** Most readings of one column that are looked at. */
export const mostPartReadings = 100;

/** The name of a hole's diameter among the columns. */
export const holeKey = "hole-diameter";

export interface AskedPart {
  counts: Map<string, number>;
  lengths: Map<string, Reading[]>;
  between: Between;
  edges: Edges;
  hole: Reading[];
  tool: Tool;
  condition: Condition;
  complaints: PartComplaint[];
}

type Loose = Record<string, unknown>;

export function understandPart(table: PartTable, query: unknown): AskedPart {
  const asked: AskedPart = {
    counts: new Map(),
    lengths: new Map(),
    between: "next",
    edges: "outer",
    hole: [],
    tool: "digital-caliper",
    condition: "used",
    complaints: [],
  };
  const { complaints } = asked;
  const complain = (says: string, text = "", column = "query", index = 0): void => {
    complaints.push({ column, index, text, says });
  };
  if (!isObject(query) || !isObject(query["values"])) {
    complain(say.notQuery());
    return asked;
  }
  const word = <T extends string>(key: string, words: readonly T[], instead: T): T => {
    const value = query[key];
    if (value === undefined || value === null || value === "") return instead;
    const found = words.find((w) => w === value);
    if (found !== undefined) return found;
    const text = shorten(typeof value === "string" ? value : typeof value);
    complain(say.unknownWord(key, text, words), text);
    return instead;
  };
  if (query["table"] !== table.id) {
    const text = shorten(typeof query["table"] === "string" ? query["table"] : "");
    complain(say.otherTable(text, table.id), text);
  }
  asked.between = word("between", betweens, asked.between);
  asked.edges = word("edges", allEdges, asked.edges);
  asked.tool = word("tool", tools, asked.tool);
  asked.condition = word("condition", conditions, asked.condition);
  const unit = query["unit"] === undefined ? undefined : word<Unit>("unit", unitWords, "in");

  const values = query["values"];
  for (const key of Object.keys(values)) {
    if (!table.columns.some((c) => c.id === key)) complain(say.noColumn(shorten(key), table), shorten(key));
  }
  for (const column of table.columns) {
    if (!Object.keys(values).includes(column.id)) continue;
    const list = texts(values[column.id], column.id, complain);
    if (list.length === 0) continue;
    if (column.match === "exact") count(column, list, asked, complain);
    else {
      const readings = lengths(list, column.id, unit, complain, column);
      if (readings.length > 0) asked.lengths.set(column.id, readings);
    }
  }
  asked.hole = lengths(texts(query["hole"], holeKey, complain), holeKey, unit, complain);
  circleNeeds(table, asked, complain);
  return asked;
}

type Complain = (says: string, text?: string, column?: string, index?: number) => void;

function texts(list: unknown, column: string, complain: Complain): string[] {
  if (list === undefined || list === null) return [];
  if (!Array.isArray(list)) {
    complain(say.notList(), "", column);
    return [];
  }
  if (list.length > mostPartReadings)
    complain(say.tooMany(list.length, mostPartReadings), "", column, mostPartReadings);
  const out: string[] = [];
  list.slice(0, mostPartReadings).forEach((text: unknown, index) => {
    if (typeof text === "string") out.push(text);
    else complain(say.notText(), "", column, index);
  });
  return out;
}

// A count is the same each time or it is no count.
function count(column: PartColumn, list: readonly string[], asked: AskedPart, complain: Complain): void {
  const counts: number[] = [];
  list.forEach((text, index) => {
    const digits = /^\s*(\d{1,4})\s*$/.exec(text)?.[1];
    const n = Number(digits ?? "0");
    if (n > 0) counts.push(n);
    else complain(say.notCount(column.label), shorten(text), column.id, index);
  });
  const [first] = counts;
  if (first === undefined) return;
  const other = counts.find((n) => n !== first);
  if (other !== undefined) complain(say.countsDiffer(column.label, first, other), String(other), column.id);
  else asked.counts.set(column.id, first);
}

function lengths(
  list: readonly string[],
  id: string,
  unit: Unit | undefined,
  complain: Complain,
  column?: PartColumn,
): Reading[] {
  const out: Reading[] = [];
  list.forEach((text, index) => {
    const reading = parseReading(text, unit);
    if (!reading.ok) complain(reading.says, shorten(text), id, index);
    else if (column !== undefined && !plausible(reading.mm, column))
      complain(say.noSuchLength(column, reading), reading.text, id, index);
    else out.push(reading);
  });
  return out;
}

// The head of a table says what its figures may be; a part may be outside that, but not by far. Of a
// bolt circle a chord is measured, which may be much shorter.
function plausible(mm: number, column: PartColumn): boolean {
  const least = column.match === "circle" ? 1 : Number(column.least) / 2;
  return mm >= least && mm <= 2 * Number(column.greatest);
}

// A distance between holes says nothing without their number, and edges nothing without a hole.
function circleNeeds(table: PartTable, asked: AskedPart, complain: Complain): void {
  const circle = table.columns.find((c) => c.match === "circle");
  if (circle === undefined || !asked.lengths.has(circle.id)) return;
  const holes = holesOf(table);
  const counted = holes === undefined ? undefined : asked.counts.get(holes.id);
  if (counted === undefined) {
    if (!asked.complaints.some((c) => c.column === holes?.id)) complain(say.howManyHoles(), "", holes?.id ?? circle.id);
  } else if (counted < 2) complain(say.oneHole(), String(counted), holes?.id ?? circle.id);
  if (holeSign(asked.edges) !== 0 && asked.hole.length === 0 && !asked.complaints.some((c) => c.column === holeKey))
    complain(say.howWideHole(asked.edges), "", holeKey);
}

/** The column that counts the holes of a table with a bolt circle. */
export function holesOf(table: PartTable): PartColumn | undefined {
  return table.columns.some((c) => c.match === "circle") ? table.columns.find((c) => c.match === "exact") : undefined;
}

export function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

function isObject(x: unknown): x is Loose {
  return typeof x === "object" && x !== null && !Array.isArray(x);
}
