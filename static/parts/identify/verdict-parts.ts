// The pieces of a verdict that any page can show which has the answer: the stamp, the reasons, what to do next, the
// readings, and the cautions that go with it.
import { local } from "../../matcher/speech-number";
import type { Answer } from "../../matcher/types";
import { make } from "./element";
import { titled, type Rows } from "./verdict-sizes";
import { words } from "words:identify";
import { endTitle, quantityWords } from "words:terms";

export function stamp(verdict: Answer["verdict"] | null, word: string, sentence: string): HTMLElement {
  return make(
    "div",
    { class: verdict ? `verdict verdict--${verdict}` : "verdict" },
    make("p", { class: "verdict__stamp" }, word),
    make("p", { class: "verdict__head" }, sentence),
  );
}

// What a slip says stands above, beside its button.
export function because(answer: Answer): HTMLElement | null {
  const says = answer.says.because.filter((s) => !answer.slips.some((slip) => slip.says === s));
  return says.length === 0 ? null : titled(words.because, make("ul", {}, ...says.map((s) => make("li", {}, s))));
}

// What parts the sizes left comes first, with the way to their rows.
export function next(answer: Answer, rows: Rows): HTMLElement | null {
  const told = [...answer.slips.map((s) => s.next), ...answer.tellApart.map((t) => t.says)];
  const steps = [
    ...answer.tellApart.map((t) => make("li", {}, t.says, rows(t.between))),
    ...answer.says.next.filter((s) => !told.includes(s)).map((s) => make("li", {}, s)),
  ];
  return steps.length === 0 ? null : titled(words.next, make("ol", {}, ...steps));
}

export function readings(answer: Answer): HTMLElement | null {
  if (answer.readings.length === 0) return null;
  const items = answer.readings.map((r) => {
    const title = `${answer.readings.some((o) => o.end > 0) ? `${endTitle(r.end)}, ` : ""}${quantityWords[r.quantity]}`;
    return make(
      "li",
      {},
      make("strong", {}, `${title}: `),
      `${words.used} ${local(r.used.join(", "))}. `,
      ...r.setAside.flatMap((text) => [make("s", { class: "off" }, local(text)), ` ${words.setAside}. `]),
      r.why,
    );
  });
  return titled(words.readings, make("ul", {}, ...items));
}

export function caution(answer: Answer): HTMLElement | null {
  if (answer.verdict === "measure-again") return null;
  const recalled = answer.sizes.some((s) => s.basis === "memory");
  return make(
    "div",
    { class: "caution", role: "note" },
    make("p", {}, make("strong", {}, words.cautionTitle), ` ${words.caution}`),
    recalled && make("p", {}, words.cautionMemory),
    make("p", {}, words.cautionFit),
  );
}

export function ends(answer: Answer, rows: Rows): HTMLElement | null {
  if (answer.ends.length < 2) return null;
  return titled(
    words.ends,
    ...answer.ends.map((end, n) =>
      make(
        "div",
        { class: "size" },
        make("p", { class: "label" }, endTitle(n)),
        make("p", {}, end.says),
        end.rows.length ? rows(end.rows) : null,
      ),
    ),
  );
}
