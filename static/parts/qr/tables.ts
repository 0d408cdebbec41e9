// The figures of ISO/IEC 18004:2015 for levels L and M: table 9 (error correction) and what follows from annex E.
export type Level = "L" | "M";

export const mostVersion = 40;

// By version, the first at index 1: check bytes in each block, and the number of blocks.
const checkBytes: Record<Level, readonly number[]> = {
  L: [
    0, 7, 10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22, 24, 28, 30, 28, 28, 28, 28, 30, 30, 26, 28, 30, 30,
    30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30,
  ],
  M: [
    0, 10, 16, 26, 18, 24, 16, 18, 22, 22, 26, 30, 22, 22, 24, 24, 28, 28, 26, 26, 26, 26, 28, 28, 28, 28, 28, 28, 28,
    28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28,
  ],
};
const blocks: Record<Level, readonly number[]> = {
  L: [
    0, 1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4, 6, 6, 6, 6, 7, 8, 8, 9, 9, 10, 12, 12, 12, 13, 14, 15, 16, 17, 18, 19,
    19, 20, 21, 22, 24, 25,
  ],
  M: [
    0, 1, 1, 1, 2, 2, 4, 4, 4, 5, 5, 5, 8, 9, 9, 10, 10, 11, 13, 14, 16, 17, 17, 18, 20, 21, 23, 25, 26, 28, 29, 31, 33,
    35, 37, 38, 40, 43, 45, 47, 49,
  ],
};

export const checkBytesPerBlock = (version: number, level: Level): number => checkBytes[level][version] ?? 0;
export const blockCount = (version: number, level: Level): number => blocks[level][version] ?? 0;

/** Modules along one side. */
export const sideOf = (version: number): number => 17 + 4 * version;

/** Centres of the alignment patterns along one side (annex E): evenly spaced from the far end, the first at 6. */
export function alignment(version: number): number[] {
  if (version === 1) return [];
  const count = Math.floor(version / 7) + 2;
  const step = version === 32 ? 26 : Math.ceil((4 * version + 4) / (2 * count - 2)) * 2;
  const centres = [6];
  for (let at = sideOf(version) - 7; centres.length < count; at -= step) centres.splice(1, 0, at);
  return centres;
}

/** Modules left for data and check bits when every pattern and note has its place. */
function bitsOf(version: number): number {
  const side = sideOf(version);
  const across = alignment(version).length;
  let bits = side * side - 3 * 64 - 2 * (side - 16) - 31; // finders with rims, timing, format notes and dark module
  if (across > 0) bits -= 25 * (across * across - 3) - 2 * 5 * (across - 2); // two rows share modules with the timing
  if (version >= 7) bits -= 36;
  return bits;
}

/** Bytes of data and check together. */
export const bytesOf = (version: number): number => Math.floor(bitsOf(version) / 8);

/** Bytes of data, head included. */
export const dataBytes = (version: number, level: Level): number =>
  bytesOf(version) - checkBytesPerBlock(version, level) * blockCount(version, level);

/** Longest text in byte mode; its head takes 4 bits and a length of 8, from version 10 of 16 bits. */
export const capacity = (version: number, level: Level): number => dataBytes(version, level) - (version < 10 ? 2 : 3);
