// What a reader types to find a row: words, one figure, or a size such as "27 x 82", "1.062", "1 1/16", "13-10".
// Pure functions; the page part is in table.ts.
import { mmPerInch } from "../identify/lengths";

export interface Filter {
  size: [number, number] | null; // cap and across as typed, unit unknown
  words: string[]; // every one must fit
}

export interface RowFigures {
  words: string; // folded, as the page has them
  caps: number[]; // mm
  acrosses: number[]; // mm
}

/** A typed size may be read in millimetres or inches; both are tried. */
export function parseFilter(text: string): Filter {
  const typed = fold(text);
  const size = /^([\d.,/ -]+?)\s*(?:x|×|\*|by)\s*([\d.,/ -]+?)\s*(?:mm|in)?$/.exec(typed);
  const cap = figure(size?.[1] ?? "");
  const across = figure(size?.[2] ?? "");
  if (cap !== null && across !== null) return { size: [cap, across], words: [] };
  return { size: null, words: typed.split(/\s+/).filter((w) => w !== "") };
}

export function rowFits(wanted: Filter, row: RowFigures): boolean {
  if (wanted.size) {
    const [cap, across] = wanted.size;
    return row.caps.some((c, n) => {
      const a = row.acrosses[n];
      return a !== undefined && near(c, cap) && near(a, across);
    });
  }
  return wanted.words.every((word) => wordFits(word, row));
}

// A word fits as text, also without the dash in 13-10, or as a decimal that is one of the row's figures.
function wordFits(word: string, row: RowFigures): boolean {
  if (row.words.includes(word)) return true;
  if (/^[\w]+-[\w]+$/.test(word) && row.words.includes(word.replace("-", ""))) return true;
  const value = /^\d*[.,]\d+$/.test(word) ? figure(word) : null;
  return value !== null && [...row.caps, ...row.acrosses].some((mm) => near(mm, value));
}

// Half a per cent, at least a step a reader would round away: 27 finds 26.97, 82 finds 81.76.
function near(mm: number, typed: number): boolean {
  return [typed, typed * mmPerInch].some((value) => Math.abs(value - mm) <= Math.max(0.1, 0.005 * mm));
}

/** A decimal with point or comma, a fraction or a mixed fraction; null for anything else. */
export function figure(text: string): number | null {
  const t = text.trim().replace(",", ".");
  if (/^(\d+\.?\d*|\.\d+)$/.test(t)) return Number(t);
  const mixed = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(t);
  if (!mixed || Number(mixed[3]) === 0) return null;
  return Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3]);
}

function fold(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/⁄/g, "/")
    .toLowerCase()
    .trim();
}
