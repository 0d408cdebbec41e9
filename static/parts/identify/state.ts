// What the form holds: plain data, changed in place by the parts and read by the query.
import type { Condition, Faces, Hold, Measurand, Quantity, Query, QueryEnd, Tool, Unit } from "../../matcher/types";

export interface EndState {
  hold: Hold | null; // null: nothing chosen yet, which is asked as unknown
  faces?: Faces; // left out: the faces that go with the hold
  taken: "joint" | "yoke";
  cap: string[];
  across: string[];
  clip: string[];
  out: Partial<Record<Measurand, string[]>>; // taken out to be measured again; never asked, may be put back
}

export interface State {
  ends: EndState[]; // one or two
  unit: Unit;
  tool: Tool;
  condition: Condition;
}

export const quantities: Quantity[] = ["cap", "across"];
export const measurands: Measurand[] = [...quantities, "clip"];

export function emptyEnd(): EndState {
  return { hold: null, taken: "joint", cap: [], across: [], clip: [], out: {} };
}

export function emptyState(): State {
  return { ends: [emptyEnd()], unit: "in", tool: "digital-caliper", condition: "used" };
}

/** Whether a clip belongs between what is measured on this end and its joint. */
export function hasClips(end: EndState): boolean {
  return end.taken === "yoke" && CapspanCore.yokeOf(end.hold ?? "unknown").clip;
}

/** How many readings of an end the query asks with; a clip's stay behind when the end has none. */
function countReadings(end: EndState): number {
  return end.cap.length + end.across.length + (hasClips(end) ? end.clip.length : 0);
}

export function hasReadings(state: State): boolean {
  return state.ends.some((end) => countReadings(end) > 0);
}

/** The query the core answers. An end that was added and not filled yet is left out. */
export function toQuery(state: State): Query {
  const ends = state.ends.filter((end, n) => n === 0 || end.hold !== null || countReadings(end) > 0);
  return { ends: ends.map(toQueryEnd), unit: state.unit, tool: state.tool, condition: state.condition };
}

function toQueryEnd(end: EndState): QueryEnd {
  const query: QueryEnd = { hold: end.hold ?? "unknown" };
  if (end.taken === "yoke") query.taken = "yoke";
  else if (end.faces) query.faces = end.faces; // a yoke's distance goes with its hold
  for (const quantity of measurands) {
    if (end[quantity].length && (quantity !== "clip" || hasClips(end))) query[quantity] = [...end[quantity]];
  }
  return query;
}

/** The state that asks the query. */
export function fromQuery(query: Query, unit: Unit): State {
  const empty = emptyState();
  const ends = query.ends.slice(0, 2).map(fromQueryEnd);
  return {
    ends: ends.length ? ends : empty.ends,
    unit: query.unit ?? leading(ends) ?? unit,
    tool: query.tool ?? empty.tool,
    condition: query.condition ?? empty.condition,
  };
}

function fromQueryEnd(query: QueryEnd): EndState {
  const end: EndState = { ...emptyEnd(), hold: query.hold, taken: query.taken ?? "joint" };
  if (query.faces) end.faces = query.faces;
  for (const quantity of measurands) end[quantity] = [...(query[quantity] ?? [])];
  return end;
}

/** The unit the readings of an address are in, so that its reader goes on in the same one. */
function leading(ends: EndState[]): Unit | null {
  const first = ends.flatMap((end) => [...end.cap, ...end.across])[0];
  if (!first) return null;
  return /mm\s*$/i.test(first) ? "mm" : "in";
}

/** Splits what was typed or pasted. A comma without a space stands before decimals, in every language: 27,28 is one
 *  reading. It parts readings only between points; 27.5,28 is left whole, and the core asks which is meant. */
export function splitReadings(text: string): string[] {
  const parts = text.split(/[\n\r\t;]+|,\s+/).flatMap((p) => (/\..*,.*\./.test(p) ? p.split(",") : [p]));
  return parts.map((p) => p.trim().replace(/\s+/g, " ")).filter((p) => p !== "");
}

/** A bare number gets its unit when it is read, so that switching the unit later changes no reading. A fraction is
 *  inches whatever the switch says. */
export function withUnit(text: string, unit: Unit): string {
  if (/[a-z"″”']/i.test(text)) return text;
  return `${text} ${/[/⁄½¼¾⅛⅜⅝⅞]/.test(text) ? "in" : unit}`;
}
