// The rows of a large chart looked up by their names. They lie in drawers (build/search_rows.go); a question opens the
// one that it begins, or the list of the first where too many names begin so.
//
//   goal      what is found is what a look at all names would find, in the same order, from a drawer or two
//   non-goal  words of a row's note, and sizes, which are the core's
import { drawersOf, type DrawerList, fetchDirectory, keyEnd } from "../late/drawers";
import { fold, squeeze } from "./fold";
import { nearest, type Entry, type Found } from "./lookup";

/** A row: id, figures, address below the base (which the id completes behind a #), other names. */
export type Packed = readonly [id: string, note: string, place: string, ...also: string[]];

/** What the build says of the search of a large chart; its address stays. */
export interface RowDirectory {
  format: number;
  base: string;
  chart: string;
  entries: string; // address of the index of all but the joints
  rows: DrawerList;
  first: Record<string, string>; // files of the first rows, by the beginnings that too many names have
  words: string; // the file of the words in names that have no figure
}

/** Rows in their order, and how many there are in all. */
export interface Begun {
  rows: readonly Packed[];
  count: number;
  many?: true; // too many to look at: the question must say more
  some?: true; // they have the words with a figure, and not the others
}

const none: Begun = { rows: [], count: 0 };
const shortestTail = 3;
// Of a question without a figure, so many pages and words stand before the rows whose names it only begins.
const pagesFirst = 10;

/** A name from its beginning, and from that of each later word: build/search/rows.go has the same. */
function tails(name: string): string[] {
  const words = fold(name).split(" ");
  return words.map((_, n) => words.slice(n).join("")).filter((tail, n) => n === 0 || [...tail].length >= shortestTail);
}

interface Names {
  names: string[];
  tails: string[];
}

const known = new WeakMap<Packed, Names>();

function namesOf(row: Packed): Names {
  let of = known.get(row);
  if (of === undefined) {
    const all = [row[0], ...row.slice(3)].map(tails);
    of = { names: all.flatMap(([name]) => name || []), tails: all.flat() };
    known.set(row, of);
  }
  return of;
}

// 1 a name, 2 begins one, 3 begins a later word of one, 0 neither.
function likeness(question: string, row: Packed): number {
  const { names, tails } = namesOf(row);
  if (names.includes(question)) return 1;
  if ([...question].length < 2) return 0;
  if (names.some((name) => name.startsWith(question))) return 2;
  return tails.some((tail) => tail.startsWith(question)) ? 3 : 0;
}

/** The rows that a squeezed question begins, in their order. */
export function begunBy(question: string, rows: readonly Packed[]): Begun {
  const found = rows
    .map((row) => ({ row, like: likeness(question, row) }))
    .filter((found) => found.like > 0)
    .sort((a, b) => a.like - b.like || a.row[0].length - b.row[0].length || (a.row[0] < b.row[0] ? -1 : 1))
    .map((found) => found.row);
  return { rows: found, count: found.length };
}

/** The rows of whose names every word begins a word, in their order. */
export function withAll(words: readonly string[], rows: readonly Packed[]): Begun {
  const fit = rows.filter((row) => {
    const own = [row[0], ...row.slice(3)].flatMap((name) => fold(name).split(" "));
    return words.every((word) => own.includes(word) || ([...word].length > 1 && likeness(word, row) > 0));
  });
  fit.sort((a, b) => a[0].length - b[0].length || (a[0] < b[0] ? -1 : 1));
  return { rows: fit, count: fit.length };
}

export interface RowFinder {
  /** Rejects when a drawer does not come. */
  find(question: string): Promise<Begun & { instead: Found["instead"] }>;
}

