// The verdict on a part: a stamp and one sentence, the rows with what was compared, then what to do.
import type { PartAnswer, PartFound } from "../../matcher/part-types";
import { local } from "../../matcher/speech-number";
import type { Verdict } from "../../matcher/types";
import { make, part } from "../identify/element";
import { titled } from "../identify/verdict-sizes";
import { words as form } from "words:identify";
import { words } from "words:part";
import { verdictWords } from "words:terms";

export function partVerdict(root: HTMLElement, chart: string): (answer: PartAnswer | null) => void {
  const head = part(root, "verdict-head");
  const body = part(root, "verdict-body");
  const section = part(root, "verdict");
  const pin = part(root, "pin");
  pin.addEventListener("click", () => {
    section.scrollIntoView({ block: "start" });
    section.focus({ preventScroll: true });
  });
  return (answer) => {
    pin.hidden = answer === null;
    const word = answer === null ? form.waiting : wordOf(answer.verdict);
    const stamped = stamp(answer?.verdict ?? null, word, answer?.says.head ?? words.start);
    // Setting the same words again would make a screen reader say them again.
    if (stamped.outerHTML !== head.innerHTML) head.replaceChildren(stamped);
    if (answer === null) {
      body.replaceChildren(make("p", { class: "hint" }, words.startMore));
      return;
    }
    const { says } = answer;
    pin.replaceChildren(make("span", { class: "pin__stamp" }, `${word} · ${form.toDetails}`), says.head);
    const several = answer.rows.length > 1;
    const list = [
      says.because.length > 0 && titled(form.because, make("ul", {}, ...says.because.map((s) => make("li", {}, s)))),
      says.next.length > 0 && titled(form.next, make("ol", {}, ...says.next.map((s) => make("li", {}, s)))),
      answer.rows.length > 0 &&
        titled(
          several ? words.rowsLeft : words.rowLeft,
          several ? make("p", { class: "hint" }, words.rowsLeftAbout) : null,
          ...answer.rows.map((row) => card(row, chart, true)),
        ),
      answer.near.length > 0 &&
        titled(
          answer.rows.length > 0 ? form.nearMatched : form.near,
          ...answer.near.map((row) => card(row, chart, false)),
        ),
      answer.readings.length > 0 && titled(form.readings, readings(answer)),
    ];
    body.replaceChildren(...list.filter((p) => p instanceof HTMLElement));
  };
}

function wordOf(verdict: Verdict): string {
  return verdict === "between" ? words.between : verdictWords[verdict];
}

function stamp(verdict: Verdict | null, word: string, sentence: string): HTMLElement {
  return make(
    "div",
    { class: verdict ? `verdict verdict--${verdict}` : "verdict" },
    make("p", { class: "verdict__stamp" }, word),
    make("p", { class: "verdict__head" }, sentence),
  );
}

function card(row: PartFound, chart: string, matches: boolean): HTMLElement {
  const id = row.ref.slice(row.ref.indexOf("/") + 1);
  return make(
    "article",
    { class: matches ? "size" : "size size--near" },
    make("p", { class: "size__names" }, make("a", { href: `${chart}#row-${encodeURIComponent(id)}` }, row.name)),
    matches
      ? make("p", {}, words.basis(row.basis))
      : make("p", {}, make("span", { class: "size__word" }, form.doesNotMatch)),
    make("p", {}, row.because),
  );
}

function readings(answer: PartAnswer): HTMLElement {
  const items = answer.readings.map((r) =>
    make(
      "li",
      {},
      make("strong", {}, `${r.label}: `),
      `${form.used} ${local(r.used.join(", "))}. `,
      ...r.setAside.flatMap((text) => [make("s", { class: "off" }, local(text)), ` ${form.setAside}. `]),
      r.why,
    ),
  );
  return make("ul", {}, ...items);
}
