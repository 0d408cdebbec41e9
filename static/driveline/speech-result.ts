// What is said round every result: units, limits, sources, and what could not be worked out.
import { capital, list } from "../matcher/speech-words";
export { capital };
import type { Met } from "./description";
import type { Basis, Ground, Wrong } from "./types";
import { sources, type Source } from "./sources";

export const withUnit = (value: string, unit: string): string =>
  unit === "" ? value : unit === "°" || unit === "%" ? `${value}${unit === "°" ? "°" : " %"}` : `${value} ${unit}`;

export const both = (text: string, also: string | undefined): string =>
  also === undefined ? text : `${text} (${also})`;

export const bound = (kind: "least" | "most", text: string): string =>
  kind === "most" ? `at most ${text}` : `at least ${text}`;

export const span = (least: string, most: string): string => {
  if (most === "") return bound("least", least);
  if (least === "") return bound("most", most);
  return least === most ? least : `${least} to ${most}`;
};

export const metWords: Record<Met, string> = {
  within: "within",
  above: "above",
  below: "below",
  "not known": "not known",
};

export const basisWords: Record<Basis, string> = {
  published: "published",
  "common-practice": "common practice, no source named",
  memory: "recalled, not published: confirm it",
  derived: "worked out here",
  judgement: "our judgement",
};

// Documents of the chart's registry that its rows name, beside those of the calculations.
const ofChart: Record<string, Source> = {};

/** Documents lists the documents of the chart's rows. */
export function learnDocuments(list_: readonly (Source & { key: string })[]): void {
  for (const document of list_) ofChart[document.key] = document;
}

/** A document's publisher, and what it is called besides. */
export function documentName(key: string): [publisher: string, title: string] {
  const source: Source | undefined = (sources as Record<string, Source>)[key] ?? ofChart[key];
  return source === undefined ? [key, ""] : [source.publisher, `, ${source.title}`];
}

const sourceName = (key: string): string => documentName(key).join("");

/** What a figure rests on, in words. */
export function grounds(list_: readonly Ground[]): string {
  return list_.map(ground).join("; ");
}

export function ground(g: Ground): string {
  const at = g.at === undefined ? "" : `, ${g.at}`;
  return g.source === "" ? basisWords[g.basis] : `${basisWords[g.basis]}: ${sourceName(g.source)}${at}`;
}

/** The place in a document and what is said there. */
export function placeIn(at: string | undefined, says: string | undefined, named: boolean): string {
  const place = at === undefined ? "" : `, ${at}`;
  if (says === undefined || says === "") return place;
  return named ? `${place} (${says})` : says;
}

export const stillNeeded = (labels: readonly string[]): string => `Still needed: ${list(labels)}.`;

export function unusable(input: string, beside: string, wrong: Wrong): string {
  if (input === "") return "These figures cannot be used together. Check the units first, then the readings.";
  if (wrong === "conflict" && beside !== "") return `${input} does not go with ${beside}. Check both.`;
  return `${input} cannot be used here. Check its unit first, then the reading.`;
}

export const sheet = {
  limit: "Limit",
  source: "Source",
  inFigures: "The same in figures",
  sameFormula: "By the same formula.",
  refused: "Cannot be used yet",
  notChecked: "Not checked",
  nothing: "Type what you have measured. The result stands here as soon as there is enough for a part of it.",
};

export const limitsOf = (of: string): string => `${of}, limits in print`;
export const standing = (of: string, value: string): string => (of === "" ? value : `${of}: ${value}`);
