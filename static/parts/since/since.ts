// Says above the verdict what has changed since its link was made. Fetched with the record of changes (build/history_data.go)
// when the charts differ, so a page opened by a link of today carries neither.
import type { PartAnswer } from "../../matcher/part-types";
import { changedSince, type Record } from "../../matcher/since";
import type { Answer } from "../../matcher/types";
import { make, part } from "../identify/element";
import { words } from "words:since";

export async function show(root: HTMLElement, made: string, answer: Answer | PartAnswer): Promise<void> {
  const box = make("aside", { class: "size", "data-since": "", "aria-label": words.title });
  part(root, "verdict-head").after(box);
  const site = root.dataset.site ?? "/";
  let says: string[];
  let rest: HTMLElement[] = [];
  try {
    const response = await fetch(`${site}changes/history.json`);
    if (!response.ok) throw new Error(String(response.status));
    const since = changedSince((await response.json()) as Record, made, answer);
    says = [since.head];
    if (since.changes.length > 0) rest = [make("ul", {}, ...since.changes.map((text) => make("li", {}, text)))];
  } catch {
    says = [words.missing];
  }
  const link = make("a", { href: `${site}changes/` }, words.all);
  box.append(make("p", { class: "label" }, words.title), ...says.map((text) => make("p", {}, text)), ...rest);
  box.append(make("p", { class: "size__names" }, link));
  part(root, "note").append(` ${says.join(" ")}`); // the region that is read aloud
}
