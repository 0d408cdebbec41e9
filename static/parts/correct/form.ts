// What is asked for a value, and what was typed. Fields that make no sense for a column, or for how somebody knows, are
// hidden; nothing typed is lost when they are.
import { part } from "../identify/element";
import type { Problem } from "./check";
import { type Typed, type Way, waysFor } from "./correction";
import type { Cell, Column, Known } from "./facts";

export interface CorrectForm {
  /** Asks for a value of that column, of which the chart has this. */
  ask(column: Column, cell: Cell, known: Known): void;
  typed(): Typed;
  /** Says what is wrong, each thing at its field, and leads to the first. */
  complain(problems: readonly Problem[], lead: boolean): void;
}

// Which field shows the problems of a key.
const fields: Record<string, string> = {
  unit: "is",
  "others.is": "is",
  "others.unit": "is",
  "others.faces": "faces",
  "others.source": "source",
  "others.at": "at",
  facesBasis: "faces",
  basis: "is",
  measured: "readings",
  "measured.readings": "readings",
  "measured.on": "on",
  "measured.by": "by",
  "new.id": "title",
  "new.title": "title",
  "new.publisher": "publisher",
  "new.edition": "edition",
  "new.date": "date",
  "new.where": "where",
};

export function correctForm(root: HTMLElement): CorrectForm {
  const field = (name: string): HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement => {
    const found = root.querySelector<HTMLInputElement>(`[data-field="${name}"]`);
    if (found === null) throw new Error(`no field ${name}`);
    return found;
  };
  const text = (name: string): string => field(name).value.trim();
  const show = (name: string, shown: boolean): void => {
    part(root, `part="${name}"`).hidden = !shown;
  };
  const chosen = (group: string): string =>
    root.querySelector<HTMLInputElement>(`[data-${group}]:checked`)?.value ?? "";
  let column: Column | null = null;
  let given = false;

  function arrange(): void {
    if (column === null) return;
    const way = chosen("way") as Way;
    const measured = way === "measured";
    const published = way === "published";
    show("figure", !measured && column.kind !== "hold");
    show("hold", !measured && column.kind === "hold");
    show("unit", column.units !== undefined);
    show("faces", column.faces === true && way !== "seen");
    show("printed", column.faces === true);
    show("document", published);
    show("fresh", published && text("source") === "+");
    show("then", published && given);
    for (const name of ["tool", "readings", "who"]) show(name, measured);
    show("condition", measured && column.condition === true);
  }

  root.addEventListener("change", arrange);
  return {
    ask(asked, cell, known) {
      column = asked;
      given = cell.is !== "unknown" && cell.is !== "none";
      const ways = waysFor(asked);
      for (const box of root.querySelectorAll<HTMLInputElement>("[data-way]")) {
        const fits = ways.includes(box.value as Way);
        const label = box.closest("label");
        if (label !== null) label.hidden = !fits;
        if (box.checked && !fits) box.checked = false;
      }
      const first = root.querySelector<HTMLInputElement>(`[data-way][value="${ways[0] ?? "published"}"]`);
      if (chosen("way") === "" && first !== null) first.checked = true;
      field("unit").replaceChildren(
        ...(asked.units ?? []).map((unit) => new Option(unit, unit, false, unit === (cell.unit ?? asked.unit))),
      );
      const fitting = known.holds;
      for (const option of (field("hold") as HTMLSelectElement).options)
        if (option.value in fitting && asked.kind === "hold") option.selected = option.value === cell.is;
      arrange();
    },
    typed() {
      return {
        way: chosen("way") as Way,
        value: column?.kind === "hold" ? field("hold").value : field("is").value,
        unit: field("unit").value,
        faces: field("faces").value,
        facesPrinted: (field("printed") as HTMLInputElement).checked,
        source: field("source").value,
        fresh: {
          kind: field("kind").value,
          title: text("title"),
          publisher: text("publisher"),
          edition: text("edition"),
          date: text("date"),
          where: text("where"),
        },
        at: text("at"),
        beside: given && chosen("then") === "beside",
        tool: field("tool").value,
        condition: field("condition").value,
        readings: field("readings").value,
        on: text("on"),
        by: text("by"),
      };
    },
    complain(problems, lead) {
      for (const place of root.querySelectorAll<HTMLElement>("[data-error]")) {
        const name = place.dataset.error ?? "";
        const mine = problems.filter((p) => (fields[p.key] ?? p.key) === name).map((p) => p.says);
        place.textContent = [...new Set(mine)].join(" ");
        const at = root.querySelector<HTMLElement>(`[data-field="${name}"]`);
        if (mine.length > 0) at?.setAttribute("aria-invalid", "true");
        else at?.removeAttribute("aria-invalid");
      }
      if (!lead) return;
      const first = [...root.querySelectorAll<HTMLElement>('[aria-invalid="true"]')].find(
        (e) => e.getClientRects().length > 0,
      );
      first?.focus();
    },
  };
}
