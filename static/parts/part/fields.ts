// The fields of a part's form: a count is one number, a length a list of readings with a chip for each.
import type { PartAnswer } from "../../matcher/part-types";
import { local } from "../../matcher/speech-number";
import { make, part } from "../identify/element";
import { readingField, type FieldOptions } from "../identify/field";
import { words as form } from "words:identify";
import { words } from "words:part";

export interface PartField {
  show(answer: PartAnswer | null): void;
}

export interface LengthOptions extends Pick<FieldOptions, "root" | "unit" | "complaint" | "changed"> {
  column: string; // or "hole-diameter"
  label: string;
  readings: () => string[];
}

export function lengthField(options: LengthOptions): PartField {
  const { root, column, readings } = options;
  const list = part(root, "readings");
  const aside = part(root, "set-aside");
  const input = readingField({ ...options, name: column, take: (reading) => readings().push(reading) });
  input.setAttribute("aria-label", words.next(options.label));

  function chip(reading: string, index: number, out: boolean, wrong: boolean): HTMLElement {
    const label = form.remove(local(reading));
    const button = make("button", { type: "button", class: "reading__remove", "aria-label": label }, "×");
    button.addEventListener("click", () => {
      readings().splice(index, 1);
      options.changed(form.removed(local(reading)));
      const buttons = list.querySelectorAll("button");
      (buttons[Math.min(index, buttons.length - 1)] ?? input).focus();
    });
    return make(
      "li",
      { class: out ? "reading reading--aside" : wrong ? "reading reading--wrong" : "reading" },
      make(out ? "s" : "span", { class: "reading__text num" }, local(reading)),
      " ",
      (out || wrong) && make("span", { class: "reading__word" }, out ? form.setAside : form.misread),
      " ",
      button,
    );
  }

  return {
    show(answer) {
      const read = answer?.readings.find((r) => r.column === column);
      const wrong = answer?.complaints.filter((c) => c.column === column) ?? [];
      const left = [...(read?.setAside ?? [])]; // each struck once, even if it was read twice
      list.replaceChildren(
        ...readings().map((reading, index) => {
          const at = left.indexOf(reading);
          if (at >= 0) left.splice(at, 1);
          return chip(
            reading,
            index,
            at >= 0,
            wrong.some((c) => c.index === index && c.text !== ""),
          );
        }),
      );
      complain(aside, wrong[0]?.says);
    },
  };
}

export interface CountOptions {
  root: HTMLElement;
  column: string;
  label: string;
  counts: () => string[];
  changed: (said: string) => void;
}

export function countField(options: CountOptions): PartField {
  const { root, column, counts } = options;
  const input = part<HTMLInputElement>(root, "count");
  const aside = part(root, "set-aside");
  input.setAttribute("aria-label", options.label);
  const take = (): void => {
    const text = input.value.trim();
    if (text === counts().join(" ")) return;
    counts().splice(0, counts().length, ...(text === "" ? [] : [text]));
    options.changed(words.counted(options.label, text));
  };
  input.addEventListener("input", take);
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter") event.preventDefault(); // the form is never sent
  });
  return {
    show(answer) {
      const wrong = answer?.complaints.find((c) => c.column === column);
      if (document.activeElement !== input) input.value = counts().join(" ");
      input.setAttribute("aria-invalid", String(wrong !== undefined));
      complain(aside, wrong?.says);
    },
  };
}

function complain(place: HTMLElement, says: string | undefined): void {
  place.hidden = says === undefined;
  place.textContent = says ?? "";
}
