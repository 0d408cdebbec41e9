// The chart as a slip shows it: each row's figures with their evidence, in the words of the row's page. The build writes
// it (build/slip_chart.go) beside the chart that the core reads.

/** A figure as it stands on the row's page: the chart's own digits first, the converted ones beside them. */
export interface Cell {
  text: string; // "1.062 in", or a word such as "not known"
  converted?: string; // "26.97 mm"
  note?: string; // faces, or what else goes with it
  basis?: string; // in words; left out where there is no figure
  from?: string[]; // titles of sources
  others?: Cell[]; // what else is printed or said
}

export interface LabelledCell extends Cell {
  label: string;
}

export interface SlipEnd {
  title: string; // "Both ends", "One end", "The other end"
  like?: string; // id of the plain row a conversion joint's end is like
  hold: Cell;
  cap: Cell;
  across: Cell;
}

export interface SlipRow {
  id: string;
  ref: string; // as the core names it
  also: string[];
  basis: string; // in words
  confirm: boolean; // from memory: must be confirmed before ordering
  ends: SlipEnd[];
  values: LabelledCell[]; // beyond hold, cap and across
  fasteners: LabelledCell[]; // threads that go with its name
  twins?: string[]; // of a conversion joint of a large chart: where the others of its size have their pages
}

export interface SlipChart {
  format: 1;
  version: string;
  rows: SlipRow[];
}
