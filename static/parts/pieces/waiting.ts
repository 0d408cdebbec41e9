// Why a result is not there while pieces of the chart are missing, in words and buttons.
import { make } from "../identify/element";
import { page, type Waiting } from "./ask";
import { sizeText } from "./size-text";
import { words } from "words:pieces";

/** said is a title and a sentence. */
export function said({ is, pieces, bytes, few }: Waiting): [title: string, says: string] {
  const size = sizeText(bytes);
  switch (is) {
    case "looking":
      return [words.looking, words.lookingSays];
    case "slow":
      return [words.looking, words.slow(pieces, size)];
    case "stuck":
      return [words.looking, words.stuck(pieces, size)];
    case "costly":
      return [words.more, `${words.costly(pieces, size)}${few ? ` ${words.fewer}` : ""}`];
    default:
      return [words.none, words[is]];
  }
}

/** buttonsOf are the ways on; `before` is called when one is used, for it goes with that. */
export function buttonsOf({ is, bytes, go }: Waiting, before: () => void): HTMLElement[] {
  if (is === "looking" || is === "slow") return [];
  const button = (text: string, act: () => void, plain = ""): HTMLElement => {
    const made = make("button", { type: "button", class: `btn${plain}`, "data-pieces-go": "" }, text);
    made.addEventListener("click", () => {
      before();
      act();
    });
    return made;
  };
  if (is === "costly") return [button(words.fetch(sizeText(bytes)), go)];
  const retry = button(words.retry, go, is === "gone" ? " btn--plain" : "");
  return is === "gone" ? [button(words.reload, () => location.reload()), retry] : [retry];
}

/** The words for what the joints of a slip or a record are, which needs more than pieces. */
export function saidOfJoints(waiting: Waiting): [title: string, says: string] {
  const { is } = waiting;
  if (is === "looking" || is === "slow") return [words.looking, words.joints];
  if (is === "stuck") return [words.looking, words.jointsStuck];
  return is === "costly" ? said(waiting) : [words.noJoints, words[is]];
}

/** addWaiting adds to a line that is read aloud why a result is not there, if it is not. */
export function addWaiting(line: HTMLElement, say = said): void {
  const waiting = page.waiting();
  if (waiting === null || waiting.is === "looking") return;
  line.append(" ", say(waiting).join(": "), ...buttonsOf(waiting, () => {}).flatMap((b) => [" ", b]));
}

/** sayWaiting says in a line that is read aloud why a result is not there. */
export function sayWaiting(line: HTMLElement, say = said): void {
  const waiting = page.waiting();
  if (waiting === null || waiting.is === "looking") return;
  line.dataset.waiting = "";
  line.replaceChildren();
  addWaiting(line, say);
}

/** doneWaiting takes that away; what else is said there stays. */
export function doneWaiting(line: HTMLElement): void {
  if (line.dataset.waiting === undefined) return;
  delete line.dataset.waiting;
  line.replaceChildren();
}
