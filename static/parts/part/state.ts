// What the form of a part holds: plain data, changed in place by its fields and read by the query.
import type { Between, Edges, PartQuery, PartTable } from "../../matcher/part-types";
import type { Condition, Tool, Unit } from "../../matcher/types";

export interface PartState {
  values: Record<string, string[]>; // by column; every matched column has its list
  hole: string[];
  between: Between;
  edges: Edges;
  unit: Unit;
  tool: Tool;
  condition: Condition;
}

export function emptyPart(table: PartTable): PartState {
  const values: Record<string, string[]> = {};
  for (const column of table.columns) values[column.id] = [];
  return {
    values,
    hole: [],
    between: "next",
    edges: "outer",
    unit: "in",
    tool: "digital-caliper",
    condition: "used",
  };
}

export function hasValues(state: PartState): boolean {
  return Object.values(state.values).some((list) => list.length > 0);
}

export function toPartQuery(table: PartTable, state: PartState): PartQuery {
  const { unit, tool, condition } = state;
  const query: PartQuery = { table: table.id, values: {}, unit, tool, condition };
  for (const [id, list] of Object.entries(state.values)) if (list.length > 0) query.values[id] = [...list];
  if (table.columns.some((c) => c.match === "circle" && query.values[c.id])) {
    query.between = state.between;
    query.edges = state.edges;
    if (needsHole(state)) query.hole = [...state.hole];
  }
  return query;
}

/** From centre to centre, and from one edge to the same edge, no hole lies between. */
export function needsHole(state: PartState): boolean {
  return state.edges === "outer" || state.edges === "inner";
}

export function fromPartQuery(table: PartTable, query: PartQuery, unit: Unit): PartState {
  const state = emptyPart(table);
  for (const column of table.columns) state.values[column.id] = [...(query.values[column.id] ?? [])];
  const first = Object.values(state.values)
    .flat()
    .find((text) => /(in|mm)\s*$/.test(text));
  return {
    ...state,
    hole: [...(query.hole ?? [])],
    between: query.between ?? state.between,
    edges: query.edges ?? state.edges,
    unit: query.unit ?? (first === undefined ? unit : /mm\s*$/.test(first) ? "mm" : "in"),
    tool: query.tool ?? state.tool,
    condition: query.condition ?? state.condition,
  };
}
