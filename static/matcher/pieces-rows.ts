// The rows of one piece. They are kept as whole numbers, and made when a question comes upon them.
import type { Basis, Quantity } from "./types";
import { firstAbove } from "./candidates";
import { Row, type Met } from "./pieces-row";
import { columnOf, summed, valueAt, type Column, type Way } from "./pieces-figures";
import { bases, type Others, type Piece, type Roll } from "./pieces-types";
import { partsOf } from "./pieces-shelves";
import { leadFirst, saysTheSame, type KnownEnd, type KnownValue, type Part } from "./prepared";
import { allFaces, holds } from "./words";

/** What is given for a quantity besides, by end: the first place in the column, and behind the last how many there are. */
export interface Beside {
  column: Column;
  first: Int32Array;
}

/** A piece that is looked into. */
export class Unpacked {
  /** What its roll is called. */
  readonly roll: string;
  private readonly index: Int32Array;
  private readonly size: Int32Array; // the first row of each row's size
  private readonly first: Int32Array; // end of each row
  private readonly double: Uint8Array; // 1 for rows with two ends
  private readonly columns: Record<Quantity, Column>;
  private readonly others: Record<Quantity, Beside>;
  private readonly text: Readonly<Record<"basis" | "hold" | "holdBasis" | "faces" | "facesBasis", string>>;
  private called: Roll | undefined;
  private indexed: readonly Part[] | undefined;
  // What was made for questions, by the place of an end, a row and the first row of a size.
  private ends: KnownEnd[] = [];
  private made: Row[] = [];
  private sizes: (readonly Row[])[] = [];
  private keys: string[] = [];
  private names: readonly string[] | undefined; // of all its rows

  constructor(
    private readonly ways: readonly Way[],
    piece: Piece,
    private readonly number: number,
    private readonly met: Met,
  ) {
    const [roll, index, sizes, writing, basis, hold, holdBasis, faces, facesBasis, cap, across, caps, acrosses] = piece;
    this.text = { basis, hold, holdBasis, faces, facesBasis };
    this.roll = roll;
    this.index = summed(index);
    const rows = this.index.length;
    this.size = new Int32Array(rows);
    this.first = new Int32Array(rows);
    this.double = new Uint8Array(rows);
    this.place(sizes, writing);
    this.columns = { cap: columnOf(cap), across: columnOf(across) };
    this.others = { cap: besideOf(caps, hold.length), across: besideOf(acrosses, hold.length) };
  }

  // Finds the ends of each row: those of the writing it has, of the writings of its size.
  private place(sizes: readonly number[], writing: string): void {
    let row = 0;
    let ends = 0;
    for (const many of sizes) {
      const from = row;
      const each = many === 0 ? 2 : 1;
      let most = 0;
      for (; row < from + Math.max(many, 1); row++) {
        const sign = writing.charCodeAt(row) - 48;
        this.size[row] = from;
        this.first[row] = ends + sign * each;
        this.double[row] = each - 1;
        most = Math.max(most, sign + 1);
      }
      ends += most * each;
    }
  }

  /** take takes its roll in. */
  take(roll: Roll): void {
    this.called = roll;
  }

  /** Its ends, by how vague they are. What rows of a size are written alike in is one. */
  get parts(): readonly Part[] {
    if (this.indexed === undefined) {
      const rows = new Int32Array(this.text.hold.length).fill(-1);
      for (let n = this.index.length - 1; n >= 0; n--) rows.fill(n, this.first[n], (this.first[n] ?? 0) + this.many(n));
      const { columns, others } = this;
      const all = { rows: () => this.rows(), row: (n: number) => this.row(n) };
      this.indexed = partsOf({ columns, others, rows }, [...rows.keys()], this.ways, all);
    }
    return this.indexed;
  }

  // How many ends a row has.
  private many(n: number): number {
    return (this.double[n] ?? 0) + 1;
  }

  rows(): Row[] {
    return Array.from(this.index, (_, n) => this.make(n));
  }

  row(n: number): Row | undefined {
    const before = this.made[n];
    if (before !== undefined) return before;
    const index = this.index[n];
    if (index === undefined) return undefined;
    const joint = this.double[n] === 1;
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
    this.names = undefined;
  }

  basisOf({ at }: Row): Basis {
    return word(bases, this.text.basis, at);
  }

  nameOf({ at }: Row): string {
    if (this.called === undefined) this.met.lacks(this.number);
    this.names ??= this.called?.[0].split("\n");
    return this.names?.[at] ?? "";
  }

  alsoOf({ at }: Row): string[] {
    if (this.called === undefined) this.met.lacks(this.number);
    const [, ...also] = this.called?.[1].find(([row]) => row === at) ?? [at];
    return also;
  }

  tableOf({ index }: Row): readonly [id: string, title: string] {
    const { ends, called } = this.met.tables;
    return called[firstAbove(ends, index + 1)] ?? ["", ""];
  }

  refOf(row: Row): string {
    const ref = `${this.tableOf(row)[0]}/${this.nameOf(row)}`;
    this.met.named.set(ref, row);
    return ref;
  }

  private make(n: number): Row {
    const from = this.first[n] ?? 0;
    const ends = [this.end(from)];
    if (this.double[n] === 1) ends.push(this.end(from + 1));
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
  private end(end: number): KnownEnd {
    const { hold, holdBasis, faces, facesBasis } = this.text;
    this.ends[end] ??= {
      hold: word(holds, hold, end),
      holdBasis: word(bases, holdBasis, end),
      faces: word(allFaces, faces, end),
      facesBasis: word(bases, facesBasis, end),
      cap: this.value(end, "cap"),
      across: this.value(end, "across"),
    };
    return this.ends[end];
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

function besideOf([end, figures]: Others, ends: number): Beside {
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
