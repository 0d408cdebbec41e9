// Every word the search says by itself; the verdict on a size is the core's own text.
import type { Kind } from "../../parts/search/lookup";

export const kindWords: Record<Kind, string> = {
  row: "row",
  guide: "guide",
  word: "word",
  source: "source",
  sheet: "page",
};

export const words = {
  title: "Search",
  ask: "A name, a word, or a size",
  example: "1310 · snap ring · 27 x 74.6",
  close: "Close",
  all: "Everything from A to Z",
  key: "The key / opens the search on every page",
  found: (shown: number, all: number) =>
    all > shown ? `${shown} of ${all} found; another word narrows it.` : `${all} found.`,
  nothing: (typed: string) => `Nothing found for “${typed}”.`,
  instead: (pairs: readonly [string, string][]) =>
    `Taken as ${pairs.map(([typed, taken]) => `“${taken}” for “${typed}”`).join(", ")}.`,
  cap: (length: string) => `${length} as a cap`,
  across: (length: string) => `${length} as a distance across`,
  size: (cap: string, across: string) => `${cap} × ${across}`,
  measured: "size",
  comparing: "Comparing the size with the chart…",
  noCore: "The comparison of sizes did not arrive; use Identify.",
  noIndex: "What is searched did not arrive. Load the page again, or look from A to Z.",
} as const;
