// The drawings of faces and yokes come in one file, fetched when the first of them is wanted; from then on they need
// no network. Until then an empty sheet of the same size holds the place, so nothing moves. A drawing only shows what
// the words beside it say: without it the page still works.
import { renameIds } from "./drawing";
import { make } from "./element";
import { words } from "words:identify";

export interface Drawings {
  /** Draws on every empty sheet below root that is shown. */
  fill(root: ParentNode): void;
  /** An empty sheet for the drawing of that name; null when there is no such drawing. */
  sheet(key: string): SVGElement | null;
}

/** `sheets` is where an empty sheet of every drawing can be copied from. */
export function drawingsFrom(address: string, sheets: ParentNode): Drawings {
  let file: Promise<Document> | null = null;
  let copies = 0;

  function draw(sheet: SVGElement, drawn: Document): void {
    const lines = drawn.getElementById(sheet.dataset.drawing ?? "")?.firstElementChild;
    if (!lines) return;
    const copy = document.createDocumentFragment();
    copy.append(document.importNode(lines, true));
    renameIds(copy, `-copy${++copies}`); // one drawing may be on the page twice
    sheet.nextElementSibling?.matches("[data-no-drawing]") && sheet.nextElementSibling.remove();
    sheet.replaceWith(copy);
  }

  function fail(sheet: SVGElement): void {
    if (sheet.hasAttribute("hidden")) return;
    sheet.setAttribute("hidden", "");
    sheet.after(make("p", { class: "hint", "data-no-drawing": "" }, words.noDrawing));
  }

  return {
    fill(root) {
      const empty = [...root.querySelectorAll<SVGElement>("svg[data-drawing]")].filter(
        (sheet) => !sheet.parentElement?.closest("[hidden]"),
      );
      if (empty.length === 0) return;
      file ??= fetchDrawings(address);
      file.then(
        (drawn) => {
          for (const sheet of empty) draw(sheet, drawn);
        },
        () => {
          file = null; // the next choice tries again
          empty.forEach(fail);
        },
      );
    },
    sheet(key) {
      const found = sheets.querySelector(`svg[data-drawing="${key}"]`);
      return found ? (found.cloneNode(true) as SVGElement) : null;
    },
  };
}

async function fetchDrawings(address: string): Promise<Document> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(String(response.status));
  const drawn = new DOMParser().parseFromString(await response.text(), "image/svg+xml");
  if (drawn.documentElement.localName !== "svg") throw new Error("no drawings");
  return drawn;
}
