// One number as a person types it: "3", "-2,5", "1250 mm", "49 7/32 in", "2°30'". Point and comma both stand before
// decimals. It is understood in one way or not at all, and every refusal says what to write; of a comma before three
// digits whoever knows the range of the input decides (fill.ts). Like reading.ts of the core, which is for lengths off a caliper only: here
// there are signs, other quantities, and no reading has to be more than nothing.
import { plainMarks } from "../matcher/marks";
import * as say from "../matcher/speech-reading";
import * as own from "./speech-number";
import { unitOf, unitsOf, type Quantity } from "./quantities";

export interface Typed {
  ok: true;
  value: number; // in the unit
  unit: string; // its name
  text: string; // the digits, in canonical form: "-2.5", "49 7/32"
  thousands?: number; // what it would be were its comma one between thousands: 2500 for "2,500"
}

export interface NotTyped {
  ok: false;
  says: string;
}

/** Longest number looked at; a sane one has 12 characters. */
export const longest = 32;

// What else people call the units.
const also: Record<string, string> = {
  '"': "in",
  "''": "in",
  inch: "in",
  inches: "in",
  "'": "ft",
  feet: "ft",
  foot: "ft",
  "°": "deg",
  degree: "deg",
  degrees: "deg",
  "rev/min": "rpm",
  "1/min": "rpm",
  "rev/s": "Hz",
  kmh: "km/h",
  kph: "km/h",
  nm: "N.m",
  n·m: "N.m",
  "n.m": "N.m",
  lbf·ft: "lbf.ft",
  "ft.lb": "lbf.ft",
  "ft-lb": "lbf.ft",
  "lb-ft": "lbf.ft",
  "lb.ft": "lbf.ft",
  lbf·in: "lbf.in",
  "in-lb": "lbf.in",
  "lb-in": "lbf.in",
  lbs: "lb",
  g·mm: "g.mm",
  oz·in: "oz.in",
  hours: "h",
};

/** parseNumber understands one number of a quantity; one without a unit takes `unit`. It never throws. */
export function parseNumber(input: string, quantity: Quantity, unit: string): Typed | NotTyped {
  if (input.length > longest) return refuse(own.tooLong(longest));
  const text = plainMarks(input);
  if (text === "") return refuse(own.empty());
  const minutes = quantity === "angle" || quantity === "slope" ? degreesMinutes(text) : null;
  if (minutes) return minutes;
  const split = /^([-+]?[\d.,/ ]*(?:-\d+ ?\/ ?\d+)?[\d.,/ ]*)(.*)$/.exec(text);
  const digits = (split?.[1] ?? "").trim();
  const word = (split?.[2] ?? "").trim();
  if (!/\d/.test(digits)) return refuse(own.noNumber(input.trim()));
  if (/^e[-+]?\d/i.test(word)) return refuse(say.exponent());
  const name = word === "" ? unit : nameOf(word, quantity);
  if (name === undefined) return refuse(own.unknownUnit(word, unitsOf(quantity)));
  return digits.includes("/") ? fraction(digits, name) : decimal(digits, name);
}

function refuse(says: string): NotTyped {
  return { ok: false, says };
}

/** The name of a unit by what somebody calls it. */
function nameOf(word: string, quantity: Quantity): string | undefined {
  const bare = word.replace(/\.$/, "");
  const names = unitsOf(quantity);
  const known = names.find((n) => n.toLowerCase() === bare.toLowerCase());
  if (known !== undefined) return known;
  const other = also[bare.toLowerCase()];
  return other !== undefined && unitOf(quantity, other) ? other : undefined;
}

function degreesMinutes(text: string): Typed | null {
  const parts = /^([-+]?)(\d{1,3}) ?° ?(\d{1,2}(?:[.,]\d+)?) ?'$/.exec(text);
  if (parts === null) return null;
  const minutes = Number((parts[3] ?? "").replace(",", "."));
  if (minutes >= 60) return null;
  const value = (parts[1] === "-" ? -1 : 1) * (Number(parts[2]) + minutes / 60);
  return { ok: true, value, unit: "deg", text: trimmed(value) };
}

function decimal(digits: string, unit: string): Typed | NotTyped {
  if (/[.,][^.,]*[.,]/.test(digits)) return refuse(say.thousands(digits));
  const parts = /^([-+]?)(\d*)(?:[.,](\d*))?$/.exec(digits);
  if (parts === null) return refuse(/\d[ ]\d/.test(digits) ? own.twoNumbers() : say.notNumber(digits));
  const sign = parts[1] === "-" ? "-" : "";
  const whole = parts[2] || "0";
  const text = `${sign}${whole}${parts[3] ? `.${parts[3]}` : ""}`;
  const typed: Typed = { ok: true, value: Number(text), unit, text };
  return /^[-+]?[1-9]\d{0,2},\d{3}$/.test(digits) ? { ...typed, thousands: Number(digits.replace(",", "")) } : typed;
}

function fraction(digits: string, unit: string): Typed | NotTyped {
  if (/[.,]/.test(digits)) return refuse(say.decimalFraction());
  const parts = /^([-+]?)(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/.exec(digits);
  if (parts === null) return refuse(say.notNumber(digits));
  const whole = Number(parts[2] ?? "0");
  const top = Number(parts[3]);
  const bottom = Number(parts[4]);
  if (bottom === 0) return refuse(say.zeroBelow());
  if (parts[2] !== undefined && top >= bottom) return refuse(say.improper());
  const sign = parts[1] === "-" ? "-" : "";
  return {
    ok: true,
    value: (sign ? -1 : 1) * (whole + top / bottom),
    unit,
    text: `${sign}${parts[2] === undefined ? "" : `${whole} `}${top}/${bottom}`,
  };
}

/** A number with ten significant digits and no zeros at its end, never as a power of ten: what a unit switch writes. */
export function trimmed(value: number): string {
  if (value === 0 || !Number.isFinite(value)) return "0";
  const whole = Math.floor(Math.log10(Math.abs(value))) + 1;
  const text = value.toFixed(Math.min(20, Math.max(0, 10 - whole)));
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}
