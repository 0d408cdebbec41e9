// The words of a question looked up in the index. Pure functions; the index is made by build/search, in Go.
//
//   goal      what was meant comes first, also misspelt, spaced or joined in another way
//   non-goal  sizes: they are the core's, see size.ts. A figure is never taken for a near one.
import { fold, squeeze } from "./fold";

export type Kind = "row" | "guide" | "word" | "source" | "sheet";

export interface Entry {
  kind: Kind;
  address: string; // below the base
  title: string;
  note?: string;
  names: string; // squeezed
  words: string; // of its names
  text?: string; // whatever else it says
}

export interface SearchIndex {
  format: number;
  base: string;
  chart: string;
  passing: string[]; // words that tell no entry from another
  entries: Entry[];
}

export interface Found {
  entries: Entry[]; // best first
  instead: [typed: string, taken: string][]; // words that are nowhere, and the nearest that are
  // Of a large chart (rows.ts):
  whole?: boolean; // each has all words of the question
  more?: number; // that there are besides
  many?: true; // rows: the question must say more of their names
  failed?: true; // rows: they did not come
}

type Scores = Map<Entry, number>;

/** Longest question looked at, in characters. */
export const longestQuestion = 80;

const textWeight = 1;
// A word of a short name tells more than one of a long name.
const nameWeight = (entry: Entry): number => 3 + 4 / entry.words.split(" ").length;
// Of entries that fit alike, what a reader with a joint in hand wants first.
const favour: Record<Kind, number> = { row: 1.25, word: 1.2, sheet: 1.05, guide: 1, source: 0.7 };
// The whole question is a name, or begins one.
const isName = 60;
const beginsName = 8;

/** Makes the index ready for questions, once. */
export function lookup(index: SearchIndex): (question: string) => Found {
  const vocabulary = new Map<string, Scores>();
  for (const entry of index.entries) {
    const put = (words: string, weight: number): void => {
      for (const word of words.split(" ")) {
        vocabulary.set(word, (vocabulary.get(word) ?? new Map<Entry, number>()).set(entry, weight));
      }
    };
    put(entry.text ?? "", textWeight); // has no word of the names
    put(entry.words, nameWeight(entry));
  }

  // Every entry with a word like this one. Only when there is none, the nearest spelling.
  function like(word: string, instead: Found["instead"]): Scores {
    const scores: Scores = new Map();
    const add = (places: Scores, quality: number): void => {
      const rare = Math.log(1 + index.entries.length / places.size);
      for (const [e, weight] of places) scores.set(e, Math.max(scores.get(e) ?? 0, quality * weight * rare));
    };
    for (const [term, places] of vocabulary) {
      const quality = sameness(word, term);
      if (quality > 0) add(places, quality);
    }
    if (scores.size > 0) return scores;
    const near = nearest(word, vocabulary);
    for (const [, places] of near) add(places, 0.5);
    if (near[0]) instead.push([word, near[0][0]]);
    return scores;
  }

  // "13-10" is the name 1310, if there is one, or else a 13 and a 10.
  function likeAll(part: string, instead: Found["instead"]): Scores {
    const pieces = vocabulary.has(squeeze(part)) ? [squeeze(part)] : part.split(" ");
    const each = pieces.map((piece) => like(piece, instead));
    const all: Scores = new Map();
    for (const entry of each[0]?.keys() ?? []) {
      const scores = each.flatMap((s) => s.get(entry) ?? []);
      if (scores.length === each.length) all.set(entry, sum(scores) / scores.length);
    }
    return all;
  }

  return (question) => {
    const found: Found = { entries: [], instead: [] };
    const typed = question.slice(0, longestQuestion);
    const whole = squeeze(fold(typed));
    const parts = typed.split(/\s+/).map(fold).filter(Boolean);
    const telling = parts.filter((p) => p !== "x" && !index.passing.includes(p));
    const asked = telling.length > 0 ? telling : parts;
    const each = asked.map((part) => likeAll(part, found.instead));

    const ranked = index.entries.flatMap((entry) => {
      const names = entry.names.split(" ");
      const named = whole && names.includes(whole) ? isName : names.some((n) => begins(n, whole)) ? beginsName : 0;
      const scores = each.flatMap((s) => s.get(entry) ?? []);
      const score = favour[entry.kind] * (named + sum(scores));
      return score > 0 ? { entry, score, all: named > 0 || scores.length === asked.length } : [];
    });
    const all = ranked.filter((r) => r.all);
    const best = Math.max(...ranked.map((r) => r.score));
    if (capspanInPieces) found.whole = all.length > 0;
    const shown = all.length > 0 ? all : ranked.filter((r) => r.score >= best / 2);
    found.entries = shown.sort((a, b) => b.score - a.score).map((r) => r.entry);
    return found;
  };
}

function sum(list: readonly number[]): number {
  return list.reduce((a, b) => a + b, 0);
}

// 1 for the same word, less for one that begins with it; a plural is nearly the same.
function sameness(word: string, term: string): number {
  if (word === term) return 1;
  if (word.length > 2 && (word === `${term}s` || term === `${word}s`)) return 0.9;
  return begins(term, word) ? 0.3 + (0.4 * word.length) / term.length : 0;
}

function begins(term: string, word: string): boolean {
  return word.length > 1 && term.startsWith(word);
}

/**
 * The terms fewest slips away, one slip in a short word and two in a long one. A word with a digit has none: another
 * figure is another thing.
 */
export function nearest<T>(word: string, vocabulary: Iterable<[string, T]>): [string, T][] {
  let most = word.length < 4 || /\d/.test(word) ? 0 : word.length < 7 ? 1 : 2;
  let out: [string, T][] = [];
  if (most === 0) return out;
  for (const place of vocabulary) {
    const slips = apart(word, place[0], most);
    if (slips > most) continue;
    if (slips < most) out = [];
    most = slips;
    out.push(place);
  }
  return out;
}

/** How many letters are left out, put in, changed or swapped with the next one; more than `most` counts as most + 1. */
export function apart(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      row.push(least);
    }
    if (Math.min(...row) > most) return most + 1;
    before = last;
    last = row;
  }
  return last[b.length] ?? most + 1;
}
