// The fields of a calculation's inputs. Each stands in the list of inputs that the page has without script too: here it
// gets its text, its unit switch and its complaint.
import type { Calculation, Field, Input } from "../../driveline/description";
import { fromField, toField } from "../../matcher/speech-number";
import type * as frame from "../../driveline/frame";
import { part } from "../identify/element";

declare const CapspanDriveline: typeof frame;

export interface InputField {
  input: Input;
  /** What is filled; null where nothing is, or only what stands there anyway. */
  value(): Field | null;
  set(field: Field | undefined): void;
  show(complaint: string | null, asked: boolean): void;
  focus(): void;
}

export function fieldsOf(root: HTMLElement, calculation: Calculation, changed: () => void): InputField[] {
  return calculation.inputs.map((input) => fieldOf(part(root, `input="${input.id}"`), input, changed));
}

function fieldOf(item: HTMLElement, input: Input, changed: () => void): InputField {
  const control = part<HTMLInputElement | HTMLSelectElement>(item, "value");
  const unit = item.querySelector<HTMLSelectElement>("[data-unit]");
  const complaint = part(item, "complaint");
  let typed: Field | null = null; // what was typed, so that a unit switched there and back is as before
  let unitBefore = unit?.value ?? "";

  control.addEventListener("input", () => {
    typed = null;
    changed();
  });
  unit?.addEventListener("change", () => {
    const before: Field = { text: control.value, unit: unitBefore };
    typed ??= before;
    const into = unit.value;
    if (input.kind === "number" && before.text.trim() !== "") {
      const number = { ...typed, text: fromField(typed.text) };
      const converted = typed.unit === into ? typed.text : CapspanDriveline.convert(input, number, into);
      if (converted === null)
        unit.value = unitBefore; // what is not understood keeps its unit
      else control.value = typed.unit === into ? converted : toField(converted);
    }
    unitBefore = unit.value;
    changed();
  });

  return {
    input,
    value() {
      const text = control.value.trim();
      if (text === "") return null;
      if (input.kind === "choice") return text === input.preset ? null : { text, unit: "" };
      if (input.kind === "text") return { text, unit: "" };
      const first = CapspanDriveline.firstUnit(input);
      const field = { text: fromField(text), unit: unit?.value ?? first };
      return toField(input.preset ?? "") === text && field.unit === first ? null : field;
    },
    set(field) {
      typed = null;
      const preset = input.kind === "text" ? "" : (input.preset ?? "");
      const first = CapspanDriveline.firstUnit(input);
      const text = field?.text ?? preset;
      control.value = input.kind === "number" ? toField(text) : text;
      if (control instanceof HTMLSelectElement && control.selectedIndex < 0) control.value = preset;
      if (unit) {
        unit.value = field?.unit ?? first;
        if (unit.selectedIndex < 0) unit.value = first;
        unitBefore = unit.value;
      }
    },
    show(says, asked) {
      item.hidden = !asked;
      if (complaint.textContent !== (says ?? "")) complaint.textContent = says ?? "";
      complaint.hidden = says === null;
      control.setAttribute("aria-invalid", String(says !== null));
    },
    focus: () => control.focus(),
  };
}
