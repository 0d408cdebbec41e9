// How readings and words are written into addresses.
import type { Unit } from "./types";
import { parseReading } from "./reading";

/** "1 1/16 in" travels as 1-1/16in; a text that is no reading as it is. */
export function short(text: string, unit: Unit | undefined): string {
  const r = parseReading(text, unit);
  return r.ok ? r.text.replace(/^(\d+) (\d+\/)/, "$1-$2").replace(" ", "") : text;
}

/** Any text as a value of a fragment; a slash stays as it is. */
export function toAddress(text: string): string {
  let whole = "";
  // A lone surrogate cannot be escaped; it is no part of any reading.
  for (const c of text) whole += /^[\ud800-\udfff]$/.test(c) ? "\ufffd" : c;
  return encodeURIComponent(whole).replace(/%2F/g, "/");
}