export function rowFinder({ rows, first, words }: RowDirectory, passing: readonly string[]): RowFinder {
  const drawers = drawersOf<Packed>(rows);
  const broad = new Map(Object.entries(first));

  async function begin(question: string): Promise<Begun> {
    const list = broad.get(question);
    return list === undefined ? begunBy(question, await drawers.open(question + keyEnd)) : drawers.file<Begun>(list);
  }

  async function plain(question: string): Promise<Begun> {
    const folded = fold(question);
    if (folded === "") return none;
    const begun = await begin(squeeze(folded));
    if (begun.count > 0) return begun;
    const all = folded.split(" ").filter((word) => word !== "x" && !passing.includes(word));
    if (all.length < 2) return none;
    const telling = all.filter((word) => [...word].length >= shortestTail && !broad.has(word));
    const [longest] = telling.sort((a, b) => b.length - a.length);
    if (longest === undefined) return { ...none, many: true };
    return withAll(all, await drawers.open(longest + keyEnd));
  }

  // "1310 joint" is the name 1310 and a word that no name has.
  async function figures(question: string): Promise<Begun> {
    const all = question.split(/\s+/).filter((word) => fold(word) !== "");
    const telling = all.filter((word) => /\d/.test(fold(word)));
    const found = telling.length < all.length ? await plain(telling.join(" ")) : none;
    return found.count > 0 ? { ...found, some: true } : none;
  }

  return {
    async find(question) {
      const found = await plain(question);
      if (found.count > 0 || found.many) return { ...found, instead: [] };
      const instead = await misspelt(fold(question).split(" "));
      if (instead.length > 0) {
        const taken = new Map(instead);
        const words = fold(question).split(" ");
        const again = await plain(words.map((word) => taken.get(word) ?? word).join(" "));
        if (again.count > 0) return { ...again, instead };
      }
      return { ...(await figures(question)), instead: [] };
    },
  };

  // Words that no name has, with the nearest that one has.
  async function misspelt(asked: readonly string[]): Promise<Found["instead"]> {
    if (asked.every((word) => /\d|^$/.test(word))) return []; // nothing is near to figures
    const inNames = await drawers.file<string[]>(words);
    const named = inNames.map((name): [string, null] => [name, null]);
    return asked.flatMap((word): Found["instead"] => {
      if (inNames.some((name) => name.startsWith(word))) return [];
      return nearest(word, named)
        .slice(0, 1)
        .map(([near]) => [word, near]);
    });
  }
}

/** One answer of both: rows by name, and what the words of the question found elsewhere. */
export function together(question: string, rows: Begun & { instead: Found["instead"] }, pages: Found): Found {
  if (rows.count === 0) return rows.many ? { ...pages, many: true } : pages;
  const named = squeeze(fold(question));
  const own = rows.rows.map(entryOf);
  const beside = rows.some || (pages.whole && pages.instead.length === 0) ? pages.entries : [];
  const exact = rows.rows.filter((row) => likeness(named, row) === 1).length;
  const front = /\d/.test(question) ? own.length : exact;
  return {
    entries: [...own.slice(0, front), ...beside.slice(0, pagesFirst), ...own.slice(front), ...beside.slice(pagesFirst)],
    instead: rows.some ? pages.instead : rows.instead,
    whole: !rows.some,
    more: rows.count - rows.rows.length,
  };
}

function entryOf([id, note, place]: Packed): Entry {
  return { kind: "row", address: place.endsWith("#") ? place + id : place, title: id, note, names: "", words: "" };
}

/** The question of the panel. `address` is the directory's: it is read anew when a drawer it names does not come. */
export function finder(
  address: string,
  directory: RowDirectory,
  passing: readonly string[],
  pages: (question: string) => Found,
): (question: string) => Promise<Found> {
  let rows = rowFinder(directory, passing);
  return async (question) => {
    const found = pages(question);
    try {
      return together(question, await rows.find(question), found);
    } catch {
      // A newer edition may have come since: its drawers have other names.
    }
    try {
      rows = rowFinder(await fetchDirectory<RowDirectory>(address), passing);
      return together(question, await rows.find(question), found);
    } catch {
      return { ...found, failed: true };
    }
  };
}
