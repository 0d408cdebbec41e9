// A query from a stranger, checked word by word. Whatever comes in, what goes out is a
// usable query and a list of complaints; nothing throws.
import type { Complaint, Condition, Faces, Hold, Measurand, Quantity, Tool, Unit } from "./types";
import * as given from "./given";
import { parseReading, type Reading } from "./reading";
import * as say from "./speech-query";
import * as sayYoke from "./speech-yokes";
import { allFaces, conditions, facesFor, holds, tools, unitWords } from "./words";

/** Most readings of one quantity at one end that are looked at. */
export const mostReadings = 100;

export interface AskedEnd {
  hold: Hold;
  faces: Faces;
  taken: "joint" | "yoke";
  cap: Reading[]; // of a yoke the bores
  across: Reading[]; // of a yoke the distance its hold has
  clip: Reading[]; // of a yoke only
  beyond: Record<Quantity, Reading[]>; // understood, but no joint has such a length
}

export interface Asked {
  ends: AskedEnd[];
  tool: Tool;
  condition: Condition;
  complaints: Complaint[];
  lengths: number; // how many of the complaints are of lengths no joint has: a slip may explain those
}

const { yokes } = sayYoke;

type Loose = Record<string, unknown>;

/** understand reads a query of any shape. */
export function understand(query: unknown): Asked {
  const asked: Asked = { ends: [], tool: "digital-caliper", condition: "used", complaints: [], lengths: 0 };
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
    else asked.ends.push(understandEnd(end, n, unit, asked, complainHere));
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
  asked: Asked,
  complain: (says: string, text?: string) => void,
): AskedEnd {
  const hold = word<Hold>(end["hold"], holds, "unknown", "hold", complain);
  const taken = word<"joint" | "yoke">(end["taken"], ["joint", "yoke"], "joint", "taken", complain);
  const right = taken === "yoke" ? [yokes[hold].faces] : facesFor(hold);
  let faces = right[0] ?? "unknown";
  if (end["faces"] !== undefined) {
    faces = word<Faces>(end["faces"], allFaces, faces, "faces", complain);
    if (faces !== "unknown" && !right.includes(faces))
      complain(taken === "yoke" ? say.yokeFaces(hold, right) : say.facesDoNotGo(hold, faces, right), faces);
  }

  const { complaints } = asked;
  const beyond: Record<Quantity, Reading[]> = { cap: [], across: [] };
  const read = (quantity: Measurand, beyond: Reading[]): Reading[] =>
    understandReadings(end[quantity], quantity, n, unit, complaints, beyond);
  const out: AskedEnd = {
    hold,
    faces,
    taken,
    cap: read("cap", beyond.cap),
    across: read("across", beyond.across),
    clip: read("clip", []),
    beyond,
  };
  asked.lengths += beyond.cap.length + beyond.across.length;
  if (taken === "yoke") onYoke(out, n, complaints);
  else if (out.clip.length > 0) complaints.push(about(n, "clip", out.clip[0], sayYoke.clipOfJoint()));
  plausible(out, n, asked);
  return out;
}

// What a yoke of that hold cannot tell.
function onYoke(end: AskedEnd, n: number, complaints: Complaint[]): void {
  const yoke = yokes[end.hold];
  const useless: Record<Measurand, boolean> = { cap: yoke.bore === "", across: yoke.across === null, clip: !yoke.clip };
  const first = measurands.find((m) => useless[m] && end[m].length > 0);
  if (first === undefined) return;
  const says = first === "clip" && yoke.instead === "" ? sayYoke.noClip() : yoke.instead;
  complaints.push(about(n, first, end[first][0], says));
}

const measurands: readonly Measurand[] = ["cap", "across", "clip"];

function about(end: number, quantity: Measurand, first: Reading | undefined, says: string): Complaint {
  return { end, quantity, index: 0, text: first?.text ?? "", says };
}

function understandReadings(
  list: unknown,
  quantity: Measurand,
  end: number,
  unit: Unit | undefined,
  complaints: Complaint[],
  beyond: Reading[],
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
    else if (!possible(reading.mm, quantity)) {
      complain(index, reading.text, say.noSuchLength(quantity, reading));
      beyond.push(reading);
    } else out.push(reading);
  });
  return out;
}

function possible(mm: number, quantity: Measurand): boolean {
  switch (quantity) {
    case "cap":
      return mm >= given.leastCap && mm <= given.greatestCap;
    case "across":
      return mm >= given.leastAcross && mm <= given.greatestAcross;
    case "clip":
      return mm >= given.leastClip && mm <= given.greatestClip;
  }
}

// A cap wider than the whole joint: the two were put in each other's place.
function plausible(end: AskedEnd, n: number, asked: Asked): void {
  const widest = Math.max(...end.cap.map((r) => r.mm));
  const narrowest = Math.min(...end.across.map((r) => r.mm));
  if (end.cap.length > 0 && end.across.length > 0 && widest >= narrowest) {
    asked.complaints.push({ end: n, quantity: "query", index: 0, text: "", says: say.capWiderThanAcross() });
    asked.lengths += 1;
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
