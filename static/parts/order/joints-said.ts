// What the pages of slip and record say while something of a large chart is missing: why, and a way on.
import type { SlipJoint } from "../../order/slip";
import { make, part } from "../identify/element";
import { doneWaiting, saidOfJoints, sayWaiting } from "../pieces/waiting";
import type { Known } from "./known";
import type { LookedUp } from "./looked-up";
import { words } from "words:order";
import { words as pieces } from "words:pieces";

/** How long it takes, ms, until the page says that it is looking. */
const slowAfter = 700;

/** A joint before the chart has said anything of it. */
export function nameOf({ row }: Pick<SlipJoint, "row">): string {
  return row ?? words.aJoint;
}

/** sayJoints says behind an element why there is nothing to see of the joints. */
export function sayJoints(behind: HTMLElement): void {
  sayWaiting(lineBehind(behind), saidOfJoints);
}

export function doneJoints(behind: HTMLElement): void {
  doneWaiting(lineBehind(behind));
}

function lineBehind(element: HTMLElement): HTMLElement {
  const next = element.nextElementSibling;
  if (next instanceof HTMLElement && next.dataset.jointsSaid !== undefined) return next;
  const line = make("p", { role: "status", "data-joints-said": "" });
  element.after(line);
  return line;
}

/** openAgain adds a way to open the chart once more. */
export function openAgain(trouble: HTMLElement, again: () => void): void {
  const button = make("button", { type: "button", class: "btn" }, pieces.retry);
  button.addEventListener("click", () => {
    trouble.hidden = true;
    again();
  });
  trouble.append(" ", button);
}

/** untilOpen opens the chart; where that fails it is said, and the reader may have it tried once more. */
export async function untilOpen(
  root: HTMLElement,
  open: () => Promise<Known>,
  say: (why: unknown) => void,
): Promise<Known> {
  for (;;) {
    try {
      return await open();
    } catch (error) {
      say(error);
      await new Promise<void>((again) => openAgain(part(root, "trouble"), again));
    }
  }
}

/** leadTo has the link of a joint lead to its page, when that is known. */
export function leadTo(section: HTMLElement, address: string | undefined): void {
  const look = part<HTMLAnchorElement>(section, "look");
  look.hidden = address === undefined;
  if (address !== undefined) look.href = address;
}

const looked = new Map<string, "coming" | "here">(); // what was typed

/** isTypedHere tells whether all is here that the text in the field may name; if not, it is fetched, and `goOn` called. */
export function isTypedHere(root: HTMLElement, chart: LookedUp, goOn: () => void): boolean {
  const [add, wrong, note] = [part<HTMLInputElement>(root, "add"), part(root, "add-wrong"), part(root, "note-said")];
  const typed = add.value;
  const before = looked.get(typed);
  if (before === "here") return true;
  looked.set(typed, "coming");
  wrong.hidden = true;
  const late = setTimeout(() => {
    note.textContent = pieces.looking;
  }, slowAfter);
  const end = (): boolean => {
    clearTimeout(late);
    if (note.textContent === pieces.looking) note.textContent = "";
    return add.value === typed;
  };
  chart.find(typed, before === "coming").then(
    () => {
      looked.set(typed, "here");
      if (end()) goOn();
    },
    () => {
      looked.delete(typed);
      if (!end()) return;
      wrong.hidden = false;
      wrong.textContent = pieces.notFound;
      add.focus();
    },
  );
  return false;
}
