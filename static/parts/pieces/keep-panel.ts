// "Keep the whole chart on this device": a panel of the identify page of a large chart. Nothing is kept unless the reader
// says so, and it goes when they say so.
import type { AnyChart } from "../../matcher/prepared";
import { make, part } from "../identify/element";
import { whyLost } from "./fetch";
import { heldOf } from "./held";
import { canKeep, countKept, isKept, keep, letGo, type File } from "./kept";
import { sizeText } from "./size-text";
import { words } from "words:pieces";

/** keepPanel puts the panel before the method by hand. */
export function keepPanel(root: HTMLElement, chart: AnyChart): void {
  const held = heldOf(chart);
  const every = Array.from({ length: held.files }, (_, n) => n);
  let files: File[] = [];
  const said = make("p", { role: "status", "data-keep-said": "" });
  const bar = make("progress", { "aria-label": words.keep, "data-keep-bar": "" });
  const count = make("span", { class: "num" });
  const under = make("p", { class: "row" }, bar, count);
  const buttons = make("p", { class: "row" });
  const about = make("p", { class: "hint" }, words.keepAbout(sizeText(held.chart.packed)));
  let stop: AbortController | null = null;

  // What the files are called stands in the parts of the directory.
  async function list(anew: boolean): Promise<void> {
    await held.fetch(held.parts(), anew);
    files = [...new Map(held.all().map((file) => [file.name, file])).values()];
    bar.max = files.length;
  }

  // Seen, not read aloud: the line above says how it begins and how it ends.
  function advance(n: number): void {
    bar.value = n;
    count.textContent = `${n} / ${files.length}`;
  }

  const here = (): number => files.filter(({ address }) => isKept(address)).length;

  function button(text: string, name: string, act: () => void, plain = false): HTMLElement {
    const made = make(
      "button",
      { type: "button", class: plain ? "btn btn--plain" : "btn", [`data-${name}`]: "" },
      text,
    );
    made.addEventListener("click", act);
    return made;
  }

  function show(text: string): void {
    const n = here();
    if (said.textContent !== text) said.textContent = text;
    under.hidden = stop === null;
    advance(n);
    const had = buttons.contains(document.activeElement);
    const size = sizeText(held.bytes(every));
    buttons.replaceChildren(
      ...(stop !== null
        ? [button(words.stop, "keep-stop", () => stop?.abort())]
        : [
            ...(n < files.length || n === 0
              ? [button(n > 0 ? words.keepRest(size) : words.keepIt(size), "keep-go", () => void begin())]
              : []),
            ...(countKept() > 0 ? [button(words.letGo, "keep-remove", () => void remove(), true)] : []),
          ]),
    );
    if (had) buttons.querySelector("button")?.focus(); // never lost with the button that was pressed
  }

  const state = (): string => {
    const n = here();
    return n === 0 ? "" : n === files.length ? words.allKept : words.keeping(n, files.length);
  };

  async function begin(): Promise<void> {
    const mine = new AbortController();
    stop = mine;
    show("");
    let end = "";
    try {
      await list(true);
      show(words.keeping(here(), files.length));
      await keep(files, mine.signal, advance);
    } catch (error) {
      end = mine.signal.aborted ? "" : complaint(error);
    }
    stop = null;
    show(end || (mine.signal.aborted ? words.stopped(here(), files.length) : state()));
  }

  function complaint(error: unknown): string {
    const why = whyLost(error);
    if (why !== null) return words[why];
    const full = error instanceof DOMException && error.name === "QuotaExceededError";
    return full ? words.full(here(), files.length) : words.refused;
  }

  async function remove(): Promise<void> {
    try {
      await letGo();
      show(words.letGone);
    } catch {
      show(words.refused);
    }
  }

  const panel = make("section", { class: "panel", "aria-label": words.keep, "data-keep-chart": "" });
  panel.append(make("h2", {}, words.keep), about, said, under, buttons);
  part(root, "by-hand").before(panel);
  if (canKeep()) {
    show("");
    // Only who keeps something wants to know of how much that is.
    if (countKept() > 0 || held.parts().length === 0)
      list(false).then(
        () => show(state()),
        () => {},
      );
  } else panel.replaceChildren(make("h2", {}, words.keep), make("p", { class: "hint" }, words.cannot));
}
