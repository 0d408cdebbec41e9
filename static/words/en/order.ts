// What the enquiry slip says: on the page, on paper, in a text message and in a mail. Labels of the form are in
// templates/words/en/order.yaml.
import type { Verdict } from "../../matcher/types";
import type { Open } from "../../order/facts";
import type { Extra, Grease } from "../../order/slip";

export const addressWords = {
  empty: "This slip is empty. Put a joint on it below, or come here from an identification.",
  broken: "This link has lost a piece on its way, so nothing of it is used. Ask for it to be sent again, as one line.",
  notOurs: "This link holds no enquiry. It may have been typed by hand or changed.",
  tooLong: "This link is too long to be one of ours. Ask for a new one.",
  unknownKey: (key: string) => `The link says something this page does not know: ${key}.`,
  twice: (key: string) => `The link says ${key} twice; the first is used.`,
  tooMany: (given: number, most: number) =>
    `The link holds ${given} joints and a slip has room for ${most}: the first ${most} are here.`,
  badCount: (n: number, text: string) => `Joint ${n + 1}: “${text}” is no number of joints; 1 is put in.`,
  ofJoint: (n: number, says: string) => `Joint ${n + 1}: ${says}`,
};

export const extraWords: Record<Extra, string> = {
  clips: "clips",
  straps: "straps with their bolts",
  "u-bolts": "U-bolts with their nuts",
  "plate-bolts": "plate bolts with their locks",
};

export const greaseWords: Record<Grease, string> = { fitting: "with grease fitting", sealed: "sealed for life" };

export const openWords: Record<Open, string> = {
  size: "size",
  grease: "grease fitting or sealed",
  "clip-thickness": "thickness of the clips",
  clips: "number of clips",
  straps: "number of straps",
  "u-bolts": "number of U-bolts",
  "plate-bolts": "number of plate bolts",
};

export const notChecked = [
  "whether it fits your yokes",
  "load, angle and speed",
  "the state of yokes, bores and shaft",
] as const;

export const factWords = {
  chosen: (row: string) => `Size ${row} was chosen by its name. No reading stands behind it: measure before you order.`,
  open: "The size is not known yet.",
  noRow: (row: string) => `The chart of this page has no size named ${row}.`,
  noReading: "How it is held was noted; no reading stands behind it.",
};

/** How far the slip may be relied on, for each way the size came about. */
export const standing: Record<Verdict | "chosen" | "open", string> = {
  identified: "Identified by readings",
  possible: "Possible: confirm before you order",
  between: "Not settled: the readings leave several sizes",
  "not-in-chart": "Not in the chart: order by the readings",
  "measure-again": "Not settled: measure again",
  chosen: "Chosen by name, not measured",
  open: "Size not known",
};

export const joined = (names: readonly string[]): string => names.join(", ");

export const slipWords = {
  line: (cap: string, across: string, hold: string) => `cap ${cap}, across ${across}, ${hold}`,
  title: "Enquiry: universal joints",
  joint: (n: number, of: number) => (of > 1 ? `Joint ${n + 1} of ${of}` : "Joint"),
  wanted: (count: number) => `${count} wanted`,
  forPlace: (place: string) => `for: ${place}`,
  soldAs: "Sold as",
  oneOf: "One of",
  moreSizes: (n: number) => `and ${n} more`,
  hold: "How it is held",
  cap: "Cap diameter",
  across: "Across",
  faces: (faces: string) => `measured ${faces}`,
  chart: "Chart",
  measured: "Measured",
  bare: "worked out from the bare yoke",
  readings: (used: number, aside: number) =>
    `${used === 1 ? "1 reading" : `${used} readings`}${aside > 0 ? `, ${aside} set aside` : ""}`,
  readWith: (tool: string, condition: string) => `Read with ${tool}; the parts ${condition}.`,
  conditions: { new: "new", used: "used and clean", worn: "worn", rusted: "rusted" },
  notThese: "Not to be mixed up with",
  otherHold: "same figures, other hold",
  threads: "Threads that go with the name",
  elsewhere: "elsewhere",
  confirmMemory: "The figures are recalled, not published: confirm them before you order.",
  grease: "Grease",
  greaseOpen: "with fitting / sealed",
  extras: "With it",
  thickness: "thickness of the clips",
  noExtras: "nothing asked for",
  part: "Part number offered",
  price: "Price, and when",
  back: "The identification",
  backRow: "The size in the chart",
  qr: (n: number) => `QR code that leads back to joint ${n + 1}`,
  shop: "To",
  from: "From",
  job: "For",
  note: "Note",
  date: "Date",
  version: "Chart",
  notChecked: "Not checked",
  defers:
    "Compare the new joint with the old one before you press it in. The maker’s manual and a driveline shop have the last word.",
  expanded: "± holds in about 95 of 100 such measurements. ≈ is converted.",
};

export const addWords = {
  nothing: "Write the name of a size, such as 1310, or paste the address of an identification.",
  unknown: (text: string) =>
    `“${text}” is no size in the chart and no address of an identification. Write a name as the chart has it, such as 1310, or paste the whole address.`,
  several: (text: string, rows: string) => `“${text}” is another name of several sizes: ${rows}. Write one of them.`,
};

export const messageWords = {
  head: "Enquiry for universal joints:",
  line: (count: number, size: string) => `${count} x ${size}`,
  unsettled: (standing: string) => `size open (${standing.toLowerCase()})`,
  also: (names: string) => ` (also sold as ${names})`,
  cap: "cap",
  across: "across",
  measured: "measured",
  not: (names: string) => `Not the ${names}.`,
  ask: "Do you have it, at what price, and when?",
  link: "All of it:",
};

export const mailWords = {
  subject: (sizes: string, job: string) => `Enquiry: universal joint ${sizes}${job ? `, ${job}` : ""}`,
  greeting: "We ask for an offer of these universal joints.",
  link: "The slip with everything, to open or print:",
  chart: (version: string) => `Figures from the chart of ${version}.`,
};

export const words = {
  noCore: "A part of this page did not arrive. Reload it where there is signal, or print the blank slip.",
  noChart: "The chart could not be fetched. Reload the page where there is signal, or print the blank slip.",
  otherChart: (made: string, now: string) =>
    `This slip was made with chart ${made}; this page has ${now} and shows its figures.`,
  tooLong: (length: number, most: number) =>
    `The link has ${length} characters; some messengers cut links of more than ${most}. Shorten the note, take out readings you do not need, or make a second slip for some of the joints. Printing, copying and the file work all the same.`,
  qr: "The slip as a QR code",
  remove: (n: number) => `Take off joint ${n + 1}`,
  removed: "Taken off.",
  undo: "Put it back",
  back: "Back on the slip.",
  full: (most: number) => `A slip has room for ${most} joints. Make a second one for more.`,
  added: (what: string) => `${what} is on the slip.`,
  begun: (sizes: string) => `There is a slip begun in this window already: ${sizes}. Does the new joint go on it?`,
  aJoint: "a joint",
  kept: "This is the slip you began in this window.",
  badNumber: (text: string, most: number) => `“${text}” is no number from 1 to ${most}: the last good one stays.`,
  numbered: (n: number) => `Joint ${n + 1}`,
  copied: "Copied.",
  copyByHand: "Copying is not allowed here. The text is selected: copy it yourself.",
  fileName: "enquiry.json",
};
