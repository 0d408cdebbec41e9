// The inputs of a calculation, as somebody filled them: from a form, from an address, from the command line. Each is a
// text and a unit until it is read; what cannot be used is refused with its place and what to do, and stays as it was.
import { local, toField } from "../matcher/speech-number";
import type { Calculation, Field, Filled, Given, Input, NumberInput, Refusal, Values } from "./description";
import { parseNumber, trimmed, type Typed } from "./number";
import { unitOf } from "./quantities";
import * as say from "./speech-fill";

export interface Read {
  values: Values; // without those that are refused or not asked
  given: Given[];
  asked: string[]; // ids of the inputs that are asked with these values
  refusals: Refusal[];
}

/** Longest fragment looked at; the longest sane one stays below a thousand. */
const longestFragment = 4000;

/** The unit a number input begins with. */
export const firstUnit = (input: Input): string => (input.kind === "number" ? (input.units[0] ?? "") : "");

/** readFields reads what was filled. Choices come first, because they say what else is asked. */
export function readFields(calculation: Calculation, filled: Filled): Read {
  const { inputs, words } = calculation;
  const values: Values = {};
  const refusals: Refusal[] = [];
  const texts: Record<string, { value: string; unit: string }> = {};
  const refuse = (input: Input, text: string, says: string): void => {
    refusals.push({ input: input.id, label: words.inputs[input.id]?.label ?? input.id, text: text.slice(0, 60), says });
  };
  for (const input of inputs) {
    if (input.kind !== "choice") continue;
    const text = filled[input.id]?.text ?? input.preset;
    if (input.options.includes(text)) {
      values[input.id] = text;
      texts[input.id] = { value: words.inputs[input.id]?.options?.[text] ?? text, unit: "" };
    } else {
      values[input.id] = input.preset;
      refuse(input, text, say.unknownChoice(text, input.options));
    }
  }
  for (const input of inputs) {
    if (input.kind !== "text" || !isAsked(input, values)) continue;
    const text = (filled[input.id]?.text ?? "").trim();
    if (text.length > input.most) refuse(input, text, say.textTooLong(input.most));
    else if (text !== "") {
      values[input.id] = text;
      texts[input.id] = { value: text, unit: "" };
    }
  }
  for (const input of inputs) {
    if (input.kind !== "number" || !isAsked(input, values)) continue;
    const field = filled[input.id];
    const text = field === undefined ? (input.preset ?? "") : field.text;
    if (text.trim() === "") continue;
    const unit = field && input.units.includes(field.unit) ? field.unit : firstUnit(input);
    const typed = parseNumber(text, input.quantity, unit);
    if (!typed.ok) {
      refuse(input, text, typed.says);
      continue;
    }
    const known = unitOf(input.quantity, typed.unit);
    const base = known?.toBase(typed.value) ?? Number.NaN;
    if (!within(input, base)) {
      refuse(input, text, outside(input, typed.unit, words.inputs[input.id]?.why ?? ""));
      continue;
    }
    if (mayBeThousands(input, typed)) {
      refuse(input, text, say.twoMeanings(text, toField(trimmed(typed.value)), String(typed.thousands)));
      continue;
    }
    values[input.id] = base;
    texts[input.id] = { value: local(typed.text.replace(/^-/, "−")), unit: known?.sign ?? "" };
  }
  const asked = inputs.filter((input) => isAsked(input, values));
  return {
    values: only(values, asked),
    given: asked.flatMap((input) => {
      const text = texts[input.id];
      return text === undefined ? [] : [{ id: input.id, label: words.inputs[input.id]?.label ?? input.id, ...text }];
    }),
    asked: asked.map((input) => input.id),
    refusals,
  };
}

/** Whether an input is asked for with these choices. */
export function isAsked(input: Input, values: Values): boolean {
  return input.when === undefined || input.when(values);
}

function only(values: Values, asked: readonly Input[]): Values {
  const kept: Values = {};
  for (const { id } of asked) if (values[id] !== undefined) kept[id] = values[id];
  return kept;
}

function within(input: NumberInput, base: number): boolean {
  return base >= input.least - slack(input) && base <= input.most + slack(input);
}

/** Whether a comma before three digits can be meant either way: the input may be that many thousands too. */
function mayBeThousands(input: NumberInput, { thousands, unit }: Typed): boolean {
  return thousands !== undefined && within(input, unitOf(input.quantity, unit)?.toBase(thousands) ?? Number.NaN);
}

