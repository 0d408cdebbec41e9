// What is said of readings of a spline, a flange or another part that cannot be used as they are.
import type { Edges, PartColumn, PartTable } from "./part-types";
import { inch, type Reading } from "./reading";
import { both, list } from "./speech-words";

export const otherChart = (): string => "This page and its table do not go together. Load the page again.";
export const notQuery = (): string =>
  "There is no query here. It must be an object with a table and values: a list of readings for each column.";
export const notList = (): string => "Readings must be a list, such as 34.90 mm.";
export const notText = (): string => "A reading must be text, such as 34.90 mm, and a count too, such as 21.";
export const tooMany = (n: number, most: number): string =>
  `There are ${n} readings; only ${most} are looked at. Six good ones are plenty.`;
export const unknownWord = (key: string, text: string, words: readonly string[]): string =>
  `“${text}” is no ${key} that is known here. Use ${list(words, "or")}.`;
export const otherTable = (asked: string, table: string): string =>
  `These readings are for the table “${asked}”, and this is “${table}”.`;
export const noColumn = (key: string, table: PartTable): string =>
  `“${key}” is nothing this table is matched by. It is matched by ${list(
    table.columns.map((c) => c.id),
    "and",
  )}.`;
export const notCount = (label: string): string =>
  `${label}: a count is a whole number such as 6. Mark one, go round once, and count.`;
export const countsDiffer = (label: string, one: number, other: number): string =>
  `${label}: counted ${one} and ${other}. Mark one, go round once, and count again.`;
export const howManyHoles = (): string =>
  "Count the holes first: what lies between two of them says nothing about the circle until their number is known.";
export const oneHole = (): string => "One hole lies on no circle. Count all the holes.";
export const howWideHole = (edges: Edges): string =>
  `Measure the diameter of a hole too: from ${edges === "outer" ? "outer edge to outer edge there is one too many in it" : "inner edge to inner edge there is one missing"}. Or measure from one edge to the same edge of the other hole.`;

export function noSuchLength(column: PartColumn, r: Reading): string {
  const swapped = r.unit === "mm" ? r.mm * inch : r.mm / inch;
  const fits = swapped >= Number(column.least) && swapped <= Number(column.greatest);
  const hint = fits ? `: ${r.text.replace(/ \w+$/, r.unit === "mm" ? " in" : " mm")} would fit` : "";
  return `${column.label}: nothing in this table is ${both(r.mm, r.unit)}, nor anything like it. Look at the unit and the decimal point${hint}.`;
}

// ---- addresses

export const badAddress = (key: string): string => `“${key}” in the address means nothing here; it was left out.`;
