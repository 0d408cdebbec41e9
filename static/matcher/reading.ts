// One reading as a person types it: "1.187 in", "27,00 mm", "1 1/16", "3-7/32\"".
// A reading is understood in one way or not at all; every refusal says what to write.
import type { Unit } from "./types";
import { coarsestFraction } from "./given";
import { plainMarks } from "./marks";
import * as say from "./speech-reading";

export interface Reading {
  ok: true;
  mm: number;
  step: number; // what the last written digit stands for, mm
  unit: Unit;
  text: string; // canonical: "1.187 in", "27.00 mm", "1 1/16 in"
}

export interface Refusal {
  ok: false;
  says: string;
}

/** Exact by definition of the inch, 1959. */
export const inch = 25.4;

/** Longest reading looked at; a sane one has 12. */
export const longest = 24;

// One code point each: vulgar fractions a keyboard offers.
const vulgar: Record<string, string> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

const units: Record<string, Unit> = {
  in: "in",
  "in.": "in",
  inch: "in",
  inches: "in",
  '"': "in",
  "''": "in",
  mm: "mm",
  "mm.": "mm",
};

/** parseReading understands one reading; a bare number takes `unit`. It never throws. */
export function parseReading(input: string, unit?: Unit): Reading | Refusal {
  if (input.length > longest) return refuse(say.tooLong(longest));
  const text = tidy(input);
  if (text === "") return refuse(say.empty());

  const split = /^(.*?)\s*([a-zA-Zµ"']+\.?)?$/.exec(text);
  const number = split?.[1] ?? "";
  const word = split?.[2];
  if (!/\d/.test(number)) return refuse(say.noNumber(input));
  if (/^[-+]/.test(number)) return refuse(say.signed());
  if (/\de[-+]?\d/i.test(number)) return refuse(say.exponent());

  let written: Unit | undefined;
  if (word !== undefined) {
    written = units[word.toLowerCase()];
    if (written === undefined) return refuse(say.unknownUnit(word));
  }
  return number.includes("/") ? fraction(number, written) : decimal(number, written ?? unit);
}

function refuse(says: string): Refusal {
  return { ok: false, says };
}

/** tidy writes vulgar fractions out, and every mark in its plain form. */
function tidy(input: string): string {
  let out = "";
  for (const c of input) {
    const v = vulgar[c];
    out += v === undefined ? c : ` ${v}`;
  }
  return plainMarks(out);
}

function decimal(number: string, unit: Unit | undefined): Reading | Refusal {
  if (/[.,]\d*[.,]/.test(number)) return refuse(say.thousands(number));
  const parts = /^(\d*)(?:[.,](\d*))?$/.exec(number);
  if (parts === null) return refuse(/\d[^\d.,]+\d/.test(number) ? say.twoNumbers() : say.notNumber(number));
  if (unit === undefined) return refuse(say.whichUnit(number));
  const whole = parts[1] === "" || parts[1] === undefined ? "0" : parts[1];
  const digits = parts[2] ?? "";
  const value = Number(digits === "" ? whole : `${whole}.${digits}`);
  if (!(value > 0)) return refuse(say.zero());
  const scale = unit === "in" ? inch : 1;
  return {
    ok: true,
    mm: value * scale,
    step: 10 ** -digits.length * scale,
    unit,
    text: `${digits === "" ? whole : `${whole}.${digits}`} ${unit}`,
  };
}

function fraction(number: string, written: Unit | undefined): Reading | Refusal {
  const parts = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/.exec(number);
  if (parts === null) return refuse(/[.,]/.test(number) ? say.decimalFraction() : say.notNumber(number));
  if (written === "mm") return refuse(say.fractionOfMillimetre());
  const whole = Number(parts[1] ?? "0");
  const top = Number(parts[2]);
  const bottom = Number(parts[3]);
  if (bottom === 0) return refuse(say.zeroBelow());
  if (![2, 4, 8, 16, 32, 64, 128].includes(bottom)) return refuse(say.oddFraction(bottom));
  if (parts[1] !== undefined && top >= bottom) return refuse(say.improper());
  if (whole === 0 && top === 0) return refuse(say.zero());
  return {
    ok: true,
    mm: (whole + top / bottom) * inch,
    step: inch / Math.max(bottom, coarsestFraction),
    unit: "in",
    text: `${parts[1] === undefined ? "" : `${whole} `}${top}/${bottom} in`,
  };
}
