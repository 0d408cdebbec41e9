// What is said of inputs that cannot be used: what is wrong, then what to write.
import { list } from "../matcher/speech-words";

export const address = (): string => "Address";
export const fragmentTooLong = (): string =>
  "The address is too long to be one of a calculation. Type the figures anew.";
export const unknownInput = (key: string, known: readonly string[]): string =>
  `“${key.slice(0, 40)}” is no input of this calculation. It knows ${list(known)}.`;
export const twice = (key: string): string =>
  `“${key.slice(0, 40)}” stands there twice. Give it once; the first was taken.`;
export const unknownChoice = (text: string, known: readonly string[]): string =>
  `“${text.slice(0, 40)}” is none of the choices. Take ${list(known, "or")}.`;
export const range = (least: string, most: string, sign: string): string =>
  `${least} to ${most}${sign === "" || sign === "°" ? sign : ` ${sign}`}`;
export const outside = (usual: string, why: string): string =>
  `That is outside ${usual}. Look at the unit and at the decimal point first.${why === "" ? "" : ` ${why}`}`;
export const twoMeanings = (text: string, decimal: string, thousands: string): string =>
  `“${text.slice(0, 40)}” can be ${decimal} or ${thousands}. Write it in one of these ways.`;
export const textTooLong = (most: number): string => `That is longer than ${most} characters. Write less.`;
