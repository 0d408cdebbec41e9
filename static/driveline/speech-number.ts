// What is said of a number that cannot be understood: what is wrong, then what to write.
import { list } from "../matcher/speech-words";

export const empty = (): string => "There is nothing here. Write a number.";
export const tooLong = (most: number): string => `That is longer than ${most} characters. Write one number.`;
export const noNumber = (text: string): string =>
  `There is no number in “${text.slice(0, 40)}”. Write one, such as 3 or 3.5.`;
export const twoNumbers = (): string => "There are two numbers here. Write one.";
export const unknownUnit = (word: string, known: readonly string[]): string =>
  `“${word.slice(0, 20)}” is not a unit that fits here. Write ${list(known, "or")}.`;
