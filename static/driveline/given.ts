// How a description says its inputs, and how its parts read their values.
import type { ChoiceInput, NumberInput, TextInput, Values } from "./description";
import type { Quantity } from "./quantities";
import type { Range } from "./types";

/** A number that is there because the part needs it or it has a preset. */
export function num(values: Values, id: string): number {
  const value = values[id];
  return typeof value === "number" ? value : Number.NaN;
}

/** A number that may be left out. */
export function maybe(values: Values, id: string): number | undefined {
  const value = values[id];
  return typeof value === "number" ? value : undefined;
}

/** The value of a choice or text; empty where there is none. */
export function word(values: Values, id: string): string {
  const value = values[id];
  return typeof value === "string" ? value : "";
}

/** Inputs of one group of the form, in short. */
export function inputs(group: string) {
  return {
    number: (
      id: string,
      quantity: Quantity,
      range: Range,
      units: string[],
      more: Pick<NumberInput, "preset" | "optional" | "when"> = {},
    ): NumberInput => ({
      id,
      kind: "number",
      group,
      quantity,
      units,
      least: range.least,
      most: range.most,
      ...more,
    }),
    choice: (id: string, options: string[], more: Pick<ChoiceInput, "when"> = {}): ChoiceInput => ({
      id,
      kind: "choice",
      group,
      options,
      preset: options[0] ?? "",
      ...more,
    }),
    text: (id: string, most: number, more: Pick<TextInput, "optional" | "when"> = {}): TextInput => ({
      id,
      kind: "text",
      group,
      most,
      ...more,
    }),
  };
}
