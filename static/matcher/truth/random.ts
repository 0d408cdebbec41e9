// Numbers that look like chance and come out the same every time: xoshiro128**, started
// from the seed, the column and the number of the set, so that it does not matter how
// many processes share the work.

export interface Chance {
  /** Between 0 and 1. */
  uniform(): number;
  /** Between low and high. */
  between(low: number, high: number): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
  /** Mean 1, never negative. */
  exponential(): number;
  happens(probability: number): boolean;
  /** A whole number below n. */
  below(n: number): number;
  pick<T>(list: readonly T[]): T;
}

export function chance(seed: number, column: string, set: number): Chance {
  const s = start(`${seed} ${column} ${set}`);
  const next = (): number => {
    const result = Math.imul(rotate(Math.imul(s[1], 5), 7), 9) >>> 0;
    const t = s[1] << 9;
    s[2] ^= s[0];
    s[3] ^= s[1];
    s[1] ^= s[2];
    s[0] ^= s[3];
    s[2] ^= t;
    s[3] = rotate(s[3], 11);
    return result;
  };
  const uniform = (): number => (next() + 0.5) / 4294967296;
  const below = (n: number): number => Math.floor(uniform() * n);
  return {
    uniform,
    below,
    between: (low, high) => low + (high - low) * uniform(),
    normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()),
    exponential: () => -Math.log(uniform()),
    happens: (probability) => uniform() < probability,
    pick: <T>(list: readonly T[]): T => {
      const found = list[below(list.length)];
      if (found === undefined) throw new Error("nothing to pick from");
      return found;
    },
  };
}

function rotate(x: number, by: number): number {
  return (x << by) | (x >>> (32 - by));
}

// Four words from a text: FNV-1a, then a mixer so that neighbouring numbers part.
function start(text: string): [number, number, number, number] {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  const word = (): number => {
    hash = (hash + 0x9e3779b9) | 0;
    let z = hash;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) | 1;
  };
  return [word(), word(), word(), word()];
}
