// Reed-Solomon check bytes over GF(256) with the polynomial x^8 + x^4 + x^3 + x^2 + 1 (ISO/IEC 18004:2015, 7.5.2).
import { blockCount, bytesOf, checkBytesPerBlock, type Level } from "./tables";

const power: number[] = [];
const log: number[] = [];
for (let i = 0, x = 1; i < 255; i++) {
  power.push(x);
  log[x] = i;
  x = (x << 1) ^ (x & 0x80 ? 0x11d : 0);
}

function times(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  return power[((log[a] ?? 0) + (log[b] ?? 0)) % 255] ?? 0;
}

/** The product of (x - 2^i) for i below `degree`, without its leading 1. */
function generator(degree: number): number[] {
  let product = [1];
  for (let i = 0; i < degree; i++) {
    const next = [...product, 0];
    product.forEach((c, k) => {
      next[k + 1] = (next[k + 1] ?? 0) ^ times(c, power[i] ?? 0);
    });
    product = next;
  }
  return product.slice(1);
}

function checked(data: readonly number[], by: readonly number[]): number[] {
  const rest = by.map(() => 0);
  for (const byte of data) {
    const factor = byte ^ (rest.shift() ?? 0);
    rest.push(0);
    by.forEach((c, i) => {
      rest[i] = (rest[i] ?? 0) ^ times(c, factor);
    });
  }
  return rest;
}

/** Splits data into blocks, adds the check bytes of each, and deals both out by turns (7.6). */
export function withChecks(data: readonly number[], version: number, level: Level): number[] {
  const count = blockCount(version, level);
  const checks = checkBytesPerBlock(version, level);
  const total = bytesOf(version);
  const short = Math.floor(total / count) - checks; // the last blocks hold one byte more
  const long = total % count;
  const by = generator(checks);
  const parts: { data: number[]; check: number[] }[] = [];
  for (let i = 0, at = 0; i < count; i++) {
    const size = short + (i >= count - long ? 1 : 0);
    const part = data.slice(at, at + size);
    parts.push({ data: part, check: checked(part, by) });
    at += size;
  }
  const out: number[] = [];
  for (const kind of ["data", "check"] as const) {
    for (let i = 0; i < Math.max(short + 1, checks); i++) {
      for (const part of parts) {
        const byte = part[kind][i];
        if (byte !== undefined) out.push(byte);
      }
    }
  }
  return out;
}
