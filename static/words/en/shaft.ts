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

export const keepWords = {
  another: "a new record",
  untitled: "A shaft without a name",
  kept: "Kept in",
  gone: "That record is no longer on this device. Choose another.",
  full: (title: string) => `${title} has no room for more. Take something out of it first.`,
  changed: "Another window changed that record in the same moment: press again.",
  refused:
    "This browser keeps nothing here: it has no room, or it is not allowed. Keep the address of this page instead.",
};

export const sheetWords = {
  job: "For",
  by: "By",
  date: "Date",
  chart: "Chart",
  joint: (n: number) => `Joint ${n + 1}`,
  clips: "Clips as fitted",
  note: "Note",
  figures: "Written down",
  notes: "Notes",
  more: (n: number) => `and ${n} more lines on its page.`,
  moreUnchecked: (n: number) => ` And ${n} more, on its page.`,
  notChecked: "What nobody measured or reckoned was not checked.",
  cautions:
    "Before work on the shaft: vehicle on level ground, wheels chocked, on rated stands, gearbox in neutral, shaft supported before it is unbolted. Mark the phase. Turning shafts stay guarded. Welding and balance are for a driveline shop; the maker’s manual and local codes come first.",
};

export const words = {
  untitled: "A shaft without a name",
  kept: "Kept on this device.",
  notKept:
    "Not kept on this device: it has no room, or the browser does not allow it. Everything is still here in this page. Save it as a file before you close it.",
  noRecord: "That record is not on this device. Read it from its file, or choose another.",
  changedElsewhere: "Another window had changed this record, so yours is kept as a copy beside it.",
  otherWindow: "Another window has changed this record.",
  deletedElsewhere:
    "This record was deleted in another window. It is still here in this page; the next change keeps it again.",
  showIt: "Show that one",
  copyOf: (title: string) => `${title.slice(0, 53)} (copy)`,
  joint: (n: number, names: string) => `Joint ${n + 1}${names === "" ? "" : `: ${names}`}`,
  differs: (names: string, chart: string) =>
    `When it was put in, chart ${chart} said ${names === "" ? "that no size was named" : names}. Look at it again.`,
  removeJoint: (n: number) => `Take off joint ${n + 1}`,
  removeFigure: (n: number) => `Take off figure ${n + 1}`,
  removeCalculation: (title: string) => `Take off ${title}`,
  badDate: (text: string) => `“${text}” is no day. Write year, month and day: 2026-11-25.`,
  removed: "Taken out.",
  undo: "Put it back",
  back: "Back in the record.",
  full: (most: number) => `A record has room for ${most} joints; the rest was left out.`,
  noChart: "The chart has not come yet, so no size can be looked up. Try again in a moment.",
  open: (title: string) => `Open ${title}`,
  delete: "Delete",
  deleteIt: (title: string) => `Delete ${title}`,
  deleted: (title: string) => `${title} is deleted.`,
  undoDelete: (title: string) => `Put it back: ${title}`,
  backAgain: (title: string) => `${title} is back.`,
  notPutBack: "It could not be put back on this device, so it is saved as a file.",
  notDeleted: "It could not be deleted: the browser does not allow it.",
  damaged: (says: string) => `A record that cannot be read. ${says}`,
  damagedName: "the damaged record",
  saveRaw: "Save it as it is",
  saveRawIt: "Save it as it is: the damaged record",
  readInPart: "Read, but not all of it:",
  unreadable: "The browser could not read the file.",
  fileName: (title: string) => {
    const plain = title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "");
    return `shaft-${plain.slice(0, 40) || "record"}.json`;
  },
};
