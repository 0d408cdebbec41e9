// The readings of one quantity at one end: a field, and a chip for each reading taken.
//
// A reading that does not parse stays in the field with its complaint. Tab adds and stays, because some calipers
// type a Tab after the number; an empty field lets Tab pass, so nobody is caught in it.
import type { Answer, Quantity } from "../../matcher/types";
import { make, part } from "./element";
import { splitReadings, withUnit, type State } from "./state";
import { words } from "./words";

export interface ReadingsPart {
  /** Draws the chips anew; the field and what is typed in it are left alone. */
  show(answer: Answer | null): void;
  focus(): void;
}

export interface ReadingsOptions {
  field: HTMLElement; // the fieldset
  quantity: Quantity;
  end: number;
  state: () => State;
  complaint: (reading: string, quantity: Quantity) => string | null; // what the core has against a reading
  changed: (said: string) => void;
}

export function readingsPart(options: ReadingsOptions): ReadingsPart {
  const { field, quantity, end } = options;
  const list = part(field, "readings");
  const input = part<HTMLInputElement>(field, "reading");
  const complaint = part(field, "complaint");
  const aside = part(field, "set-aside");
  const keys = part(field, "keys");
  const readings = () => options.state().ends[end]?.[quantity] ?? [];

  complaint.id = `complaint-${end}-${quantity}`;
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
      const reading = withUnit(one, options.state().unit);
      const says = options.complaint(reading, quantity);
      if (says === null) {
        readings().push(reading);
        added.push(reading);
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
  part(field, "add").addEventListener("click", () => {
    add();
    input.focus();
  });
  keys.addEventListener("click", () => {
    const whole = input.inputMode !== "text";
    input.inputMode = whole ? "text" : "decimal";
    keys.setAttribute("aria-pressed", String(whole));
    input.focus();
  });

  function remove(index: number): void {
    const [gone] = readings().splice(index, 1);
    options.changed(words.removed(gone ?? ""));
    const buttons = list.querySelectorAll("button");
    (buttons[Math.min(index, buttons.length - 1)] ?? input).focus();
  }

  function chip(reading: string, index: number, kind: "" | "aside" | "wrong"): HTMLElement {
    const button = make(
      "button",
      { type: "button", class: "reading__remove", "aria-label": words.remove(reading) },
      "×",
    );
    button.addEventListener("click", () => remove(index));
    return make(
      "li",
      { class: kind ? `reading reading--${kind}` : "reading" },
      kind === "aside"
        ? make("s", { class: "reading__text num" }, reading)
        : make("span", { class: "reading__text num" }, reading),
      " ",
      kind !== "" && make("span", { class: "reading__word" }, kind === "aside" ? words.setAside : words.misread),
      " ",
      button,
    );
  }

  return {
    show(answer) {
      const estimate = answer?.readings.find((r) => r.end === end && r.quantity === quantity);
      const wrong = answer?.complaints.filter((c) => c.end === end && c.quantity === quantity) ?? [];
      const left = [...(estimate?.setAside ?? [])]; // each struck once, even if it was read twice
      list.replaceChildren(
        ...readings().map((reading, index) => {
          if (wrong.some((c) => c.index === index)) return chip(reading, index, "wrong");
          const at = left.indexOf(reading);
          if (at >= 0) left.splice(at, 1);
          return chip(reading, index, at >= 0 ? "aside" : "");
        }),
      );
      const reasons = wrong.map((c) => c.says);
      if (estimate?.setAside.length) reasons.push(estimate.why);
      aside.hidden = reasons.length === 0;
      aside.textContent = reasons.join(" ");
      input.setAttribute("aria-label", words.addReading(quantity, end, options.state().ends.length));
    },
    focus: () => input.focus(),
  };
}
