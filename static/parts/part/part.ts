// The page that identifies a part in one table. Markup: templates/part.html.
//
// One state, one way round, as on the identify page: a field changes the state and says so, the core answers, every
// part shows what follows. Which columns there are stands in the table the page names, not here.
import type { Between, Edges, PartAnswer, PartTable } from "../../matcher/part-types";
import type { Condition, Tool, Unit } from "../../matcher/types";
import { make, part } from "../identify/element";
import { sharePart } from "../identify/share";
import { sinceMade } from "../since/fetch";
import { countField, lengthField, type PartField } from "./fields";
import { emptyPart, fromPartQuery, hasValues, needsHole, toPartQuery, type PartState } from "./state";
import { partVerdict } from "./verdict";
import { words as form } from "words:identify";
import { words } from "words:part";

const here = (document.currentScript as HTMLScriptElement).src;

async function start(root: HTMLElement): Promise<void> {
  const trouble = part(root, "trouble");
  try {
    const table = await fetchTable(root.dataset.table ?? "");
    trouble.replaceChildren();
    run(root, table);
  } catch (error) {
    root.dataset.failed = ""; // shows the method by hand
    const retry = make("button", { type: "button", class: "btn" }, form.retry);
    retry.addEventListener("click", () => void start(root));
    const says = error instanceof Error ? error.message : String(error);
    trouble.replaceChildren(make("div", { class: "trouble" }, make("p", {}, says), retry));
  }
}

async function fetchTable(address: string): Promise<PartTable> {
  if (typeof CapspanParts === "undefined") throw new Error(form.noCore);
  let table: PartTable;
  try {
    const response = await fetch(address);
    if (!response.ok) throw new Error(String(response.status));
    table = (await response.json()) as PartTable;
  } catch {
    throw new Error(words.noTable);
  }
  if (table.format !== 1 || !Array.isArray(table.rows)) throw new Error(form.badChart);
  return table;
}

function run(root: HTMLElement, table: PartTable): void {
  const note = part(root, "note");
  const show = partVerdict(root, root.dataset.rows ?? "");
  const selects = [...root.querySelectorAll<HTMLSelectElement>("select[data-setting]")];
  const hole = root.querySelector<HTMLElement>("[data-hole]");
  let state = emptyPart(table);
  if (root.dataset.unit === "mm") state.unit = "mm";

  const changed = (said: string): void => {
    note.textContent = said;
    update();
    const fragment = hasValues(state)
      ? `#${CapspanParts.encodePart(table, toPartQuery(table, state), table.version)}`
      : "";
    history.replaceState(null, "", location.pathname + location.search + fragment);
  };
  const given = {
    unit: () => state.unit,
    complaint: (reading: string): string | null => {
      const read = CapspanParts.parseReading(reading, state.unit);
      return read.ok ? null : read.says;
    },
    changed,
  };

  const fields: PartField[] = table.columns.map((column) => {
    const field = part(root, `column="${column.id}"`);
    const own = (): string[] => state.values[column.id] ?? [];
    const { id, label } = column;
    return column.match === "exact"
      ? countField({ root: field, column: id, label, counts: own, changed })
      : lengthField({ ...given, root: field, column: id, label, readings: own });
  });
  if (hole) {
    const label = hole.querySelector("legend")?.textContent ?? "";
    fields.push(lengthField({ ...given, root: hole, column: "hole-diameter", label, readings: () => state.hole }));
  }

  function update(): void {
    const answer: PartAnswer | null = hasValues(state)
      ? CapspanParts.identifyPart(table, toPartQuery(table, state))
      : null;
    for (const field of fields) field.show(answer);
    if (hole) hole.hidden = !needsHole(state);
    for (const select of selects) select.value = String(state[select.dataset.setting as Setting]);
    show(answer);
  }

  for (const select of selects) {
    select.addEventListener("change", () => {
      choose(state, select.dataset.setting as Setting, select.value);
      changed("");
    });
  }
  part(root, "over").addEventListener("click", () => {
    const { unit, tool, condition } = state; // the bench stays the same
    state = { ...emptyPart(table), unit, tool, condition };
    changed(form.startedOver);
    root.querySelector<HTMLElement>("[data-count], [data-reading]")?.focus();
  });
  part(root, "form").addEventListener("submit", (event) => event.preventDefault());
  const say = (text: string): void => {
    note.textContent = text;
  };
  sharePart(root, say, words.shareTitle);

  function open(): void {
    const fragment = location.hash.slice(1);
    const opened = fragment.includes("=") ? CapspanParts.decodePart(table, fragment) : null;
    if (opened) state = fromPartQuery(table, opened.query, state.unit);
    update(); // the address stays as it was sent until the reader changes something
    if (opened) {
      const bad = opened.complaints.map((c) => c.says);
      const other =
        opened.chart && opened.chart !== table.version ? [form.otherChart(opened.chart, table.version)] : [];
      note.textContent = [form.restored, ...(bad.length > 0 ? [form.badAddress, ...bad] : []), ...other].join(" ");
      const answer = CapspanParts.identifyPart(table, toPartQuery(table, state));
      if (hasValues(state)) sinceMade(root, here, opened.chart, table.version, answer);
    }
  }
  window.addEventListener("hashchange", open);
  part(root, "board").hidden = false;
  open();
  part(root, "by-hand").removeAttribute("open");
  root.dataset.ready = "";
}

type Setting = "unit" | "tool" | "condition" | "between" | "edges";

function choose(state: PartState, setting: Setting, value: string): void {
  switch (setting) {
    case "unit":
      state.unit = value as Unit;
      break;
    case "tool":
      state.tool = value as Tool;
      break;
    case "condition":
      state.condition = value as Condition;
      break;
    case "between":
      state.between = value as Between;
      break;
    case "edges":
      state.edges = value as Edges;
  }
}

for (const root of document.querySelectorAll<HTMLElement>("[data-part]")) void start(root);
