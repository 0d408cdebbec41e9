// What stands in the verdict's place while pieces of the chart are missing: never a verdict, and never an older one.
import { make } from "../identify/element";
import { stamp } from "../identify/verdict-parts";
import { type Asker, page } from "./ask";
import { buttonsOf, said } from "./waiting";
import { words } from "words:pieces";

/** showWaiting says why whoever asks has no answer; false when nothing is waited for. `head` is read aloud, `body` is not. */
export function showWaiting(section: HTMLElement, head: HTMLElement, body: HTMLElement, asks: Asker = page): boolean {
  const waiting = asks.waiting();
  // What comes in a moment is not read aloud twice.
  head.setAttribute("aria-busy", String(waiting?.is === "looking"));
  if (waiting === null) return false;
  const [title, says] = said(waiting);
  const stamped = stamp(null, title, says);
  if (stamped.textContent !== head.textContent) head.replaceChildren(stamped);
  const buttons = buttonsOf(waiting, () => section.focus({ preventScroll: true })); // they go when they are used
  body.replaceChildren(
    make("p", { class: "hint" }, words.keptReadings),
    ...(buttons.length > 0 ? [make("p", { class: "row" }, ...buttons)] : []),
  );
  return true;
}
