// What a keeper adds to the sizes of a verdict: part numbers, stock, notes. Only a site with an overlay has this script;
// it waits for the verdict that the page's own script writes into the element with data-counter, which names the file to
// fetch, and says beneath each size that is left what the keeper says of its rows. A row that does not match gets none.
import { make } from "../identify/element";

interface Own {
  format: 1;
  title: string; // whose word it is
  columns: string[];
  rows: Record<string, string[]>; // by id, in the order of the columns; "" where nothing is said
}

let coming: Promise<Own | null> | null = null;

const verdict = document.querySelector<HTMLElement>("[data-counter]");
if (verdict) {
  const show = (): void => {
    const sizes = [...verdict.querySelectorAll(".size:not(.size--near)")];
    if (sizes.length === 0) return;
    coming ??= fetchOwn(verdict.dataset.counter ?? "");
    void coming.then((own) => {
      if (own === null) {
        coming = null; // the next verdict tries again
        return;
      }
      for (const size of sizes) add(size, own);
    });
  };
  // The script of the page sets the whole verdict anew with each reading; what is added below is no such change.
  new MutationObserver(show).observe(verdict, { childList: true });
  show();
}

function fetchOwn(address: string): Promise<Own | null> {
  return fetch(address).then(
    (answer) => (answer.ok ? (answer.json() as Promise<Own>).then((own) => (own.format === 1 ? own : null)) : null),
    () => null,
  );
}

function add(size: Element, own: Own): void {
  if (size.querySelector(".own-says")) return;
  const ids = [...size.querySelectorAll<HTMLAnchorElement>(".size__names a")].map(idOf);
  for (const id of ids) {
    const said = own.rows[id];
    if (said === undefined) continue;
    const lines = own.columns.flatMap((label, n) =>
      said[n] ? [make("div", {}, make("dt", {}, label), make("dd", {}, said[n]))] : [],
    );
    size.append(
      make(
        "div",
        { class: "own-says" },
        make("p", { class: "label" }, ids.length > 1 ? `${own.title}: ${id}` : own.title),
        make("dl", { class: "own-says__list" }, ...lines),
      ),
    );
  }
}

/** The id of the row that a link leads to: /joint/1310/, in a large chart /size/.../#1310, or a line of a table. */
function idOf(link: HTMLAnchorElement): string {
  const found =
    /\/joint\/([^/]+)\/$/.exec(link.pathname) ??
    (capspanInPieces && link.pathname.includes("/size/") ? /^#(.+)$/ : /^#row-(.+)$/).exec(link.hash);
  return decodeURIComponent(found?.[1] ?? "");
}
