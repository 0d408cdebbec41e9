// What is said of an address that cannot be read in full.
import { list } from "./speech-words";

export const tooLong = (): string => "This address is too long to be one of ours. Enter the readings by hand.";
export const broken = (): string =>
  "The link has lost a piece on its way, so readings may be missing or cut short. Ask for it again, as one line.";
export const twice = (key: string): string => `The address says “${key}” twice; the first one counts.`;
export const unknownKey = (key: string): string => `“${key}” in the address means nothing here; it was left out.`;
export const unknownWord = (key: string, word: string, words: readonly string[]): string =>
  `“${word}” in the address is no ${key.replace(/2$/, "")} that is known here. It may be ${list(words, "or")}.`;
