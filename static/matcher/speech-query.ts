// What is said of a query, or a chart, that cannot be used as it is: what is wrong, then what to do.
import type { Faces, Hold, Measurand } from "./types";
import { inch, type Reading } from "./reading";
import { both, capital, facesWords, holdWords, list } from "./speech-words";

export const otherChart = (): string => "This page and its chart do not go together. Load the page again.";
export const notQuery = (): string => "There is no query here. It must be an object with a list of ends.";
export const notEnd = (): string => "An end must be an object with a hold and readings.";
export const notText = (): string => "A reading must be text, such as 27.00 mm.";
export const notReadings = (quantity: Measurand): string =>
  `The ${quantity} must be a list of readings, such as 27.00 mm.`;
export const howManyEnds = (n: number): string =>
  `A joint has one kind of end, or two: give one or two ends${n > 2 ? `, not ${n}` : ""}.`;
export const emptyEnd = (n: number): string =>
  `The ${n === 0 ? "first" : "second"} end has no readings. Measure it, or leave that end out.`;
export const tooMany = (n: number, most: number): string =>
  `There are ${n} readings; only ${most} are looked at. Six good ones are plenty.`;
export const unknownWord = (name: string, text: string, words: readonly string[]): string =>
  `“${text}” is no ${name} that is known here. Use ${list(words, "or")}.`;
export const yokeFaces = (hold: Hold, right: readonly Faces[]): string =>
  `A yoke for ${holdWords[hold]} stands for a joint measured ${list(
    right.map((f) => facesWords[f]),
    "or",
  )}. Leave the faces out.`;
export const capWiderThanAcross = (): string =>
  "The cap is at least as wide as the whole joint. Look whether cap and across are in each other's place, or in another unit.";

export function facesDoNotGo(hold: Hold, faces: Faces, right: readonly Faces[]): string {
  return `A joint held by ${holdWords[hold]} is not measured ${facesWords[faces]}. Measure it ${list(
    right.map((f) => facesWords[f]),
    "or",
  )}.`;
}

export function noSuchLength(quantity: Measurand, r: Reading): string {
  const seen: Record<Measurand, string> = {
    cap: `driveline joint has a cap of ${both(r.mm, r.unit)}`,
    across: `driveline joint measures ${both(r.mm, r.unit)} across`,
    clip: `clip is ${both(r.mm, r.unit)} thick`,
  };
  return `No ${seen[quantity]}. Look at the unit and the decimal point${otherUnit(quantity, r)}.`;
}

// A caliper left in the other unit is the likeliest reason.
function otherUnit(quantity: Measurand, r: Reading): string {
  const mm = r.unit === "mm" ? r.mm * inch : r.mm / inch;
  const [least, most] = likely[quantity];
  const fits = mm >= least && mm <= most;
  return fits ? `: ${capital(r.text.replace(/ \w+$/, r.unit === "mm" ? " in" : " mm"))} would fit` : "";
}

const likely: Record<Measurand, readonly [number, number]> = { cap: [12, 100], across: [30, 250], clip: [1, 3] };
