// Sizes in the verdict, each with its names as links, its hold and basis in words, why it is here, and its figures.
import type { Answer, Size, Unit } from "../../matcher/types";
import { make } from "./element";
import { comparisonTable } from "./verdict-table";
import { words } from "words:identify";
import { basisWords, holdWords } from "words:terms";

/** Makes the links to the pages of rows. */
export type Rows = (refs: string[], names?: string[]) => HTMLElement;

export function rowsOf(site: string): Rows {
  const link = (ref: string, name?: string): HTMLElement =>
    make("a", { href: `${site}joint/${encodeURIComponent(idOf(ref))}/` }, name ?? idOf(ref));
  return (refs, names = []) =>
    make(
      "p",
      { class: "size__names" },
      ...refs.flatMap((ref, n) => (n === 0 ? [link(ref, names[n])] : [" · ", link(ref, names[n])])),
    );
}

/** Of a large chart, whose joints have no pages of their own: `at` says where their rows have theirs. */
export function rowsAt(site: string, at: Answer["at"]): Rows {
  const plain = rowsOf(site);
  return (refs, names) => {
    const made = plain(refs, names);
    made.querySelectorAll("a").forEach((link, n) => {
      const place = at?.[refs[n] ?? ""];
      if (place !== undefined) link.href = site + place;
    });
    return made;
  };
}

/** The id in a row's ref, "table/id". */
function idOf(ref: string): string {
  return ref.slice(ref.indexOf("/") + 1);
}

export function titled(title: string, ...children: (Node | string | null)[]): HTMLElement {
  return make("section", { class: "verdict-part" }, make("h2", {}, title), ...children);
}

export function sizes(answer: Answer, lead: Unit, rows: Rows): HTMLElement | null {
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

/** Rows that are not the answer: each carries the word that says so; its sentence has the figures in both units. */
export function otherSizes(title: string, list: Size[], rows: Rows, about?: string): HTMLElement | null {
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
