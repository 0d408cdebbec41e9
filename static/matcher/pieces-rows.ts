// The rows of one piece. They are kept as whole numbers, and made when a question comes upon them.
import type { Basis, Quantity } from "./types";
import { columnOf, summed, valueAt, type Column, type Way } from "./pieces-figures";
import { bases, type Directory, type Others, type Piece } from "./pieces-types";
import { partsOf } from "./pieces-shelves";
import {
  leadFirst,
  saysTheSame,
  type KnownEnd,
  type KnownRow,
  type KnownValue,
  type Named,
  type Part,
} from "./prepared";
import { allFaces, holds } from "./words";

/** The rows that questions came upon, in all pieces. */
export interface Met {
  rows: number; // how many were made
  joints: Map<number, Row>; // conversion joints by their place in the chart: each is in the pieces of both its ends
  named: Map<string, Row>; // those an answer named, by ref
}

/** A row that was made. Most are compared and never named. */
export class Row implements KnownRow {
  private named: Named | undefined;

  constructor(
    readonly index: number,
    readonly size: string,
    readonly basis: Basis,
    readonly ends: KnownEnd[],
    readonly home: Unpacked,
    readonly at: number, // its place in the piece
  ) {}

  get row(): Named {
    this.named ??= this.home.name(this);
    return this.named;
  }
}

/** What is given for a quantity besides, by end: the first place in the column, and behind the last how many there are. */
export interface Beside {
  column: Column;
  first: Int32Array;
}

/** A piece that is looked into. */
export class Unpacked {
  private readonly index: Int32Array;
  private readonly first: Int32Array; // end of each row, and behind the last how many ends there are
  private readonly size: Int32Array; // the first row of each row's size
  private readonly table: Int32Array;
  private names: Int32Array | undefined; // where each starts
  private readonly columns: Record<Quantity, Column>;
  private readonly others: Record<Quantity, Beside>;
  private readonly text: Pick<Piece, "names" | "basis" | "hold" | "holdBasis" | "faces" | "facesBasis">;
  private readonly also: Map<number, string[]>;
  private indexed: readonly Part[] | undefined;
  // What was made for questions, by the place of an end, a row and the first row of a size.
  private ends: KnownEnd[] = [];
  private made: Row[] = [];
  private sizes: (readonly Row[])[] = [];
  private keys: string[] = [];

  constructor(
    private readonly tables: Directory["tables"],
    private readonly ways: readonly Way[],
    piece: Piece,
    private readonly number: number, // in the directory
    private readonly met: Met,
  ) {
    const { basis, hold, holdBasis, faces, facesBasis, names } = piece;
    this.text = { basis, hold, holdBasis, faces, facesBasis, names };
    this.index = summed(piece.index);
    const rows = this.index.length;
    this.first = firstEnds(rows, piece.two);
    this.size = firstRows(piece.size, rows);
    this.table = summed(piece.table);
    this.also = new Map(piece.also.map(([row, ...list]) => [row, list]));
    this.columns = { cap: columnOf(piece.cap), across: columnOf(piece.across) };
    const besides = (quantity: Quantity): Beside => besideOf(piece.others[quantity], hold.length);
    this.others = { cap: besides("cap"), across: besides("across") };
  }

  /** Its ends, by how vague they are. */
  get parts(): readonly Part[] {
    if (this.indexed === undefined) {
      const rows = new Int32Array(this.text.hold.length);
      for (let n = 0; n < this.index.length; n++) rows.fill(n, this.first[n], this.first[n + 1]);
      const { columns, others } = this;
      const all = { rows: () => this.rows(), row: (n: number) => this.row(n) };
      this.indexed = partsOf({ columns, others, rows }, this.unlike(rows), this.ways, all);
    }
    return this.indexed;
  }

  // The ends without those that are written as one before them of the same size.
  private unlike(rows: Int32Array): number[] {
    const out: number[] = [];
    let size = -1;
    let from = 0;
    rows.forEach((row, end) => {
      const of = this.size[row] ?? 0;
      if (of !== size) from = out.length;
      size = of;
      for (let i = from; i < out.length; i++) if (this.alike(out[i] ?? 0, end)) return;
      out.push(end);
    });
    return out;
  }

  rows(): Row[] {
    return Array.from(this.index, (_, n) => this.make(n));
  }

  row(n: number): Row | undefined {
    const before = this.made[n];
    if (before !== undefined) return before;
    const index = this.index[n];
    if (index === undefined) return undefined;
    const joint = (this.first[n + 1] ?? 0) - (this.first[n] ?? 0) > 1;
    const row = (joint ? this.met.joints.get(index) : undefined) ?? this.make(n);
    if (joint) this.met.joints.set(index, row);
    this.made[n] = row;
    this.met.rows++;
    return row;
  }

  /** The rows of a row's size, the one to speak of first in front. */
  twins(row: Row): readonly Row[] {
    const from = this.size[row.at] ?? 0;
    const before = this.sizes[from];
    if (before !== undefined) return before;
    const same: Row[] = [];
    for (let n = from; this.size[n] === from; n++) {
      const twin = n === row.at ? row : this.row(n);
      if (twin !== undefined) same.push(twin);
    }
    // They stand in the chart's order, which is all there is between twins that are written alike.
    if (same.some((twin) => twin.ends[0] !== row.ends[0] || twin.basis !== row.basis)) same.sort(leadFirst);
    this.sizes[from] = same;
    return same;
  }

