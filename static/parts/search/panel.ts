// A field, what was found, and how many: the same on the search page and in the dialog. What is found are plain links;
// the arrow keys go from one to the next, Enter in the field takes the first.
//
// Whatever comes from the index or the core is set as text, never as markup.
import { local } from "../../matcher/speech-number";
import type { AnyChart } from "../../matcher/prepared";
import { make, part } from "../identify/element";
import { verdictWords } from "words:terms";
import { longestQuestion, type Entry, type Found, type SearchIndex } from "./lookup";
import { judge, sizesIn, type Judged } from "./size";
import { kindWords, words } from "words:search";
import { addWaiting } from "../pieces/waiting";
import { addAgain, countOf, lateText, type Later } from "./later";
import { judgeInPieces, rowsInPieces } from "./size-pieces";

export interface Panel {
  ask(question: string): void; // as if it were typed
}

export interface Source {
  index: SearchIndex;
  find: (question: string) => Found;
  late?: Later; // of a large chart, and then instead of find
  core: () => Promise<AnyChart>; // fetches the core and the chart; rejects when they do not come
}

const most = 20;

/** `root` holds data-search-field, -status and -hits. */
export function panel(root: HTMLElement, source: Source): Panel {
  const field = part<HTMLInputElement>(root, "search-field");
  const status = part(root, "search-status");
  const hits = part(root, "search-hits");
  const { base, entries } = source.index;
  let chart: AnyChart | null = null;
  let core: "unasked" | "coming" | "here" | "failed" = "unasked";

  async function fetchCore(): Promise<void> {
    core = "coming";
    try {
      chart = await source.core();
      core = "here";
    } catch {
      core = "failed";
    }
    show();
  }

  function show(): void {
    const question = field.value.slice(0, longestQuestion).trim();
    const maySize = /\d/.test(question);
    if (maySize && core === "unasked") void fetchCore();
    const found = capspanInPieces
      ? (source.late?.find(question, { status, hits, show }) as Found)
      : source.find(question);
    if (capspanInPieces && !found) return; // what is on the page stays until the answer is whole
    const judged = chart
      ? capspanInPieces
        ? judgeInPieces(question, chart, show)
        : judge(sizesIn(question, CapspanCore), chart, CapspanCore)
      : [];
    hits.replaceChildren(
      ...judged.map((j) => hit(`${base}identify/#${j.fragment}`, sizeTitle(j), j.answer.says.head, words.measured, j)),
      ...rowsOf(judged, found).map((e) => hit(base + e.address, e.title, e.note ?? "", kindWords[e.kind])),
    );
    const shown = hits.childElementCount;
    status.textContent = [
      judged.length === 0 && found.instead.length > 0 && words.instead(found.instead),
      ...judged.map((j) => `${sizeTitle(j)}.`),
      (capspanInPieces && lateText(found)) ||
        (question &&
          (shown > 0
            ? words.found(shown, (capspanInPieces ? countOf(found) : found.entries.length) + judged.length)
            : words.nothing(question))),
      maySize && core === "coming" && words.comparing,
      maySize && core === "failed" && words.noCore,
    ]
      .filter(Boolean)
      .join(" ");
    if (capspanInPieces) {
      addAgain(status, found, show);
      addWaiting(status);
    }
  }

  // First the rows the verdict leaves, then what the words found.
  function rowsOf(judged: readonly Judged[], found: Found): Entry[] {
    if (capspanInPieces) return rowsInPieces(judged, found).slice(0, most);
    const refs = judged.flatMap((j) => j.answer.sizes.flatMap((s) => s.rows));
    const addresses = refs.map((ref) => `joint/${ref.slice(ref.indexOf("/") + 1)}/`);
    const rows = addresses.flatMap((address) => entries.filter((e) => e.address === address));
    return [...new Set([...rows, ...found.entries])].slice(0, most);
  }

  field.addEventListener("input", show);
  root.addEventListener("keydown", (event) => {
    const links = [...hits.querySelectorAll("a")];
    const at = links.indexOf(document.activeElement as HTMLAnchorElement);
    const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (event.key === "Enter" && event.target === field) (capspanInPieces && source.late?.enter()) || links[0]?.click();
    else if (step !== 0 && (at >= 0 || event.target === field))
      (links[at + step] ?? (step < 0 ? field : null))?.focus();
    else return;
    event.preventDefault();
  });

  return {
    ask(question) {
      field.value = question;
      show();
    },
  };
}

function sizeTitle({ cap, across, answer }: Judged): string {
  const size = local(cap && across ? words.size(cap, across) : cap ? words.cap(cap) : words.across(across ?? ""));
  return `${size}: ${verdictWords[answer.verdict]}`;
}

function hit(href: string, title: string, note: string, kind: string, judged?: Judged): HTMLElement {
  return make(
    "li",
    { class: judged ? `hit hit--${judged.answer.verdict}` : "hit" },
    make(
      "a",
      { class: "hit__link", href },
      make("span", { class: "hit__title" }, title),
      " ",
      make("span", { class: "hit__kind label" }, kind),
      note && " ",
      note && make("span", { class: "hit__note" }, note),
    ),
  );
}
