// The ways a correction leaves the page: as a line to copy, at the place where the file is edited, as mail, and as a
// patch. Nothing is sent from here: each opens a program of the reader's.
import { part } from "../identify/element";
import { applied, type Edit, editSources, linesOf, patchOf } from "./patch";
import type { ChartFile, NewSource, PlacedCell } from "./facts";
import { outWords as say } from "words:correct";

export interface Correction {
  of: string; // "joints-inch/1310 cap"
  cell: PlacedCell; // as it is
  edit: Edit;
  registry: ChartFile;
  source: NewSource | undefined;
  says: readonly string[]; // what readings are worth
}

export interface WaysPart {
  show(correction: Correction): void;
}

export function waysPart(root: HTMLElement, out: HTMLElement): WaysPart {
  const pattern = root.dataset.edit ?? "";
  const mail = root.dataset.mail ?? "";
  const note = part(out, "note");
  const edit = part<HTMLAnchorElement>(out, "edit-there");
  const letter = part<HTMLAnchorElement>(out, "mail-there");
  const patch = part<HTMLAnchorElement>(out, "patch");
  edit.rel = "noreferrer"; // an anchor that leads nowhere yet may not have it in the markup
  let line = "";

  part(out, "copy").addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(line);
      note.textContent = say.copied;
    } catch {
      getSelection()?.selectAllChildren(part(out, "put"));
      note.textContent = say.copyByHand;
    }
  });

  return {
    show({ of, cell, edit: change, registry, source, says }) {
      const was = bare(change.lines[change.at] ?? "");
      line = bare(change.put[0] ?? "");
      const more = source === undefined ? undefined : editSources(registry, source);
      const entry = more === undefined ? "" : added(more);
      const place = `${change.file}:${cell.line}`;
      part(out, "out-place").textContent = say.place(change.file, cell.line);
      part(out, "was").textContent = was;
      part(out, "put").textContent = line;
      part(out, "more").hidden = more === undefined;
      part(out, "more-file").textContent = registry.file;
      part(out, "more-lines").textContent = entry;
      part(out, "worth").hidden = says.length === 0;
      part(out, "worth-says").replaceChildren(
        ...says.map((text) => {
          const item = document.createElement("li");
          item.textContent = text;
          return item;
        }),
      );
      edit.hidden = pattern === "";
      if (pattern !== "") edit.href = editAddress(pattern, change.file, cell.line);
      letter.href = mailAddress(mail, say.subject(of), say.body(place, was, line, registry.file, entry));
      URL.revokeObjectURL(patch.href);
      const text = patchOf(more === undefined ? [change] : [change, more]);
      patch.href = URL.createObjectURL(new Blob([text], { type: "text/x-diff" }));
      patch.download = `${of.replace(/[^A-Za-z0-9.]+/g, "-")}.patch`;
      note.textContent = "";
    },
  };
}

function bare(line: string): string {
  return line.replace(/\r?\n$/, "");
}

// The lines that are new in a file that lacks nothing else.
function added(edit: Edit): string {
  const before = new Set(linesOf(edit.lines.join("")).map(bare));
  return linesOf(applied(edit))
    .slice(edit.at)
    .map(bare)
    .filter((line, n) => n >= edit.gone || !before.has(line))
    .filter((line) => line !== "")
    .join("\n");
}

export function editAddress(pattern: string, file: string, line: number): string {
  const path = file.split("/").map(encodeURIComponent).join("/");
  return pattern.replace(/\{file\}/g, () => path).replace(/\{line\}/g, String(line));
}

export function mailAddress(to: string, subject: string, body: string): string {
  return `mailto:${to}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(body.replace(/\r?\n/g, "\r\n"))}`;
}
