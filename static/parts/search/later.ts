// The answers of a large chart, whose rows are fetched to be found: they come later than they are asked for.
import { make } from "../identify/element";
import type { Found } from "./lookup";
import { words } from "words:large";

interface Shown {
  status: HTMLElement;
  hits: HTMLElement;
  show: () => void; // called when an answer has come
}

export interface Later {
  /** What was found, or null while it is on its way; what did not come is asked for again. */
  find(question: string, on: Shown): Found | null;
  /** Whether an answer is on its way: its first is then gone to when it is here. */
  enter(): boolean;
}

export function later(find: (question: string) => Promise<Found>): Later {
  let asked: string | null = null; // the question that was put last
  let came: Found | null = null;
  let go = false;

  function ask(question: string, { status, hits, show }: Shown): void {
    asked = question;
    came = null;
    go = false;
    const slow = setTimeout(() => {
      if (asked === question && came === null) status.textContent = words.looking;
    }, 300);
    void find(question).then((found) => {
      clearTimeout(slow);
      if (asked !== question || came !== null) return;
      came = found;
      show();
      if (go) hits.querySelector("a")?.click();
      go = false;
    });
  }

  return {
    find(question, on) {
      if (question !== asked) ask(question, on);
      const found = came;
      if (found?.failed) asked = null;
      return found;
    },
    enter() {
      go = asked !== null && came === null;
      return go;
    },
  };
}

/** How many were found, of which not all have come. */
export function countOf(found: Found): number {
  return found.entries.length + (found.more ?? 0);
}

/** Why rows are not all there, in words. */
export function lateText(found: Found): string {
  return found.failed ? words.noRows : found.many ? words.many : "";
}

/** addAgain adds the way on to a line that is read aloud. */
export function addAgain(line: HTMLElement, found: Found, show: () => void): void {
  if (!found.failed) return;
  const again = make("button", { type: "button", class: "btn btn--plain" }, words.again);
  again.addEventListener("click", show);
  line.append(" ", again);
}
