// The filter and the sorting of a table page. Markup: templates/table.html and templates/table.go. Without script
// the whole table stands there, in the order of the chart.
import { parseFilter, rowFits } from "./filter";
import { makeSortable } from "./sort";
import { words } from "words:table";

function start(form: HTMLFormElement, table: HTMLTableElement): void {
  const field = form.querySelector<HTMLInputElement>("[data-filter-field]");
  const count = form.querySelector<HTMLElement>("[data-filter-count]");
  if (!field || !count) throw new Error(`table: the filter lacks its field or its count on ${location.pathname}`);
  const rows = [...table.querySelectorAll<HTMLTableRowElement>("tbody tr")];
  const sized = rows.some(({ dataset }) => dataset.caps || dataset.acrosses);

  function filter(): void {
    const wanted = parseFilter(field?.value ?? "");
    let shown = 0;
    for (const row of rows) {
      const { words = "", caps = "", acrosses = "" } = row.dataset;
      row.hidden = !rowFits(wanted, { words, caps: numbers(caps), acrosses: numbers(acrosses) });
      if (!row.hidden) shown++;
    }
    if (count) count.textContent = said(shown, rows.length, field?.value.trim() ?? "", sized);
  }

  field.addEventListener("input", filter);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.hidden = false;
  filter(); // the browser may have kept what was typed
  makeSortable(table);
}

function numbers(text: string): number[] {
  return text
    .split(" ")
    .filter((t) => t !== "")
    .map(Number);
}

function said(shown: number, all: number, typed: string, sized: boolean): string {
  if (typed === "") return words.all(all);
  if (shown === 0) return words.none(sized);
  return words.some(shown, all);
}

const form = document.querySelector<HTMLFormElement>("[data-filter]");
const table = document.querySelector<HTMLTableElement>("[data-table]");
if (form && table) start(form, table);
