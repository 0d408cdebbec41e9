// Lo que se dice alrededor de cada resultado: unidades, límites, fuentes, y lo que no se pudo calcular.
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
  kind === "most" ? `a lo más ${text}` : `por lo menos ${text}`;

export const span = (least: string, most: string): string => {
  if (most === "") return bound("least", least);
  if (least === "") return bound("most", most);
  return least === most ? least : `${least} a ${most}`;
};

export const metWords: Record<Met, string> = {
  within: "dentro",
  above: "por encima",
  below: "por debajo",
  "not known": "no se sabe",
};

export const basisWords: Record<Basis, string> = {
  published: "publicado",
  "common-practice": "uso común, sin fuente nombrada",
  memory: "de memoria, no publicado: confírmelo",
  derived: "calculado aquí",
  judgement: "criterio nuestro",
};

// Lugares de documentos que tienen palabras, y quien no tiene nombre.
const places: Record<string, string> = {
  "list of ISO 21940-11": "lista de ISO 21940-11",
  "section 4.7": "sección 4.7",
  "section 7": "sección 7",
  "problem 3.3-8": "problema 3.3-8",
  "(a maker of farm machines)": "(un fabricante de máquinas agrícolas)",
};
const place = (text: string): string => places[text] ?? text;

// Documentos del registro del cuadro que nombran sus filas, al lado de los de los cálculos.
const ofChart: Record<string, Source> = {};

/** Toma nota de los documentos de las filas del cuadro. */
export function learnDocuments(list_: readonly (Source & { key: string })[]): void {
  for (const document of list_) ofChart[document.key] = document;
}

/** Quién publica un documento, y cómo se llama además. Los títulos quedan en su lengua. */
export function documentName(key: string): [publisher: string, title: string] {
  const source: Source | undefined = (sources as Record<string, Source>)[key] ?? ofChart[key];
  return source === undefined ? [key, ""] : [place(source.publisher), `, ${source.title}`];
}

const sourceName = (key: string): string => documentName(key).join("");

/** En qué se apoya un número, en palabras. */
export function grounds(list_: readonly Ground[]): string {
  return list_.map(ground).join("; ");
}

export function ground(g: Ground): string {
  const at = g.at === undefined ? "" : `, ${place(g.at)}`;
  return g.source === "" ? basisWords[g.basis] : `${basisWords[g.basis]}: ${sourceName(g.source)}${at}`;
}

/** El lugar en un documento y lo que se dice allí. */
export function placeIn(at: string | undefined, says: string | undefined, named: boolean): string {
  const where = at === undefined ? "" : `, ${place(at)}`;
  if (says === undefined || says === "") return where;
  return named ? `${where} (${says})` : says;
}

export const stillNeeded = (labels: readonly string[]): string => `Falta todavía: ${list(labels)}.`;

export function unusable(input: string, beside: string, wrong: Wrong): string {
  if (input === "") return "Estos números no se pueden usar juntos. Mire primero las unidades, después las lecturas.";
  if (wrong === "conflict" && beside !== "") return `«${input}» no va con «${beside}». Mire las dos cosas.`;
  return `«${input}» no se puede usar aquí. Mire primero su unidad, después la lectura.`;
}

export const sheet = {
  limit: "Límite",
  source: "Fuente",
  inFigures: "Lo mismo en números",
  sameFormula: "Por la misma fórmula.",
  refused: "Todavía no se puede usar",
  notChecked: "No se comprobó",
  nothing: "Escriba lo que midió. El resultado sale aquí en cuanto alcanza para una parte.",
};

export const limitsOf = (of: string): string => `${of}, límites publicados`;
export const standing = (of: string, value: string): string => (of === "" ? value : `${of}: ${value}`);
