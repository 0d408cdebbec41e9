// What the page of corrections says by itself; labels are in templates/correct.html.
export const checkWords = {
  empty: "This is empty. Fill it in.",
  tooLong: (length: number, most: number) => `This has ${length} characters; at most ${most} are taken.`,
  invisible: (code: string) => `There is the invisible character ${code} in it. Type it again, on one line.`,
  badID: "Only letters, digits, and single hyphens or points between them.",
  taken: (id: string) => `“${id}” is taken by another source.`,
  badDate: "Write the day as 2026-11-25.",
  unknownWord: (word: string) => `“${word}” is none of the words that are known here.`,
  badNumber: (text: string, range: boolean) =>
    `“${text}” is not a number as the chart has it. Write 27.00, 1.062 or 1 3/16${range ? ", or a range such as 26-35" : ""}.`,
  implausible: (text: string, least: string, greatest: string) =>
    `${text} is outside ${least} to ${greatest}, which is all this column allows. Look at the point and the unit.`,
  noBasis: "It does not say why it is believed.",
  unknownSource: (id: string) => `The source “${id}” is not in the list.`,
  noSource: "Name the document that prints it.",
  senselessSource: "A source stands beside a figure that does not rest on it.",
  placeOfNothing: "A place without a document. Name the document.",
  noFaces: "Say between which faces it is measured.",
  facesOfNothing: "What does not exist has no faces.",
  facesOfAnotherHold: (faces: readonly string[]) =>
    `These faces do not go with how the joint is held. That would be: ${faces.join(", ")}.`,
  noReadings: "Write at least one reading.",
  noUnit: (text: string) => `“${text}” does not say its unit. Write mm or in after it.`,
  notAsMeasured: "The figure lies outside the readings.",
  othersAreFigures: "What stands beside a figure must be one.",
} as const;

export const typedWords = {
  nothingNew: "That is what the chart says already.",
  understood: (text: string, other: string) => `Understood as ${text}${other === "" ? "" : ` (≈ ${other})`}.`,
  reading: (typed: string, text: string) => `“${typed}” is understood as ${text}.`,
  refused: (typed: string, says: string) => `“${typed}”: ${says}`,
  whichUnit: (word: string, units: readonly string[]) =>
    `${word === "" ? "The unit is missing." : `“${word}” is not a unit of this column.`} Write ${units.join(" or ")} after it.`,
} as const;

export const pageWords = {
  place: (file: string, line: number) => `${file}, line ${line}`,
  noTable: (table: string) => `There is no table “${table}” in this chart. Choose one below.`,
  noRow: (row: string) => `There is no row “${row}” in this table. Choose one below.`,
  notThere:
    "A part of this page did not arrive. Reload it where there is signal, or correct the value by hand as below.",
  yours: (says: string) => `Yours: ${says}`,
  now: (figure: string, basis: string, measured: number) =>
    [
      figure,
      ...(basis === "" ? [] : [basis.replace("-", " ")]),
      ...(measured === 0 ? [] : [`measured ${measured} times`]),
    ].join(", "),
} as const;

export const outWords = {
  place: (file: string, line: number) => `${file}, line ${line}`,
  copied: "Copied. Paste it over the old line.",
  copyByHand: "Copying is not allowed here. The line is selected: copy it yourself.",
  subject: (of: string) => `Correction: ${of}`,
  body: (place: string, was: string, put: string, registry: string, entry: string) =>
    [
      `A correction for ${place}`,
      "",
      "Instead of",
      was,
      "put",
      put,
      ...(entry === "" ? [] : ["", `and at the end of ${registry}`, entry]),
      "",
    ].join("\n"),
} as const;
