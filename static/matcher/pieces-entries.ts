// What a directory says of each piece: what it is called, how long it is, and which ends lie in it.
import type { Basis, Quantity } from "./types";
import type { Look } from "./candidates";
import { summed } from "./pieces-figures";
import type { Bounds, Directory, Grain } from "./pieces-types";
import { figure, widen, type Widest } from "./prepared";

/** A piece as it is fetched: its name, and how many bytes it has. */
export interface Named {
  name: string;
  bytes: number;
}

/** entries lists the pieces in the order in which they are numbered. */
export function entries({ pieces }: Directory): Named[] {
  const names = pieces.names.split(" ");
  return Array.from(summed(pieces.bytes), (bytes, n) => ({ name: names[n] ?? "", bytes }));
}

/** touched are the pieces that may have ends in the box that is looked into. */
export function touched(directory: Directory, look: Look): number[] {
  return entriesOf(directory).touched(look);
}

interface Entries {
  has(n: number): boolean;
  touched(look: Look): number[];
}

const known = new WeakMap<Directory, Entries>();

export function entriesOf(directory: Directory): Entries {
  const before = known.get(directory);
  if (before !== undefined) return before;
  const { grains, pieces } = directory;
  const vaguest = grains.map((grain) => ({ cap: widestOf(grain, "cap"), across: widestOf(grain, "across") }));
  const grain = summed(pieces.grain);
  const [cap, across] = [meeting(pieces.cap), meeting(pieces.across)];
  const made = {
    has: (n: number): boolean => n in grain,
    touched: (look: Look): number[] => {
      const boxes = vaguest.map(look);
      const [caps, acrosses] = [boxes.map((box) => cap(box.cap)), boxes.map((box) => across(box.across))];
      const found: number[] = [];
      grain.forEach((of, n) => {
        if (caps[of]?.(n) && acrosses[of]?.(n)) found.push(n);
      });
      return found;
    },
  };
  known.set(directory, made);
  return made;
}

type Range = readonly [number, number] | undefined;

// Whether a piece may have figures in a range.
function meeting(bounds: Bounds): (range: Range) => (n: number) => boolean {
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
