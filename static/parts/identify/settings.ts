// Tool, condition, and the unit of a bare number, which also leads in the verdict.
import type { Condition, Tool, Unit } from "../../matcher/types";
import { part } from "./element";
import type { State } from "./state";

export interface SettingsPart {
  show(): void;
  focusUnit(): void;
}

export function settingsPart(root: HTMLElement, state: () => State, changed: () => void): SettingsPart {
  const tool = part<HTMLSelectElement>(root, 'setting="tool"');
  const condition = part<HTMLSelectElement>(root, 'setting="condition"');
  const unit = part<HTMLSelectElement>(root, 'setting="unit"');

  const listen = (select: HTMLSelectElement, take: (value: string) => void) =>
    select.addEventListener("change", () => {
      take(select.value);
      changed();
    });
  listen(tool, (value) => {
    state().tool = value as Tool;
  });
  listen(condition, (value) => {
    state().condition = value as Condition;
  });
  listen(unit, (value) => {
    state().unit = value as Unit;
  });

  return {
    show() {
      tool.value = state().tool;
      condition.value = state().condition;
      unit.value = state().unit;
    },
    focusUnit: () => unit.focus(),
  };
}
