// Inputs are looked at here before anything is worked out, all of them at once.
import * as ranges from "./given-ranges";
import type { Choice, Complaint, Formula, MeasuredLength, Outcome, Range, Ranges, Remedy, Wrong } from "./types";

/** What is wrong with the inputs of a function, by their ranges. */
export function check<T extends object>(input: T, by: Ranges<T>, prefix = ""): Complaint[] {
  const found: Complaint[] = [];
  const given = input as { readonly [name: string]: unknown } | null | undefined;
  for (const [name, range] of Object.entries(by as Record<string, Range | Choice | null>)) {
    if (range !== null) look(found, prefix + name, given?.[name], range);
  }
  return found;
}

function look(found: Complaint[], input: string, value: unknown, range: Range | Choice): void {
  if ("words" in range) {
    if (value === undefined || value === null) found.push(complaint(input, "missing", "give-it"));
    else if (!range.words.includes(String(value))) found.push(complaint(input, "unknown", "choose-from-list"));
    return;
  }
  if (range.count === undefined) {
    one(found, input, value, range);
    return;
  }
  if (!counted(found, input, value, range.count[0], range.count[1])) return;
  for (const [i, x] of (value as unknown[]).entries()) one(found, `${input}[${i}]`, x, range);
}

/** Whether the value is a list of so many; what is wrong is added to `found`. */
export function counted(found: Complaint[], input: string, value: unknown, least: number, most: number): boolean {
  if (!Array.isArray(value)) found.push(complaint(input, "missing", "give-it"));
  else if (value.length < least) found.push(complaint(input, "too-few", "count-again", { bound: least }));
  else if (value.length > most) found.push(complaint(input, "too-many", "count-again", { bound: most }));
  else return true;
  return false;
}

function one(found: Complaint[], input: string, value: unknown, range: Range): void {
  if (value === null && range.none) return;
  if (!range.measured) {
    number(found, input, value, range);
    return;
  }
  const measured = value as Partial<MeasuredLength> | null | undefined;
  number(found, `${input}.value`, measured?.value, range);
  number(found, `${input}.uncertainty`, measured?.uncertainty, ranges.uncertainty);
}

function number(found: Complaint[], input: string, value: unknown, range: Range): void {
  const { unit } = range;
  if (value === undefined || value === null) found.push(complaint(input, "missing", "give-it", { unit }));
  else if (typeof value !== "number" || !Number.isFinite(value))
    found.push(complaint(input, "not-a-number", "type-a-number", { unit }));
  else if (value < range.least)
    found.push(complaint(input, "too-small", "check-the-unit", { bound: range.least, unit }));
  else if (value > range.most) found.push(complaint(input, "too-large", "check-the-unit", { bound: range.most, unit }));
}

/** One complaint. */
export function complaint(
  input: string,
  wrong: Wrong,
  remedy: Remedy,
  more: Partial<Pick<Complaint, "bound" | "unit" | "beside">> = {},
): Complaint {
  return { input, wrong, remedy, bound: more.bound ?? null, unit: more.unit ?? "", beside: more.beside ?? "" };
}

/** A complaint of two inputs that cannot both be right. */
export function conflict(
  input: string,
  beside: string,
  more: Partial<Pick<Complaint, "bound" | "unit">> = {},
): Complaint {
  return complaint(input, "conflict", "check-both", { ...more, beside });
}

export function refuse<T>(complaints: Complaint[]): Outcome<T> {
  return { ok: false, complaints };
}

export function answer<T>(result: T, formulas: Formula[]): Outcome<T> {
  return { ok: true, result, formulas };
}
