// A field that takes readings, by keys, by paste, or from a caliper that types.
//
// A reading that does not parse stays in the field with its complaint. Tab adds and stays, because some calipers
// type a Tab after the number; an empty field lets Tab pass, so nobody is caught in it.
import { local } from "../../matcher/speech-number";
import type { Measurand, Unit } from "../../matcher/types";
import { part } from "./element";
import { splitReadings, withUnit } from "./state";
import { words } from "words:identify";

/** Which readings a field adds to. */
export interface Target {
  end: number;
  quantity: Measurand;
}

export interface FieldOptions {
  root: HTMLElement; // holds the field, its buttons and its complaint
  name: string; // of the field on the page, for ids
  unit: () => Unit; // of a bare number
  complaint: (reading: string) => string | null; // what the core has against a reading
  take: (reading: string) => void;
  changed: (said: string) => void;
}

export function readingField(options: FieldOptions): HTMLInputElement {
  const { root } = options;
  const input = part<HTMLInputElement>(root, "reading");
  const complaint = part(root, "complaint");
  const keys = part(root, "keys");
  complaint.id = `complaint-${options.name}`;
  input.setAttribute("aria-describedby", complaint.id);

  function complain(text: string | null): void {
    complaint.hidden = text === null;
    complaint.textContent = text ?? "";
    input.setAttribute("aria-invalid", String(text !== null));
  }

  // Adds what parses, keeps the rest in the field; true when nothing is left there.
  function add(text = input.value): boolean {
    const left: string[] = [];
    const added: string[] = [];
    let first: string | null = null;
    for (const one of splitReadings(text)) {
      const reading = withUnit(one.replace(",", "."), options.unit()); // kept with a point, in every language
      const says = options.complaint(reading);
      if (says === null) {
        options.take(reading);
        added.push(local(reading));
      } else {
        left.push(one);
        first ??= says;
      }
    }
    input.value = left.join("; ");
    complain(first);
    if (added.length) options.changed(words.added(added.join(", ")));
    return left.length === 0;
  }

  input.addEventListener("keydown", (event) => {
    const typed = input.value.trim() !== "";
    if (event.key === "Enter") {
      event.preventDefault(); // the form is never sent
      add();
    } else if (event.key === "Tab" && !event.shiftKey && typed && add()) {
      event.preventDefault();
    }
  });
  input.addEventListener("input", () => complain(null));
  input.addEventListener("change", () => void add()); // on leaving the field
  input.addEventListener("paste", (event) => {
    const text = event.clipboardData?.getData("text") ?? "";
    if (splitReadings(text).length < 2) return; // one reading: let the reader finish it
    event.preventDefault();
    add(`${input.value}\n${text}`); // not by way of the field, which would swallow the line ends
  });
  part(root, "add").addEventListener("click", () => {
    add();
    input.focus();
  });
  keys.addEventListener("click", () => {
    const whole = input.inputMode !== "text";
    input.inputMode = whole ? "text" : "decimal";
    keys.setAttribute("aria-pressed", String(whole));
    input.focus();
  });
  return input;
}
