// A row of a chart in pieces, that a question came upon.
import type { Basis } from "./types";
import type { Unpacked } from "./pieces-rows";
import type { Directory } from "./pieces-types";
import type { KnownEnd, KnownRow, Named } from "./prepared";

/** The rows that questions came upon, in all pieces. */
export interface Met {
  rows: number; // how many were made
  joints: Map<number, Row>; // conversion joints by their place in the chart: each is in the pieces of both its ends
  named: Map<string, Row>; // those an answer named, by ref
  tables: Tables;
  /** Takes note that the roll of a piece is asked for and not here. */
  lacks(piece: number): void;
}

/** Where the rows of each table end in the chart, and what the tables are called. */
export interface Tables {
  ends: Int32Array;
  called: Directory["tables"];
}

/** A row that was made. Most are compared and never named. */
export class Row implements KnownRow {
  private called: Named | undefined;

  constructor(
    readonly index: number,
    readonly size: string,
    readonly basis: Basis,
    readonly ends: KnownEnd[],
    readonly home: Unpacked,
    readonly at: number, // its place in the piece
  ) {}

  get row(): Named {
    this.called ??= new Called(this);
    return this.called;
  }
}

// What a row is called, which is looked for when somebody wants to read it.
class Called implements Named {
  constructor(private readonly of: Row) {}

  get ref(): string {
    return this.of.home.refOf(this.of);
  }

  get name(): string {
    return this.of.home.nameOf(this.of);
  }

  get also(): string[] {
    return this.of.home.alsoOf(this.of);
  }

  get table(): string {
    return this.of.home.tableOf(this.of)[1];
  }

  get basis(): Basis {
    return this.of.home.basisOf(this.of);
  }
}
