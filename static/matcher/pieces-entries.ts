// What a directory says of each piece: what it is called, how long it is, and which ends lie in it.
import type { Basis, Quantity } from "./types";
import type { Look } from "./candidates";
import { summed } from "./pieces-figures";
import type { Directory, Grain } from "./pieces-types";
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
  const [grain, cap, across] = [summed(pieces.grain), pieces.cap.map(summed), pieces.across.map(summed)];
  const made = {
    has: (n: number): boolean => n in grain,
    touched: (look: Look): number[] => {
      const boxes = vaguest.map(look);
      const found: number[] = [];
      grain.forEach((of, n) => {
        const box = boxes[of];
        if (meets(box?.cap, cap, n) && meets(box?.across, across, n)) found.push(n);
      });
      return found;
    },
  };
  known.set(directory, made);
  return made;
}

function meets(
  range: readonly [number, number] | undefined,
  [least, greatest]: readonly Int32Array[],
  n: number,
): boolean {
  if (range === undefined || least?.[n] === -1) return true;
  return (least?.[n] ?? 0) <= range[1] * 100 && (greatest?.[n] ?? 0) >= range[0] * 100;
}

function widestOf(grain: Grain, quantity: Quantity): Widest {
  const out: Widest = { limit: 0, made: 0, standard: 0 };
  for (const [basis, half] of Object.entries(grain[quantity])) {
    widen(out, figure(quantity, basis as Basis, 0, half / 1000, ""));
  }
  return out;
}
