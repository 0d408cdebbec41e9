// Lo que se dice de datos que no se pueden usar: qué está mal, y qué escribir.
import { list } from "../matcher/speech-words";

export const address = (): string => "Dirección";
export const fragmentTooLong = (): string =>
  "La dirección es demasiado larga para ser la de un cálculo. Escriba los números de nuevo.";
export const unknownInput = (key: string, known: readonly string[]): string =>
  `«${key.slice(0, 40)}» no es un dato de este cálculo. Conoce ${list(known)}.`;
export const twice = (key: string): string =>
  `«${key.slice(0, 40)}» está dos veces. Escríbalo una sola vez; se tomó el primero.`;
export const unknownChoice = (text: string, known: readonly string[]): string =>
  `«${text.slice(0, 40)}» no es ninguna de las opciones. Tome ${list(known, "o")}.`;
export const range = (least: string, most: string, sign: string): string =>
  `${least} a ${most}${sign === "" || sign === "°" ? sign : ` ${sign}`}`;
export const outside = (usual: string, why: string): string =>
  `Eso queda fuera de ${usual}. Mire primero la unidad y la coma decimal.${why === "" ? "" : ` ${why}`}`;
export const twoMeanings = (text: string, decimal: string, thousands: string): string =>
  `«${text.slice(0, 40)}» puede ser ${decimal} o ${thousands}. Escríbalo de una de estas maneras.`;
export const textTooLong = (most: number): string => `Eso tiene más de ${most} caracteres. Escriba menos.`;
