// A query from a stranger, checked word by word. Whatever comes in, what goes out is a
// usable query and a list of complaints; nothing throws.
import type { Complaint, Condition, Faces, Hold, Quantity, Tool, Unit } from "./types";
import * as given from "./given";
import { parseReading, type Reading } from "./reading";
import * as say from "./speech-query";
import { allFaces, conditions, facesFor, holds, tools, unitWords } from "./words";

/** Most readings of one quantity at one end that are looked at. */
export const mostReadings = 100;

export interface AskedEnd {
  hold: Hold;
  faces: Faces;
  cap: Reading[];
  across: Reading[];
}

export interface Asked {
  ends: AskedEnd[];
  tool: Tool;
  condition: Condition;
  complaints: Complaint[];
}

type Loose = Record<string, unknown>;

/** understand reads a query of any shape. */
export function understand(query: unknown): Asked {
  const asked: Asked = { ends: [], tool: "digital-caliper", condition: "used", complaints: [] };
  const complain = (says: string, text = "", end = 0): void => {
    asked.complaints.push({ end, quantity: "query", index: 0, text, says });
  };
  if (!isObject(query)) {
    complain(say.notQuery());
    return asked;
  }
  asked.tool = word(query["tool"], tools, asked.tool, "tool", complain);
  asked.condition = word(query["condition"], conditions, asked.condition, "condition", complain);
  const unit = query["unit"] === undefined ? undefined : word<Unit>(query["unit"], unitWords, "in", "unit", complain);

  const ends = query["ends"];
  if (!Array.isArray(ends) || ends.length < 1 || ends.length > 2) {
    complain(say.howManyEnds(Array.isArray(ends) ? ends.length : 0));
    return asked;
  }
  ends.forEach((end: unknown, n) => {
    const complainHere = (says: string, text = ""): void => complain(says, text, n);
    if (!isObject(end)) complainHere(say.notEnd());
    else asked.ends.push(understandEnd(end, n, unit, asked.complaints, complainHere));
  });
  asked.ends.forEach((end, n) => {
    if (asked.complaints.length === 0 && end.cap.length + end.across.length === 0 && asked.ends.length === 2) {
      complain(say.emptyEnd(n), "", n);
    }
  });
  return asked;
}

function understandEnd(
  end: Loose,
  n: number,
  unit: Unit | undefined,
  complaints: Complaint[],
  complain: (says: string, text?: string) => void,
): AskedEnd {
  const hold = word<Hold>(end["hold"], holds, "unknown", "hold", complain);
  let faces = facesFor(hold)[0] ?? "unknown";
  if (end["faces"] !== undefined) {
    faces = word<Faces>(end["faces"], allFaces, faces, "faces", complain);
    if (faces !== "unknown" && !facesFor(hold).includes(faces))
      complain(say.facesDoNotGo(hold, faces, facesFor(hold)), faces);
  }
  const taken = word<"joint" | "yoke">(end["taken"], ["joint", "yoke"], "joint", "taken", complain);
  if (taken === "yoke") complain(say.yoke(), taken);

  const read = (quantity: Quantity): Reading[] => understandReadings(end[quantity], quantity, n, unit, complaints);
  const out: AskedEnd = { hold, faces, cap: read("cap"), across: read("across") };
  plausible(out, n, complaints);
  return out;
}

function understandReadings(
  list: unknown,
  quantity: Quantity,
  end: number,
  unit: Unit | undefined,
  complaints: Complaint[],
): Reading[] {
  if (list === undefined || list === null) return [];
  const complain = (index: number, text: string, says: string): void => {
    complaints.push({ end, quantity, index, text, says });
  };
  if (!Array.isArray(list)) {
    complain(0, "", say.notReadings(quantity));
    return [];
  }
  if (list.length > mostReadings) complain(mostReadings, "", say.tooMany(list.length, mostReadings));
  const out: Reading[] = [];
  list.slice(0, mostReadings).forEach((text: unknown, index) => {
    if (typeof text !== "string") {
      complain(index, "", say.notText());
      return;
    }
    const reading = parseReading(text, unit);
    if (!reading.ok) complain(index, shorten(text), reading.says);
    else if (!possible(reading.mm, quantity)) complain(index, reading.text, say.noSuchLength(quantity, reading));
    else out.push(reading);
  });
  return out;
}

function possible(mm: number, quantity: Quantity): boolean {
  return quantity === "cap"
    ? mm >= given.leastCap && mm <= given.greatestCap
    : mm >= given.leastAcross && mm <= given.greatestAcross;
}

// A cap wider than the whole joint: the two were put in each other's place.
function plausible(end: AskedEnd, n: number, complaints: Complaint[]): void {
  const widest = Math.max(...end.cap.map((r) => r.mm));
  const narrowest = Math.min(...end.across.map((r) => r.mm));
  if (end.cap.length > 0 && end.across.length > 0 && widest >= narrowest) {
    complaints.push({ end: n, quantity: "query", index: 0, text: "", says: say.capWiderThanAcross() });
  }
}

function word<T extends string>(
  value: unknown,
  words: readonly T[],
  instead: T,
  name: string,
  complain: (says: string, text?: string) => void,
): T {
  if (value === undefined || value === null || value === "") return instead;
  const found = words.find((w) => w === value);
  if (found === undefined) {
    const text = shorten(typeof value === "string" ? value : typeof value);
    complain(say.unknownWord(name, text, words), text);
    return instead;
  }
  return found;
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

function isObject(x: unknown): x is Loose {
  return typeof x === "object" && x !== null && !Array.isArray(x);
}
