// The page of corrections: which value, how somebody knows, and the line that makes the correction. The address names the
// value: #table=joints-inch&row=1310&column=cap. Markup: templates/correct.html.
import { part } from "../identify/element";
import { propose } from "./correction";
import type { Cell, Column, PlacedCell, Row, SourceFacts, TableFacts } from "./facts";
import type { FactsByRow, open as openRows } from "./rows";
import { correctForm } from "./form";
import { printedOf } from "./number";
import { editCell } from "./patch";
import { waysPart } from "./ways";
import { cellText } from "./yaml";
import { pageWords as say } from "words:correct";

// Of a large chart, row by row: another script of the page, which only such a chart has.
declare const CapspanFacts: { open: typeof openRows };

function byRow({ dataset }: HTMLElement): FactsByRow {
  return CapspanFacts.open(dataset.directory ?? "");
}

async function start(root: HTMLElement): Promise<void> {
  const form = part<HTMLFormElement>(root, "form");
  const out = part(root, "out");
  const trouble = part(root, "trouble");
  const [tableField, rowField, columnField] = ["table", "row", "column"].map((name) =>
    part<HTMLSelectElement>(form, name),
  ) as [HTMLSelectElement, HTMLSelectElement, HTMLSelectElement];
  const asked = correctForm(form);
  const ways = waysPart(root, out);
  let registry: SourceFacts;
  let facts: TableFacts | null = null;
  let tried = false;

  const fetched = new Map<string, Promise<unknown>>();
  function fetchOnce<T>(address: string): Promise<T> {
    const before = fetched.get(address);
    if (before !== undefined) return before as Promise<T>;
    const now = fetch(address).then((got) => {
      if (!got.ok) throw new Error(String(got.status));
      return got.json();
    });
    fetched.set(address, now);
    now.catch(() => fetched.delete(address));
    return now as Promise<T>;
  }

  function fail(says: string): void {
    trouble.hidden = says === "";
    trouble.textContent = says;
  }

  // The value the three lists name; null while a table is on its way.
  function value(): { facts: TableFacts; row: Row; column: Column; cell: PlacedCell } | null {
    const row = facts?.rows.find((r) => r.id === rowField.value);
    const column = facts?.columns.find((c) => c.id === columnField.value);
    const cell = row?.cells[columnField.value];
    return facts && row && column && cell ? { facts, row, column, cell } : null;
  }

  function fillRows(row: string): void {
    if (capspanInPieces) rowField.value = row;
    else rowField.replaceChildren(...(facts?.rows ?? []).filter(hasCells).map((r) => new Option(r.id, r.id)));
    if (facts?.rows.some((r) => r.id === row && hasCells(r))) rowField.value = row;
    else if (row !== "") fail(say.noRow(shorten(row)));
  }

  function fillColumns(column: string): void {
    const row = facts?.rows.find((r) => r.id === rowField.value);
    columnField.replaceChildren(
      ...(facts?.columns ?? []).filter((c) => row?.cells[c.id]).map((c) => new Option(c.label, c.id)),
    );
    if (row?.cells[column]) columnField.value = column;
  }

  function ask(): void {
    const now = value();
    out.hidden = true;
    tried = false;
    asked.complain([], false);
    understood("");
    if (capspanInPieces && now === null) part(form, "now").textContent = part(form, "place").textContent = "";
    if (now === null) return;
    part(form, "now").textContent = said(now.cell, now.column);
    part(form, "place").textContent = say.place(now.facts.file, now.cell.line);
    asked.ask(now.column, now.cell, registry.known);
    const at = new URLSearchParams({ table: now.facts.table, row: now.row.id, column: now.column.id });
    history.replaceState(null, "", `#${at}`);
  }

  // What was made of the typed figures, under the field they were typed in.
  function understood(says: string): void {
    const measured = asked.typed().way === "measured";
    part(form, "understood").textContent = measured ? "" : says;
    part(form, "understood-readings").textContent = measured ? says : "";
  }

  async function open(table: string, row: string, column: string): Promise<void> {
    const list = root.querySelectorAll<HTMLElement>("[data-facts]");
    const one = [...list].find((e) => e.dataset.of === table) ?? list[0];
    fail(table === "" || one?.dataset.of === table ? "" : say.noTable(shorten(table)));
    tableField.value = one?.dataset.of ?? "";
    try {
      facts = await (capspanInPieces
        ? byRow(root).table(tableField.value, row)
        : fetchOnce<TableFacts>(one?.dataset.facts ?? ""));
    } catch {
      fail(say.notThere);
      return;
    }
    fillRows(row);
    fillColumns(column);
    ask();
  }

  function openAddress(): Promise<void> {
    const at = new URLSearchParams(location.hash.slice(1));
    return open(at.get("table") ?? "", at.get("row") ?? "", at.get("column") ?? "");
  }

  function look(lead: boolean): void {
    const now = value();
    if (now === null) return;
    const proposal = propose(asked.typed(), now.column, now.row, now.cell, registry.known);
    understood(proposal.understood.join(" "));
    asked.complain(tried ? proposal.problems : [], lead);
    out.hidden = !tried || proposal.problems.length > 0;
    if (out.hidden) return;
    ways.show({
      of: `${now.facts.table}/${now.row.id} ${now.column.id}`,
      cell: now.cell,
      edit: editCell(now.facts, now.cell, cellText(proposal.cell)),
      registry,
      source: proposal.source,
      says: asked.typed().way === "measured" ? worth(proposal.cell, now.column) : [],
    });
    if (lead) out.focus();
  }

  try {
    registry = await (capspanInPieces ? byRow(root).sources() : fetchOnce<SourceFacts>(root.dataset.sources ?? ""));
  } catch {
    fail(say.notThere);
    return;
  }
  const source = form.querySelector<HTMLSelectElement>('[data-field="source"]');
  for (const id of [...registry.known.sources].sort((a, b) => (title(a) < title(b) ? -1 : 1)))
    source?.append(new Option(title(id), id));
  function title(id: string): string {
    return registry.titles[id] ?? id;
  }

  tableField.addEventListener("change", () => void open(tableField.value, "", ""));
  rowField.addEventListener("change", () => {
    if (capspanInPieces) return void open(tableField.value, rowField.value.trim(), columnField.value);
    fillColumns(columnField.value);
    ask();
  });
  columnField.addEventListener("change", ask);
  form.addEventListener("input", (event) => {
    if (![tableField, rowField, columnField].includes(event.target as HTMLSelectElement)) look(false);
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    tried = true;
    look(true);
  });
  addEventListener("hashchange", () => void openAddress());
  await openAddress();
  part(root, "without").hidden = true;
  form.hidden = false;
  root.dataset.ready = "";
}

