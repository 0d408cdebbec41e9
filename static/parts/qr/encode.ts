// A QR symbol from a text: byte mode, levels L and M, all forty versions (ISO/IEC 18004:2015). No DOM: the tests run
// it inside the Go program and decode what it makes with a decoder of somebody else's.
import { withChecks } from "./check";
import { penalty } from "./penalty";
import { masks, note, patterns, way } from "./place";
import { capacity, dataBytes, mostVersion, type Level } from "./tables";

export interface QrSymbol {
  version: number;
  level: Level;
  modules: boolean[][]; // by row, true is dark; the quiet zone is not among them
}

/** Level M costs modules; above this version a screen's camera gains more from large ones. */
const mostVersionAtM = 20;

/** encode gives the smallest symbol that holds the text, null when none does. */
export function encode(text: string, level?: Level): QrSymbol | null {
  const bytes = utf8(text);
  for (const l of level === undefined ? (["M", "L"] as const) : [level]) {
    const most = l === "M" && level === undefined ? mostVersionAtM : mostVersion;
    for (let version = 1; version <= most; version++) {
      if (bytes.length <= capacity(version, l)) return symbol(bytes, version, l);
    }
  }
  return null;
}

function symbol(bytes: readonly number[], version: number, level: Level): QrSymbol {
  const data = withChecks(padded(bytes, version, level), version, level);
  const frame = patterns(version);
  const free = way(frame);
  let best: { modules: boolean[][]; penalty: number } | null = null;
  masks.forEach((flips, mask) => {
    const grid = frame.map((row) => [...row]);
    note(grid, version, level, mask);
    free.forEach(([row, column], i) => {
      const bit = (((data[i >> 3] ?? 0) >> (7 - (i & 7))) & 1) === 1; // what is left over at the end is light
      const line = grid[row];
      if (line) line[column] = bit !== flips(row, column);
    });
    const modules = grid.map((row) => row.map((dark) => dark === true));
    const cost = penalty(modules);
    if (best === null || cost < best.penalty) best = { modules, penalty: cost };
  });
  return { version, level, modules: (best as { modules: boolean[][] } | null)?.modules ?? [] };
}

// Mode 0100, the length, the bytes, four light bits, and 236 and 17 by turns to the end (7.4).
function padded(bytes: readonly number[], version: number, level: Level): number[] {
  const bits: number[] = [];
  const put = (value: number, count: number): void => {
    for (let i = count - 1; i >= 0; i--) bits.push((value >> i) & 1);
  };
  put(4, 4);
  put(bytes.length, version < 10 ? 8 : 16);
  for (const byte of bytes) put(byte, 8);
  put(0, 4);
  const out: number[] = [];
  for (let i = 0; i + 8 <= bits.length; i += 8) out.push(Number.parseInt(bits.slice(i, i + 8).join(""), 2));
  for (let pad = 236; out.length < dataBytes(version, level); pad = pad === 236 ? 17 : 236) out.push(pad);
  return out;
}

function utf8(text: string): number[] {
  const out: number[] = [];
  for (const c of text) {
    const whole = /^[\ud800-\udfff]$/.test(c) ? "\ufffd" : c; // a lone surrogate is no character
    for (const part of encodeURIComponent(whole).match(/%..|./g) ?? []) {
      out.push(part.length === 3 ? Number.parseInt(part.slice(1), 16) : part.charCodeAt(0));
    }
  }
  return out;
}
