// Small parts of the record's form: lines that come and go. Each takes its markup from a template of
// templates/shaft.html, changes the record in place and says so.
import type { JointFacts } from "../../order/facts";
import type { KeptCalculation, ShaftJoint, WrittenFigure } from "../../shaft/record";
import { part } from "../identify/element";
import { words } from "words:shaft";
import { standing } from "words:order";

function copyOf(template: HTMLTemplateElement, hook: string): HTMLElement {
  return part(template.content.cloneNode(true) as DocumentFragment, hook);
}

/** A text field that is a field of an object; empty, the object has none. */
export function bind<T>(
  field: HTMLInputElement | HTMLTextAreaElement,
  of: T,
  key: keyof T & string,
  changed: () => void,
): void {
  field.value = String(of[key] ?? "");
  field.addEventListener("input", () => {
    const text = field.value.trim();
    if (text === "") delete of[key];
    else of[key] = text as T[keyof T & string];
    changed();
  });
}

export interface JointOptions {
  template: HTMLTemplateElement;
  joint: ShaftJoint;
  n: number;
  address: string; // of the identification or the row
  changed(): void;
  removed(): void;
}

export interface JointField {
  section: HTMLElement;
  show(facts: JointFacts | null): void;
}

export function jointField({ template, joint, n, address, changed, removed }: JointOptions): JointField {
  const section = copyOf(template, "joint");
  bind(part<HTMLInputElement>(section, "place"), joint, "place", changed);
  bind(part<HTMLInputElement>(section, "clips"), joint, "clips", changed);
  bind(part<HTMLInputElement>(section, "joint-note"), joint, "note", changed);
  const look = part<HTMLAnchorElement>(section, "look");
  look.hidden = address === "";
  if (address !== "") look.href = address;
  const remove = part(section, "remove");
  remove.setAttribute("aria-label", words.removeJoint(n));
  remove.addEventListener("click", removed);
  return {
    section,
    show(facts) {
      const names = facts === null ? (joint.found?.names ?? []) : facts.sizes.flatMap((s) => s.names);
      part(section, "joint-title").textContent = words.joint(n, names.join(", "));
      const settled = facts?.settled ?? joint.found?.settled;
      part(section, "found").textContent = settled === undefined ? "" : `${standing[settled]}.`;
      const was = joint.found;
      const other = facts !== null && was !== undefined && was.names.join() !== names.join();
      const differs = part(section, "differs");
      differs.hidden = !other;
      differs.textContent = other ? words.differs(was.names.join(", "), was.chart) : "";
    },
  };
}

export function figureField(
  template: HTMLTemplateElement,
  figure: WrittenFigure,
  n: number,
  changed: () => void,
  removed: () => void,
): HTMLElement {
  const section = copyOf(template, "figure");
  for (const key of ["label", "value"] as const) {
    const field = part<HTMLInputElement>(section, `figure-${key}`);
    field.value = figure[key];
    field.addEventListener("input", () => {
      figure[key] = field.value.trim();
      changed();
    });
  }
  const remove = part(section, "remove");
  remove.setAttribute("aria-label", words.removeFigure(n));
  remove.addEventListener("click", removed);
  return section;
}

export function calculationField(
  template: HTMLTemplateElement,
  kept: KeptCalculation,
  address: string,
  removed: () => void,
): HTMLElement {
  const section = copyOf(template, "calculation");
  const link = part<HTMLAnchorElement>(section, "open");
  link.href = address;
  link.textContent = kept.title;
  const first = kept.lines.slice(0, 3).map((l) => `${l.label} ${[l.value, l.unit].join(" ").trim()}`);
  part(section, "result").textContent = first.join("; ");
  const remove = part(section, "remove");
  remove.setAttribute("aria-label", words.removeCalculation(kept.title));
  remove.addEventListener("click", removed);
  return section;
}
