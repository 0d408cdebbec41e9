// Lo que se dice de lecturas de un estriado, una brida u otra pieza que no se pueden usar como están.
import type { Edges, PartColumn, PartTable } from "./part-types";
import { inch, type Reading } from "./reading";
import { local } from "./speech-number";
import { both, list } from "./speech-words";

export const otherChart = (): string => "Esta página y su tabla no van juntas. Cargue la página otra vez.";
export const notQuery = (): string =>
  "Aquí no hay ninguna consulta. Tiene que ser un objeto con una tabla y valores: una lista de lecturas para cada columna.";
export const notList = (): string => "Las lecturas tienen que ser una lista, como 34.90 mm.";
export const notText = (): string => "Una lectura tiene que ser texto, como 34.90 mm, y una cuenta también, como 21.";
export const tooMany = (n: number, most: number): string =>
  `Hay ${n} lecturas; solo se miran ${most}. Con seis buenas sobra.`;
export const unknownWord = (key: string, text: string, words: readonly string[]): string =>
  `«${text}» no es un valor conocido de «${key}». Use ${list(words, "o")}.`;
export const otherTable = (asked: string, table: string): string =>
  `Estas lecturas son para la tabla «${asked}», y esta es «${table}».`;
export const noColumn = (key: string, table: PartTable): string =>
  `«${key}» no es nada por lo que se compare en esta tabla. Se compara por ${list(table.columns.map((c) => c.id))}.`;
export const notCount = (label: string): string =>
  `${label}: una cuenta es un número entero, como 6. Marque uno, dé una vuelta entera y cuente.`;
export const countsDiffer = (label: string, one: number, other: number): string =>
  `${label}: se contó ${one} y ${other}. Marque uno, dé una vuelta entera y cuente otra vez.`;
export const howManyHoles = (): string =>
  "Cuente primero los agujeros: lo que hay entre dos de ellos no dice nada del círculo mientras no se sepa cuántos son.";
export const oneHole = (): string => "Con un solo agujero no hay círculo. Cuente todos los agujeros.";
export const howWideHole = (edges: Edges): string =>
  `Mida también el diámetro de un agujero: de borde ${edges === "outer" ? "exterior a borde exterior sobra uno" : "interior a borde interior falta uno"}. O mida de un borde al mismo borde del otro agujero.`;

export function noSuchLength(column: PartColumn, r: Reading): string {
  const swapped = r.unit === "mm" ? r.mm * inch : r.mm / inch;
  const fits = swapped >= Number(column.least) && swapped <= Number(column.greatest);
  const hint = fits ? `: ${local(r.text.replace(/ \w+$/, r.unit === "mm" ? " in" : " mm"))} sí puede ser` : "";
  return `${column.label}: nada en esta tabla mide ${both(r.mm, r.unit)}, ni nada parecido. Mire la unidad y la coma decimal${hint}.`;
}

// ---- direcciones

export const badAddress = (key: string): string => `«${key}» en la dirección no significa nada aquí; se dejó fuera.`;
