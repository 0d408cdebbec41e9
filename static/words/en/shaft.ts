// What the shaft record says by itself; labels of the page are in templates/words/en/shaft.yaml.

export const readWords = {
  empty: "The file is empty.",
  tooLong: "The file is far too large to be a shaft record.",
  notOurs: "This is no shaft record: it does not say kind “shaft-record”. Choose a file that was saved on this page.",
  enquiry: "This is an enquiry, not a shaft record. Its link opens it.",
  fault: (line: number, column: number, found: string) =>
    `The file is damaged at line ${line}, column ${column}${found === "" ? ", where it ends too early" : `, at “${found}”`}. What stands before that was read; what stands behind it is lost, so compare it with the original.`,
  later:
    "The file was made by a later edition of this page. What this edition knows was read. Reload the page to get the newest, then read the file again.",
  noFormat: "The file does not say which form it has; it was read as form 1.",
  noTitle: "It has no title: give it one.",
  untitled: "A shaft without a name",
  unknown: "This page does not know it, and left it out.",
  lacks: (names: string) => `It lacks ${names}, and was left out.`,
  cut: (longest: number) => `It is longer than ${longest} characters, and was cut.`,
  tooMany: (given: number, most: number) => `There are ${given} and room is for ${most}: the first ${most} were read.`,
  wrong: (text: string, wanted: string) =>
    `It is ${text}, where ${wanted} belongs. It was left out: write it in again.`,
  more: (n: number) => `and ${n} more of the like.`,
  text: "a text in quotes",
  list: "a list in [ ]",
  object: "a part in { }",
  date: "a day such as 2026-11-25",
  page: "the name of a calculation, such as angles",
  word: (words: readonly string[]) => `one of ${words.join(", ")}`,
};
