// The fields of one joint on the slip. Markup: the template data-joint-template in templates/order.html. The part
// changes the joint in place and says so.
import type { JointFacts } from "../../order/facts";
import { extras, greases, mostWanted, type SlipJoint } from "../../order/slip";
import { sizeOf } from "../../order/texts";
import { part } from "../identify/element";
import { nameOf } from "./joints-said";
import { words } from "words:order";

export interface JointPart {
  section: HTMLElement;
  show(facts: JointFacts, n: number, of: number): void;
  focus(): void;
}

export interface JointOptions {
  template: HTMLTemplateElement;
  joint: SlipJoint;
  identify: string; // address of the identification, "" when there is none
  changed(): void;
  removed(): void;
}

/** Names of radio groups must differ from joint to joint. */
let made = 0;

export function jointPart(options: JointOptions): JointPart {
  const { template, joint, changed } = options;
  const copy = template.content.cloneNode(true) as DocumentFragment;
  const section = part(copy, "joint");
  const count = part<HTMLInputElement>(section, "count");
  const place = part<HTMLInputElement>(section, "place");
  const look = part<HTMLAnchorElement>(section, "look");
  made += 1;

  count.value = String(joint.count);
  place.value = joint.place ?? "";
  if (capspanInPieces) part(section, "joint-title").textContent = nameOf(joint); // until more of it is known
  look.hidden = options.identify === "";
  if (options.identify !== "") look.href = options.identify;
  number(count, part(section, "count-wrong"), (wanted) => {
    joint.count = wanted ?? 1;
    changed();
  });
  place.addEventListener("input", () => {
    set(joint, "place", place.value.trim() || undefined);
    changed();
  });
  for (const radio of section.querySelectorAll<HTMLInputElement>("[data-grease]")) {
    radio.name = `grease-${made}`;
    radio.checked = radio.value === (joint.grease ?? "");
    radio.addEventListener("change", () => {
      set(
        joint,
        "grease",
        greases.find((g) => g === radio.value),
      );
      changed();
    });
  }
  for (const item of extras) extra(section, joint, item, changed);
  part(section, "remove").addEventListener("click", options.removed);

  return {
    section,
    show(facts, n, of) {
      part(section, "joint-title").textContent = `${of > 1 ? `${words.numbered(n)}: ` : ""}${sizeOf(facts)}`;
      part(section, "remove").setAttribute("aria-label", words.remove(n));
    },
    focus: () => count.focus(),
  };
}

function set<K extends "place" | "grease">(joint: SlipJoint, key: K, value: SlipJoint[K] | undefined): void {
  if (value === undefined) delete joint[key];
  else joint[key] = value;
}

// One thing to order with it: a box, and how many.
function extra(section: HTMLElement, joint: SlipJoint, item: (typeof extras)[number], changed: () => void): void {
  const box = part<HTMLInputElement>(section, `extra="${item}"`);
  const field = part<HTMLInputElement>(section, `extra-count="${item}"`);
  const holder = part(section, `extra-many="${item}"`);
  const own = joint.extras.find((w) => w.item === item);
  box.checked = own !== undefined;
  field.value = own?.count === undefined ? "" : String(own.count);
  holder.hidden = own === undefined;
  let wanted = own?.count;
  const keep = (): void => {
    joint.extras = extras.flatMap((e) => {
      if (e !== item) return joint.extras.filter((w) => w.item === e);
      return box.checked ? [wanted === undefined ? { item } : { item, count: wanted }] : [];
    });
    holder.hidden = !box.checked;
    changed();
  };
  box.addEventListener("change", keep);
  number(field, part(section, `extra-wrong="${item}"`), (many) => {
    wanted = many;
    keep();
  });
}

// A whole number of things; what is none is said and leaves the last one in force.
function number(field: HTMLInputElement, wrong: HTMLElement, take: (value: number | undefined) => void): void {
  field.addEventListener("input", () => {
    const text = field.value.trim();
    const value = /^\d{1,4}$/.test(text) ? Number(text) : Number.NaN;
    const good = text === "" || (value >= 1 && value <= mostWanted);
    field.setAttribute("aria-invalid", String(!good));
    wrong.hidden = good;
    wrong.textContent = good ? "" : words.badNumber(text, mostWanted);
    if (good) take(text === "" ? undefined : value);
  });
}
