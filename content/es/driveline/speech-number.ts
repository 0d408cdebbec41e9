// Lo que se dice de un número que no se puede entender: qué está mal, y qué escribir.
import { list } from "../matcher/speech-words";

export const empty = (): string => "Aquí no hay nada. Escriba un número.";
export const tooLong = (most: number): string => `Eso tiene más de ${most} caracteres. Escriba un solo número.`;
export const noNumber = (text: string): string =>
  `No hay ningún número en «${text.slice(0, 40)}». Escriba uno, como 3 o 3,5.`;
export const twoNumbers = (): string => "Aquí hay dos números. Escriba uno.";
export const unknownUnit = (word: string, known: readonly string[]): string =>
  `«${word.slice(0, 20)}» no es una unidad que vaya aquí. Escriba ${list(known, "o")}.`;