// A range is met by the very number that is printed as its end.
function slack(input: NumberInput): number {
  return (input.most - input.least) * 1e-9;
}

function outside(input: NumberInput, unit: string, why: string): string {
  return say.outside(range(input, unit), why);
}

/** The range of an input in a unit of it: "0.1 to 3 m". */
export function range(input: NumberInput, unit: string): string {
  const known = unitOf(input.quantity, unit) ?? unitOf(input.quantity, firstUnit(input));
  if (known === undefined) return "";
  const round = (base: number): string =>
    local(trimmed(Number(known.fromBase(base).toPrecision(4))).replace(/^-/, "−"));
  return say.range(round(input.least), round(input.most), known.sign);
}

/** The number of a field in another unit, exactly but for the eleventh digit; null for what is no number, or may be two. */
export function convert(input: NumberInput, field: Field, unit: string): string | null {
  const { quantity } = input;
  const typed = parseNumber(field.text, quantity, field.unit);
  if (!typed.ok || mayBeThousands(input, typed)) return null;
  const base = unitOf(quantity, typed.unit)?.toBase(typed.value);
  const into = unitOf(quantity, unit);
  return base === undefined || into === undefined ? null : trimmed(into.fromBase(base));
}

// ---- the fragment

/** encode writes what was filled as the fragment of the page's address, without "#". What is as preset is left out. */
export function encode(calculation: Calculation, filled: Filled): string {
  return calculation.inputs
    .flatMap((input) => {
      const field = filled[input.id];
      if (field === undefined || field.text.trim() === "") return [];
      if (input.kind === "choice") return field.text === input.preset ? [] : [`${input.id}=${escaped(field.text)}`];
      if (input.kind === "text") return [`${input.id}=${escaped(field.text.trim())}`];
      const typed = parseNumber(field.text, input.quantity, field.unit);
      const sure = typed.ok && !mayBeThousands(input, typed);
      const text = sure ? typed.text.replace(" ", "_") + typed.unit : field.text;
      if (sure && input.preset !== undefined && sameNumber(input, text)) return [];
      return [`${input.id}=${escaped(text)}`];
    })
    .join("&");
}

function sameNumber(input: NumberInput, text: string): boolean {
  const typed = parseNumber(input.preset ?? "", input.quantity, firstUnit(input));
  return typed.ok && typed.text + typed.unit === text;
}

/** decode reads a fragment, with or without "#". It never throws: what is not understood is refused. */
export function decode(calculation: Calculation, fragment: string): { filled: Filled; refusals: Refusal[] } {
  const filled: Filled = {};
  const refusals: Refusal[] = [];
  const refuse = (text: string, says: string): void => {
    refusals.push({ input: "", label: say.address(), text: text.slice(0, 60), says });
  };
  if (fragment.length > longestFragment) {
    refuse("", say.fragmentTooLong());
    return { filled, refusals };
  }
  for (const pair of fragment.replace(/^\s*#/, "").split("&")) {
    if (pair.trim() === "") continue;
    const at = pair.indexOf("=");
    const key = unescaped(at < 0 ? pair : pair.slice(0, at)).trim();
    const text = at < 0 ? "" : unescaped(pair.slice(at + 1).replace(/\+/g, " "));
    const input = calculation.inputs.find((one) => one.id === key);
    if (input === undefined)
      refuse(
        key,
        say.unknownInput(
          key,
          calculation.inputs.map((one) => one.id),
        ),
      );
    else if (filled[key] !== undefined) refuse(key, say.twice(key));
    else filled[key] = fieldOf(input, text);
  }
  return { filled, refusals };
}

/** A field with the unit its text names, which the unit switch then shows. */
export function fieldOf(input: Input, text: string): Field {
  if (input.kind !== "number") return { text: text.trim(), unit: "" };
  const number = text.trim().replace("_", " "); // 49 7/32 travels as 49_7/32
  const typed = parseNumber(number, input.quantity, firstUnit(input));
  if (!typed.ok || mayBeThousands(input, typed) || !input.units.includes(typed.unit))
    return { text: number, unit: firstUnit(input) };
  return { text: typed.text, unit: typed.unit };
}

function escaped(text: string): string {
  let whole = "";
  // A lone surrogate cannot be escaped; it is no part of any number.
  for (const c of text) whole += /^[\ud800-\udfff]$/.test(c) ? "\ufffd" : c;
  return encodeURIComponent(whole).replace(/%2F/g, "/");
}

function unescaped(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // a broken escape: taken as it stands
  }
}
