// "Keep this in a shaft record", on any page that has something to keep. Markup: the template "keep" in
// templates/shaft.html. The page says what to do to the record; this part finds the record and says what became of it.
//
//   keepPart(root, (record) => putCalculation(record, keptOf(report, version)))
import { emptyRecord, type ShaftRecord } from "../../shaft/record";
import { make, part } from "../identify/element";
import { current, deviceShelf, newId, remember } from "./device";
import { keepWords as say } from "words:shaft";

export interface KeepPart {
  /** Whether there is something to keep. */
  show(able: boolean): void;
}

/** `put` changes the record; it returns false when the record has no room for more. */
export function keepPart(root: ParentNode, put: (record: ShaftRecord) => boolean): KeepPart {
  const box = part(root, "keep");
  const select = part<HTMLSelectElement>(box, "keep-record");
  const said = part(box, "keep-said");
  const shelf = deviceShelf(box.dataset.schema ?? "");

  function list(): void {
    const chosen = select.value || current();
    select.replaceChildren(
      make("option", { value: "" }, say.another),
      ...shelf.list().entries.map((e) => make("option", { value: e.id }, e.title)),
    );
    select.value = chosen;
    if (select.selectedIndex < 0) select.value = "";
  }

  part(box, "keep-it").addEventListener("click", () => {
    const id = select.value || newId();
    const taken = shelf.take(id);
    if (taken.is === "damaged" || (taken.is === "none" && select.value !== "")) {
      said.textContent = say.gone;
      list();
      return;
    }
    const record = taken.is === "here" ? taken.record : emptyRecord(say.untitled);
    if (!put(record)) {
      said.textContent = say.full(record.title);
      return;
    }
    const kept = shelf.keep(id, record, taken.is === "here" ? taken.text : "");
    if (kept.is !== "kept") {
      said.textContent = say[kept.is];
      return;
    }
    remember(id);
    list();
    select.value = id;
    said.replaceChildren(`${say.kept} `, make("a", { href: `${box.dataset.keep ?? ""}#record=${id}` }, record.title));
  });
  select.addEventListener("focus", list);
  window.addEventListener("storage", (event) => {
    if (shelf.idOf(event.key) !== null) list();
  });
  list();

  return {
    show(able) {
      box.hidden = !able;
      said.textContent = "";
    },
  };
}
