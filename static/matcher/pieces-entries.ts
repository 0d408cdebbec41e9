// Which files a chart has beside its directory: what each is called, as far as that is known, and which ends lie in it.
// They have numbers: first the pieces, then their rolls, then the parts of the directory.
import type { Basis, Quantity } from "./types";
import type { Look } from "./candidates";
import { summed } from "./pieces-figures";
import type { Bounds, Directory, Entries, Grain } from "./pieces-types";
import { figure, widen, type Vaguest, type Widest } from "./prepared";

/** What entries say, ready to be looked into. */
interface Listed {
  names: readonly string[];
  cap: Meeting;
  across: Meeting;
}

/** Whether what is listed at a place may have figures in a range. */
type Meeting = (range: readonly [number, number] | undefined) => (n: number) => boolean;

/** The files of a chart. */
export class Files {
  /** How many pieces there are; there are as many rolls. */
  readonly pieces: number;
  readonly parts: number;
  private readonly top: Listed;
  private readonly first: Int32Array; // piece of each of the entries
  private readonly grain: Int32Array;
  private readonly vaguest: readonly Vaguest[];
  private readonly here: (Listed | undefined)[]; // parts

  constructor({ entries, grain, grains, pieces }: Directory) {
    this.top = listed(entries);
    this.grain = summed(grain);
    this.vaguest = grains.map((of) => ({ cap: widestOf(of, "cap"), across: widestOf(of, "across") }));
    const many = pieces ?? grain.map(() => 1);
    this.first = summed([0, ...many]);
    this.pieces = this.first[many.length] ?? 0;
    this.parts = pieces?.length ?? 0;
    this.here = [];
  }

  /** Which part it is that has a number; -1 for none. */
  partOf(n: number): number {
    const part = n - 2 * this.pieces;
    return part < this.parts ? Math.max(part, -1) : -1;
  }

  /** Whose roll it is that has a number; -1 for no roll. */
  rollOf(n: number): number {
    return n < 2 * this.pieces ? Math.max(n - this.pieces, -1) : -1;
  }

  roll(piece: number): number {
    return this.pieces + piece;
  }

  /** What a piece or a part is called; undefined for a piece whose part is not here. */
  nameOf(n: number): string | undefined {
    if (n >= this.pieces) return this.top.names[this.partOf(n)];
    if (this.parts === 0) return this.top.names[n];
    const part = this.first.findIndex((first) => first > n) - 1;
    return this.here[part]?.names[n - (this.first[part] ?? 0)];
  }

  hasPart(part: number): boolean {
    return this.here[part] !== undefined;
  }

  /** take takes a part in. */
  take(part: number, entries: Entries): void {
    this.here[part] = listed(entries);
  }

  /** Pieces that may have ends in the box that is looked into, and parts that may and are not here. */
  touched(look: Look): number[] {
    const boxes = this.vaguest.map(look);
    const found: number[] = [];
    const caps = boxes.map((box) => this.top.cap(box.cap));
    const acrosses = boxes.map((box) => this.top.across(box.across));
    this.grain.forEach((of, n) => {
      const box = boxes[of];
      if (box === undefined || !caps[of]?.(n) || !acrosses[of]?.(n)) return;
      const first = this.first[n] ?? 0;
      const part = this.here[n];
      if (this.parts === 0) found.push(first);
      else if (part === undefined) found.push(2 * this.pieces + n);
      else {
        const [inCap, inAcross] = [part.cap(box.cap), part.across(box.across)];
        for (let i = 0; i < part.names.length; i++) if (inCap(i) && inAcross(i)) found.push(first + i);
      }
    });
    return found;
  }
}

function listed({ names, cap, across }: Entries): Listed {
  return { names: names.split(" "), cap: meeting(cap), across: meeting(across) };
}

function meeting(bounds: Bounds): Meeting {
  const [least, greatest] = [summed(bounds[0]), summed(bounds[1])];
  return (range) => {
    if (range === undefined) return () => true;
    const [from, to] = [range[0] * 100, range[1] * 100];
    return (n) => {
      const low = least[n] ?? 0;
      return low === -1 || (low <= to && (greatest[n] ?? 0) >= from);
    };
  };
}

function widestOf(grain: Grain, quantity: Quantity): Widest {
  const out: Widest = { limit: 0, made: 0, standard: 0 };
  for (const [basis, half] of Object.entries(grain[quantity])) {
    widen(out, figure(quantity, basis as Basis, 0, half / 1000, ""));
  }
  return out;
}