  /** forget drops what was made for questions; it is made again when it is asked for. */
  forget(): void {
    this.ends = [];
    this.made = [];
    this.sizes = [];
    this.keys = [];
  }

  name(row: Row): Named {
    const { at } = row;
    const [id, title] = this.tables[this.table[at] ?? -1] ?? ["", ""];
    this.names ??= starts(this.text.names, this.index.length);
    const name = this.text.names.slice(this.names[at], (this.names[at + 1] ?? 0) - 1);
    const ref = `${id}/${name}`;
    this.met.named.set(ref, row);
    return { ref, name, also: this.also.get(at) ?? [], table: title, basis: word(bases, this.text.basis, at) };
  }

  private make(n: number): Row {
    const from = this.first[n] ?? 0;
    const ends = [this.end(from, n)];
    if ((this.first[n + 1] ?? 0) - from > 1) ends.push(this.end(from + 1, n));
    const { cap, across } = this.columns;
    let weakest = this.text.basis.charCodeAt(n) - 48; // they stand from the weakest to the strongest
    const weaken = (of: Column, end: number): void => {
      if ((of.as[end] ?? -1) >= 0) weakest = Math.min(weakest, of.basis[end] ?? 0);
    };
    for (let end = from; end < from + ends.length; end++) {
      weaken(cap, end);
      weaken(across, end);
    }
    const index = this.index[n] ?? -1;
    const size = this.size[n] ?? 0;
    const key = this.keys[size] ?? (ends.length === 1 ? `size ${this.number} ${size}` : `joint ${index}`);
    this.keys[size] = key;
    return new Row(index, key, bases[weakest] ?? "memory", ends, this, n);
  }

  // Twins that are written alike have the same end.
  private end(end: number, row: number): KnownEnd {
    const before = this.ends[end];
    if (before !== undefined) return before;
    let found: KnownEnd | undefined;
    for (let twin = this.first[this.size[row] ?? 0] ?? 0; twin < end && found === undefined; twin++) {
      if (this.ends[twin] !== undefined && this.alike(twin, end)) found = this.ends[twin];
    }
    found ??= {
      hold: word(holds, this.text.hold, end),
      holdBasis: word(bases, this.text.holdBasis, end),
      faces: word(allFaces, this.text.faces, end),
      facesBasis: word(bases, this.text.facesBasis, end),
      cap: this.value(end, "cap"),
      across: this.value(end, "across"),
    };
    this.ends[end] = found;
    return found;
  }

  private alike(a: number, b: number): boolean {
    const { hold, holdBasis, faces, facesBasis } = this.text;
    return (
      hold[a] === hold[b] &&
      faces[a] === faces[b] &&
      holdBasis[a] === holdBasis[b] &&
      facesBasis[a] === facesBasis[b] &&
      same(this.columns.cap, a, b) &&
      same(this.columns.across, a, b) &&
      sameBeside(this.others.cap, a, b) &&
      sameBeside(this.others.across, a, b)
    );
  }

  private value(end: number, quantity: Quantity): KnownValue | null {
    const lead = valueAt(this.columns[quantity], end, quantity, this.ways);
    if (lead === undefined) return null;
    const { column, first } = this.others[quantity];
    for (let i = first[end] ?? 0; i < (first[end + 1] ?? 0); i++) {
      const other = valueAt(column, i, quantity, this.ways);
      if (other !== undefined && !saysTheSame(lead, other)) lead.others = [...lead.others, other];
    }
    return lead;
  }
}

function same({ as, n, basis }: Column, a: number, b: number): boolean {
  return as[a] === as[b] && n[a] === n[b] && basis[a] === basis[b];
}

function sameBeside({ column, first }: Beside, a: number, b: number): boolean {
  const from = first[a] ?? 0;
  const to = first[a + 1] ?? 0;
  const other = first[b] ?? 0;
  if (to - from !== (first[b + 1] ?? 0) - other) return false;
  for (let i = from; i < to; i++) if (!same(column, i, other + i - from)) return false;
  return true;
}

function firstEnds(rows: number, two: readonly number[]): Int32Array {
  const out = new Int32Array(rows + 1);
  const twice = summed(two);
  let [end, next] = [0, 0];
  for (let n = 0; n < rows; n++) {
    end++;
    if (twice[next] === n) {
      end++;
      next++;
    }
    out[n + 1] = end;
  }
  return out;
}

function firstRows(sizes: readonly number[], rows: number): Int32Array {
  const out = new Int32Array(rows);
  let from = 0;
  for (const many of sizes) {
    out.fill(from, from, from + many);
    from += many;
  }
  return out;
}

// Where each name starts, and behind the last where another would.
function starts(names: string, rows: number): Int32Array {
  const out = new Int32Array(rows + 1);
  for (let n = 0; n < rows; n++) {
    const end = names.indexOf("\n", out[n]);
    out[n + 1] = (end < 0 ? names.length : end) + 1;
  }
  return out;
}

function besideOf({ end, figures }: Others, ends: number): Beside {
  const first = new Int32Array(ends + 1);
  const whose = summed(end);
  let next = 0;
  for (let i = 0; i < ends && end.length > 0; i++) {
    first[i] = next;
    while (whose[next] === i) next++;
  }
  first[ends] = next;
  return { column: columnOf(figures), first };
}

function word<T>(of: readonly T[], signs: string, n: number): T {
  return of[signs.charCodeAt(n) - 48] ?? (of[0] as T);
}
