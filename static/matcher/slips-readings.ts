// Slips of writing: readings as they would have been without them. What the text itself
// says is changed, so that a corrected reading has the step and the unit it would have had.
import { inch, type Reading } from "./reading";

/** What one reading would have been; undefined where this slip cannot be. */
export type Change = (r: Reading) => Reading | undefined;

/** The number is of the other unit than the one beside it. */
export const otherUnit: Change = (r) => {
  if (r.text.includes("/")) return undefined; // a fraction is never of millimetres
  const [unit, scale] = r.unit === "mm" ? (["in", inch] as const) : (["mm", 1 / inch] as const);
  return { ...r, mm: r.mm * scale, step: r.step * scale, unit, text: `${number(r)} ${unit}` };
};

/** The decimal point belongs so many places further to the right. */
export function pointMoved(places: number): Change {
  return (r) => {
    if (r.text.includes("/")) return undefined;
    const scale = 10 ** places;
    return { ...r, mm: r.mm * scale, step: r.step * scale };
  };
}

/** Two neighbouring digits are exchanged; the place is that of the lower one: 0 the units, -1 the tenths. */
export function digitsExchanged(place: number): Change {
  return (r) => {
    if (r.text.includes("/")) return undefined;
    const digits = number(r);
    const low = at(digits, place);
    const high = at(digits, place + 1);
    const [a, b] = [digits[high], digits[low]];
    if (a === undefined || b === undefined || a === b) return undefined;
    const turned = [...digits];
    turned[high] = b;
    turned[low] = a;
    return { ...r, mm: Number(turned.join("")) * (r.unit === "in" ? inch : 1) };
  };
}

/** The places of a reading's digits but the first, for digitsExchanged. */
export function places(r: Reading): number[] {
  if (r.text.includes("/")) return [];
  const [whole = "", decimals = ""] = number(r).split(".");
  return Array.from({ length: whole.length + decimals.length - 1 }, (_, i) => whole.length - 2 - i);
}

function number(r: Reading): string {
  return r.text.split(" ")[0] ?? "";
}

// Where in the text the digit of a place stands.
function at(text: string, place: number): number {
  const point = text.includes(".") ? text.indexOf(".") : text.length;
  return place >= 0 ? point - 1 - place : point - place;
}