// An address may bring any length of a name.
function shorten(name: string): string {
  return name.length > 60 ? `${name.slice(0, 59)}…` : name;
}

function hasCells(row: Row): boolean {
  return Object.keys(row.cells).length > 0;
}

/** What the chart has, in words. */
function said(cell: Cell, column: Column): string {
  const unit = cell.is === "unknown" || cell.is === "none" ? "" : (cell.unit ?? column.unit ?? "");
  return say.now(`${cell.is} ${unit}`.trim(), cell.basis ?? "", cell.measured?.length ?? 0);
}

// What the new measurement is worth, and what all of them come to beside the printed figure.
function worth(now: Cell, column: Column): string[] {
  const list = now.measured ?? [];
  const printed =
    now.basis === "measured" ? null : printedOf(now.is, now.unit ?? column.unit ?? "", column.range === true);
  const question = {
    column: column.condition === true ? (column.id as "cap" | "across") : ("length" as const),
    ...(now.faces === undefined ? {} : { faces: now.faces }),
    ...(printed === null ? {} : { printed }),
  };
  const all = CapspanMeasured.comesTo({ ...question, measurements: list });
  const last = all.each[all.each.length - 1];
  return list.length > 1 && last !== undefined ? [say.yours(last.says), ...all.says] : all.says;
}

for (const root of document.querySelectorAll<HTMLElement>("[data-correct]")) void start(root);
