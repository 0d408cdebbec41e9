// What the page is told of the chart: a table's file as the repository has it, what its columns allow, and what each
// cell says. Made by build/correct_facts.go, which mirrors these types.
import type { Condition, Faces, Tool } from "../../matcher/types";

export type Basis = "published" | "measured" | "common-practice" | "memory";

/** What is printed or said, key by key as its line has it; a key that is not there is not written. */
export interface Told {
  is: string;
  unit?: string; // where it is not the column's
  faces?: Faces;
  facesBasis?: Basis;
  basis?: Basis;
  source?: string[];
  at?: string;
}

export interface Measurement {
  readings: string[]; // each with its unit
  tool: Tool;
  condition?: Condition;
  faces?: Faces;
  on?: string;
  by?: string;
}

export interface Cell extends Told {
  others?: Told[];
  measured?: Measurement[];
}

/** A cell in its file: the line, from 1, and the braces from one place of the line to another. */
export interface PlacedCell extends Cell {
  line: number;
  from: number;
  to: number;
}

export interface Column {
  id: string;
  label: string;
  kind: "hold" | "length" | "torque" | "count" | "number" | "text";
  unit?: string;
  units?: string[];
  range?: true;
  least?: string; // in the column's unit
  greatest?: string;
  faces?: true;
  condition?: true;
}

export interface Row {
  id: string;
  cells: Record<string, PlacedCell>;
}

/** A file of the chart, from the root of the repository. */
export interface ChartFile {
  file: string;
  text: string;
}

export interface TableFacts extends ChartFile {
  table: string;
  title: string;
  columns: Column[];
  rows: Row[];
}

/** The words of the tables, and the sources there are. */
export interface Known {
  sources: readonly string[]; // ids
  kinds: readonly string[]; // of sources
  bases: readonly string[];
  holds: Readonly<Record<string, readonly string[]>>; // with the faces that go with each; none: all do
  faces: readonly string[];
  tools: readonly string[];
  conditions: readonly string[];
}

/** The registry, for naming a source or adding one, and the words. */
export interface SourceFacts extends ChartFile {
  known: Known;
  titles: Record<string, string>; // of sources, by id
}

/** A source that is not in the registry yet. */
export interface NewSource {
  id: string;
  kind: string;
  title: string;
  publisher: string;
  edition?: string;
  date?: string;
  where?: string;
}
