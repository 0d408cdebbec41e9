// What the form holds: plain data, changed in place by the parts and read by the query.
import type { Condition, Faces, Hold, Quantity, Query, QueryEnd, Tool, Unit } from "../../matcher/types";

export interface EndState {
  hold: Hold | null; // null: nothing chosen yet, which is asked as unknown
  faces?: Faces; // left out: the faces that go with the hold
  taken?: "joint" | "yoke"; // carried through from an address; left out: joint
  cap: string[];
  across: string[];
}

export interface State {
  ends: EndState[]; // one or two
  unit: Unit;
  tool: Tool;
  condition: Condition;
}

export const quantities: Quantity[] = ["cap", "across"];

export function emptyEnd(): EndState {
  return { hold: null, cap: [], across: [] };
}

export function emptyState(): State {
  return { ends: [emptyEnd()], unit: "in", tool: "digital-caliper", condition: "used" };
}

export function hasReadings(state: State): boolean {
  return state.ends.some((end) => end.cap.length + end.across.length > 0);
}

/** The query the core answers. An end that was added and not filled yet is left out. */
export function toQuery(state: State): Query {
  const ends = state.ends.filter((end, n) => n === 0 || end.hold !== null || end.cap.length + end.across.length > 0);
  return { ends: ends.map(toQueryEnd), unit: state.unit, tool: state.tool, condition: state.condition };
}

function toQueryEnd(end: EndState): QueryEnd {
  const query: QueryEnd = { hold: end.hold ?? "unknown" };
  if (end.faces) query.faces = end.faces;
  if (end.taken) query.taken = end.taken;
  if (end.cap.length) query.cap = [...end.cap];
  if (end.across.length) query.across = [...end.across];
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
  const end: EndState = { hold: query.hold, cap: [...(query.cap ?? [])], across: [...(query.across ?? [])] };
  if (query.faces) end.faces = query.faces;
  if (query.taken) end.taken = query.taken;
  return end;
}

/** The unit the readings of an address are in, so that its reader goes on in the same one. */
function leading(ends: EndState[]): Unit | null {
  const first = ends.flatMap((end) => [...end.cap, ...end.across])[0];
  if (!first) return null;
  return /mm\s*$/i.test(first) ? "mm" : "in";
}

/** Splits what was typed or pasted. A comma parts readings only beside a decimal point: 27,00 is one reading. */
export function splitReadings(text: string): string[] {
  const parts = text.split(/[\n\r\t;]+|,\s+/).flatMap((p) => (p.includes(".") ? p.split(",") : [p]));
  return parts.map((p) => p.trim().replace(/\s+/g, " ")).filter((p) => p !== "");
}

/** A bare number gets its unit when it is read, so that switching the unit later changes no reading. A fraction is
 *  inches whatever the switch says. */
export function withUnit(text: string, unit: Unit): string {
  if (/[a-z"″”']/i.test(text)) return text;
  return `${text} ${/[/⁄½¼¾⅛⅜⅝⅞]/.test(text) ? "in" : unit}`;
}
