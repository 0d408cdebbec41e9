// The verdict: a stamp and one sentence, then the reasons, the numbers, and what to do. Never a bare list: every
// size says why it is here, every near row says that it does not match.
import type { Answer, Size, Unit } from "../../matcher/types";
import { make, part } from "./element";
import { comparisonTable } from "./verdict-table";
import { basisWords, holdWords, quantityWords, verdictWords, words } from "./words";

export interface VerdictPart {
  show(answer: Answer | null, lead: Unit): void;
}

type Rows = (refs: string[], names?: string[]) => HTMLElement;

export function verdictPart(root: HTMLElement, joints: string): VerdictPart {
  const section = part(root, "verdict");
  const head = part(section, "verdict-head");
  const body = part(section, "verdict-body");
  const pin = part<HTMLButtonElement>(root, "pin");
  pin.addEventListener("click", () => {
    section.scrollIntoView({ block: "start" });
    section.focus({ preventScroll: true });
  });

  const rows: Rows = (refs, names = refs.map(idOf)) =>
    make("p", { class: "size__names" }, ...links(joints, refs, names));

  return {
    show(answer, lead) {
      pin.hidden = answer === null;
      if (answer === null) {
        head.replaceChildren(stamp(null, words.waiting, words.start));
        body.replaceChildren(make("p", { class: "hint" }, words.startMore));
        return;
      }
      // Setting the same words again would make a screen reader say them again.
      const stamped = stamp(answer.verdict, verdictWords[answer.verdict], answer.says.head);
      if (stamped.textContent !== head.textContent || !head.querySelector(`.verdict--${answer.verdict}`)) {
        head.replaceChildren(stamped);
      }
      pin.replaceChildren(
        make("span", { class: "pin__stamp" }, `${verdictWords[answer.verdict]} · ${words.toDetails}`),
        answer.says.head,
      );
      body.replaceChildren(...parts(answer, lead, rows));
    },
  };
}

function stamp(verdict: Answer["verdict"] | null, word: string, sentence: string): HTMLElement {
  return make(
    "div",
    { class: verdict ? `verdict verdict--${verdict}` : "verdict" },
    make("p", { class: "verdict__stamp" }, word),
    make("p", { class: "verdict__head" }, sentence),
  );
}

function parts(answer: Answer, lead: Unit, rows: Rows): HTMLElement[] {
  const list: (HTMLElement | null)[] = [
    sentences(words.because, answer.says.because),
    sentences(words.next, answer.says.next, "ol"),
    sizes(answer, lead, rows),
    sentences(
      words.tellApart,
      answer.tellApart.map((t) => t.says),
    ),
    sentences(
      words.slips,
      answer.slips.map((s) => s.says),
    ),
    ends(answer, rows),
    answer.conversions.length ? titled(words.conversions, rows(answer.conversions)) : null,
    otherSizes(words.sameFigures, answer.sameFigures, rows, words.sameFiguresAbout),
    otherSizes(answer.sizes.length ? words.nearMatched : words.near, answer.near, rows),
    readings(answer),
    caution(answer),
  ];
  return list.filter((p) => p !== null);
}

function titled(title: string, ...children: (Node | string | null)[]): HTMLElement {
  return make("section", { class: "verdict-part" }, make("h2", {}, title), ...children);
}

function sentences(title: string, says: string[], kind: "ul" | "ol" = "ul"): HTMLElement | null {
  if (says.length === 0) return null;
  return titled(title, make(kind, {}, ...says.map((s) => make("li", {}, s))));
}

function sizes(answer: Answer, lead: Unit, rows: Rows): HTMLElement | null {
  if (answer.sizes.length === 0) return null;
  const several = answer.sizes.length > 1;
  return titled(
    several ? words.sizesLeft : words.sizeLeft,
    several ? make("p", { class: "hint" }, words.sizesLeftAbout) : null,
    ...answer.sizes.map((size) => sizeCard(size, lead, rows, several)),
  );
}

function sizeCard(size: Size, lead: Unit, rows: Rows, several: boolean): HTMLElement {
  return make(
    "article",
    { class: "size" },
    rows(size.rows, size.names),
    size.rows.length > 1 && make("p", { class: "hint" }, words.sameNames),
    make(
      "p",
      {},
      `${holdWords[size.hold]}; ${basisWords[size.basis]}${several ? `; ${words.share(size.probability)}` : ""}.`,
    ),
    make("p", {}, size.because),
    comparisonTable(size, lead),
  );
}

// Rows that are not the answer: each carries the word that says so; its sentence has the figures in both units.
function otherSizes(title: string, list: Size[], rows: Rows, about?: string): HTMLElement | null {
  if (list.length === 0) return null;
  return titled(
    title,
    about ? make("p", { class: "hint" }, about) : null,
    ...list.map((size) =>
      make(
        "article",
        { class: "size size--near" },
        rows(size.rows, size.names),
        make(
          "p",
          {},
          make("span", { class: "size__word" }, about ? `${holdWords[size.hold]}.` : words.doesNotMatch),
          ` ${size.because}`,
        ),
      ),
    ),
  );
}

function ends(answer: Answer, rows: Rows): HTMLElement | null {
  if (answer.ends.length < 2) return null;
  return titled(
    words.ends,
    ...answer.ends.map((end, n) =>
      make(
        "div",
        { class: "size" },
        make("p", { class: "label" }, words.endTitle(n)),
        make("p", {}, end.says),
        end.rows.length ? rows(end.rows) : null,
      ),
    ),
  );
}

function readings(answer: Answer): HTMLElement | null {
  if (answer.readings.length === 0) return null;
  const items = answer.readings.map((r) => {
    const title = `${answer.readings.some((o) => o.end > 0) ? `${words.endTitle(r.end)}, ` : ""}${quantityWords[r.quantity]}`;
    return make(
      "li",
      {},
      make("strong", {}, `${title}: `),
      `${words.used} ${r.used.join(", ")}. `,
      ...r.setAside.flatMap((text) => [make("s", { class: "off" }, text), ` ${words.setAside}. `]),
      r.why,
    );
  });
  return titled(words.readings, make("ul", {}, ...items));
}

function caution(answer: Answer): HTMLElement | null {
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

function links(joints: string, refs: string[], names: string[]): (Node | string)[] {
  return refs.flatMap((ref, n) => {
    const link = make("a", { href: `${joints}${encodeURIComponent(idOf(ref))}/` }, names[n] ?? idOf(ref));
    return n === 0 ? [link] : [" · ", link];
  });
}

/** The id in a row's ref, "table/id". */
function idOf(ref: string): string {
  return ref.slice(ref.indexOf("/") + 1);
}
