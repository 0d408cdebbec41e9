// The readings of one quantity at one end: a field, a chip for each reading taken, and those taken out to be measured
// again, which can be put back.
import { local } from "../../matcher/speech-number";
import type { Answer, Measurand } from "../../matcher/types";
import { make, part } from "./element";
import { readingField, type FieldOptions } from "./field";
import type { State } from "./state";
import { words } from "words:identify";

export interface ReadingsPart {
  /** Draws the chips anew; the field and what is typed in it are left alone. */
  show(answer: Answer | null): void;
  focus(): void;
}

export interface ReadingsOptions extends Pick<FieldOptions, "complaint" | "changed"> {
  state: () => State;
  field: HTMLElement; // the fieldset
  quantity: Measurand;
  end: number;
}

export function readingsPart(options: ReadingsOptions): ReadingsPart {
  const { field, quantity, end, state } = options;
  const list = part(field, "readings");
  const aside = part(field, "set-aside");
  const takenOut = part(field, "taken-out");
  const own = () => state().ends[end];
  const readings = () => own()?.[quantity] ?? [];
  const input = readingField({
    ...options,
    root: field,
    name: `${end}-${quantity}`,
    unit: () => state().unit,
    take: (reading) => readings().push(reading),
  });

  function remove(index: number): void {
    const [gone] = readings().splice(index, 1);
    options.changed(words.removed(local(gone ?? "")));
    const buttons = list.querySelectorAll("button");
    (buttons[Math.min(index, buttons.length - 1)] ?? input).focus();
  }

  function chip(reading: string, index: number, kind: "" | "aside" | "wrong"): HTMLElement {
    const button = make(
      "button",
      { type: "button", class: "reading__remove", "aria-label": words.remove(local(reading)) },
      "×",
    );
    button.addEventListener("click", () => remove(index));
    return make(
      "li",
      { class: kind ? `reading reading--${kind}` : "reading" },
      make(kind === "aside" ? "s" : "span", { class: "reading__text num" }, local(reading)),
      " ",
      kind !== "" && make("span", { class: "reading__word" }, kind === "aside" ? words.setAside : words.misread),
      " ",
      button,
    );
  }

  function showTakenOut(): void {
    const out = own()?.out[quantity] ?? [];
    takenOut.hidden = out.length === 0;
    if (out.length === 0) return;
    const back = make("button", { type: "button", class: "btn btn--plain", "data-put-back": "" }, words.putBack);
    back.addEventListener("click", () => {
      readings().unshift(...out);
      delete own()?.out[quantity];
      options.changed(words.areBack(local(out.join(", "))));
      input.focus();
    });
    takenOut.replaceChildren(words.takenOut, " ", make("s", { class: "num" }, local(out.join(", "))), " ", back);
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
      const reasons = wrong.slice(0, 1).map((c) => c.says); // one tells what is the matter with all
      if (estimate?.setAside.length) reasons.push(estimate.why);
      aside.hidden = reasons.length === 0;
      aside.textContent = reasons.join(" ");
      showTakenOut();
      input.setAttribute("aria-label", words.addReading(state(), { end, quantity }));
    },
    focus: () => input.focus(),
  };
}
