// Lo que se dice de una dirección que no se puede leer entera.
import { called, list } from "./speech-words";

export const tooLong = (): string =>
  "Esta dirección es demasiado larga para ser una de las nuestras. Escriba las lecturas a mano.";
export const broken = (): string =>
  "El enlace perdió un trozo por el camino, así que pueden faltar lecturas o estar cortadas. Pídalo otra vez, en una sola línea.";
export const twice = (key: string): string => `La dirección dice «${key}» dos veces; vale la primera.`;
export const unknownKey = (key: string): string => `«${key}» en la dirección no significa nada aquí; se dejó fuera.`;
export const unknownWord = (key: string, word: string, words: readonly string[]): string => {
  const plain = key.replace(/2$/, "");
  return `«${word}» en la dirección no es un valor conocido de «${(called as Record<string, string>)[plain] ?? plain}». Puede ser ${list(words, "o")}.`;
};
