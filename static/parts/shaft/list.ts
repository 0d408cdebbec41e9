// The records on this device: open, delete with a way back, read a file. What cannot be read is listed too, and stays
// until the reader deletes it.
import { readRecord, type Complaint } from "../../shaft/read";
import type { ShaftRecord } from "../../shaft/record";
import type { Shelf } from "../../shaft/shelf";
import { make, part } from "../identify/element";
import { saveFile } from "../order/file";
import { words } from "words:shaft";

export interface ListOptions {
  open(id: string): void;
  take(record: ShaftRecord): void;
  deleted(id: string): void;
}

export interface ListPart {
  show(open: string): void;
  say(text: unknown): void;
  complain(complaints: Complaint[]): void;
}

export function shelfPart(root: HTMLElement, shelf: Shelf, options: ListOptions): ListPart {
  const list = part(root, "list");
  const trouble = part(root, "trouble");
  const done = part(root, "list-said");
  const file = part<HTMLInputElement>(root, "import");
  let shown = "";

  function button(text: string, label: string, press: () => void): HTMLElement {
    const b = make("button", { type: "button", class: "btn btn--plain", "aria-label": label }, text);
    b.addEventListener("click", press);
    return b;
  }

  function remove(id: string, title: string): void {
    const text = shelf.remove(id);
    if (text === null) {
      say(words.notDeleted);
      return;
    }
    options.deleted(id);
    show(shown === id ? "" : shown);
    const back = button(words.undo, words.undoDelete(title), () => {
      const put = shelf.putBack(id, text);
      done.textContent = put ? words.backAgain(title) : words.notPutBack;
      if (!put) saveFile(words.fileName(title), text);
      show(shown);
    });
    done.replaceChildren(words.deleted(title), " ", back);
    back.focus();
  }

  function show(open: string): void {
    shown = open;
    const { able, entries, damaged } = shelf.list();
    part(root, "no-storage").hidden = able;
    part(root, "no-records").hidden = !able || entries.length + damaged.length > 0;
    list.replaceChildren(
      ...entries.map((e) => {
        const opens = button(e.title, words.open(e.title), () => options.open(e.id));
        if (e.id === open) opens.setAttribute("aria-current", "true");
        return make(
          "li",
          { class: "shaft__entry" },
          opens,
          button(words.delete, words.deleteIt(e.title), () => remove(e.id, e.title)),
        );
      }),
      ...damaged.map((d) =>
        make(
          "li",
          { class: "shaft__entry" },
          make("p", {}, words.damaged(d.says)),
          button(words.saveRaw, words.saveRawIt, () => saveFile(words.fileName(words.damagedName), d.text)),
          button(words.delete, words.deleteIt(words.damagedName), () => remove(d.id, words.damagedName)),
        ),
      ),
    );
  }

  function say(text: unknown): void {
    const says = text instanceof Error ? text.message : String(text);
    trouble.hidden = says === "";
    trouble.replaceChildren(says);
  }

  function complain(complaints: Complaint[]): void {
    say("");
    if (complaints.length === 0) return;
    trouble.hidden = false;
    trouble.replaceChildren(
      make("p", {}, words.readInPart),
      make(
        "ul",
        {},
        ...complaints.map((c) => make("li", {}, c.at && make("code", {}, c.at), c.at ? ": " : "", c.says)),
      ),
    );
  }

  file.addEventListener("change", async () => {
    const [chosen] = file.files ?? [];
    file.value = "";
    if (chosen === undefined) return;
    const text = await chosen.text().catch(() => null);
    const read = text === null ? { ok: false as const, says: words.unreadable } : readRecord(text);
    if (!read.ok) {
      say(`${chosen.name}: ${read.says}`);
      return;
    }
    options.take(read.record);
    complain(read.complaints);
  });

  return { show, say, complain };
}
