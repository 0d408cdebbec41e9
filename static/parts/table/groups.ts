// Finds sizes in a table that stands in groups. Each group has a page of its own with a line for each size; those that
// can hold what is asked for are fetched, and their lines filtered and sorted as in a small table. Markup:
// templates/groups.html, and templates/group.html for the pages that are read. Without script the groups are links.
import { parseFilter } from "./filter";
import { asksNothing, groupCan, lineFits, parseLength, type Group, type Span, type Wanted } from "./find";
import { makeSortable } from "./sort";
import { words } from "words:groups";

// A phone shows so many lines without effort, and nobody reads more.
const mostLines = 500;
const atOnce = 4; // pages on their way
const patience = 20_000; // ms that a page may take

interface Listed extends Group {
  id: string; // the table and the group
  href: string;
}

/** The lines of a group's page, with the head they stand under. */
interface Read {
  table: HTMLTableElement;
  rows: HTMLTableRowElement[];
}

function start(form: HTMLFormElement, index: HTMLTableElement): void {
  const part = <E extends HTMLElement>(name: string): E => {
    const found = form.querySelector<E>(`[data-find-${name}]`);
    if (!found) throw new Error(`groups: the form lacks its ${name} on ${location.pathname}`);
    return found;
  };
  const says = part("says");
  const progress = part<HTMLProgressElement>("progress");
  const again = part<HTMLButtonElement>("again");
  const frame = part("table");
  const groups = [...index.querySelectorAll<HTMLTableRowElement>("tr[data-group]")].map(listed);
  const read = new Map<string, Read>();
  let turn = 0; // a search that another has overtaken says nothing more

  async function search(): Promise<void> {
    const mine = ++turn;
    frame.hidden = again.hidden = true;
    const wanted = asked(form);
    if (typeof wanted === "string") return say(wanted);
    if (asksNothing(wanted)) return say(words.ask);
    const needed = groups.filter((group) => groupCan(wanted, group));
    if (needed.length === 0) return say(words.noGroup);
    say(words.reading(needed.length));
    progress.max = needed.length;
    progress.value = 0;
    progress.hidden = false;
    const missing = await fetchAll(needed, () => {
      if (mine === turn) progress.value += 1;
    });
    if (mine !== turn) return;
    progress.hidden = true;
    show(wanted, needed, missing);
  }

  /** Fetches the groups that are not here yet; returns how many did not come. */
  async function fetchAll(needed: Listed[], onward: () => void): Promise<number> {
    let missing = 0;
    const queue = [...needed];
    const work = async (): Promise<void> => {
      for (let group = queue.shift(); group; group = queue.shift()) {
        try {
          if (!read.has(group.id)) read.set(group.id, await readGroup(group));
        } catch {
          missing++; // what went wrong on the way makes no difference: it can be tried again
        }
        onward();
      }
    };
    await Promise.all(Array.from({ length: atOnce }, work));
    return missing;
  }

  function show(wanted: Wanted, needed: Listed[], missing: number): void {
    const found = new Map<string, HTMLTableRowElement>(); // by address: a conversion joint is in two groups
    let like: HTMLTableElement | undefined;
    for (const group of needed) {
      const here = read.get(group.id);
      like ??= here?.table;
      for (const row of here?.rows ?? []) {
        const href = row.querySelector("a")?.getAttribute("href") ?? "";
        if (!found.has(href) && lineFits(wanted, lineOf(row))) found.set(href, row);
      }
    }
    const count = found.size;
    const said =
      count === 0
        ? words.none(needed.length - missing)
        : count > mostLines
          ? words.first(mostLines, count)
          : words.found(count);
    say(missing > 0 ? `${said} ${words.unread(missing)}` : said);
    again.hidden = missing === 0;
    frame.hidden = count === 0;
    if (like && count > 0) frame.replaceChildren(tableOf(like, [...found.values()].slice(0, mostLines)));
  }

  function say(text: string): void {
    says.textContent = text;
  }

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void search();
  });
  again.addEventListener("click", () => void search());
  form.hidden = false;
}

function listed(row: HTMLTableRowElement): Listed {
  const { group = "", holds = "", least, greatest } = row.dataset;
  const name = Number(group.slice(group.lastIndexOf("/") + 1));
  return {
    id: group,
    href: row.querySelector("a")?.href ?? "",
    millimetre: Number.isNaN(name) ? null : name,
    holds: holds.split(" "),
    across: { from: least ? Number(least) : null, to: greatest ? Number(greatest) : null },
  };
}

/** What the form asks for, or a sentence on what it cannot mean. */
function asked(form: HTMLFormElement): Wanted | string {
  const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement | HTMLSelectElement;
  const unit = field("unit").value;
  let wrong: HTMLElement | undefined;
  const length = (name: string): number | null => {
    const input = field(name);
    const mm = parseLength(input.value, unit);
    if (mm === undefined) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
    if (mm === undefined) wrong ??= input;
    return mm ?? null;
  };
  const span = (name: string): Span => ({ from: length(`${name}-from`), to: length(`${name}-to`) });
  const wanted = {
    text: parseFilter(field("q").value),
    hold: field("hold").value,
    cap: span("cap"),
    across: span("across"),
  };
  if (!wrong) return wanted;
  wrong.focus();
  return words.noLength((wrong as HTMLInputElement).value);
}

/** Fetches a group's page and takes its lines. A page that is another's, as a portal's or a stale one's, is none. */
async function readGroup({ id, href }: Listed): Promise<Read> {
  const stop = new AbortController();
  const late = setTimeout(() => stop.abort(), patience);
  try {
    const answer = await fetch(href, { signal: stop.signal });
    if (!answer.ok) throw new Error(`${href}: ${answer.status}`);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const table = page.querySelector<HTMLTableElement>(`[data-group="${id}"] [data-table]`);
    if (!table?.tBodies[0]) throw new Error(`${href} is not the page of ${id}`);
    return { table, rows: [...table.tBodies[0].rows] };
  } finally {
    clearTimeout(late);
  }
}

function lineOf({ dataset }: HTMLTableRowElement) {
  const { words = "", caps = "", acrosses = "", holds = "" } = dataset;
  const numbers = (text: string) =>
    text
      .split(" ")
      .filter((t) => t !== "")
      .map(Number);
  return { words, caps: numbers(caps), acrosses: numbers(acrosses), holds: holds.split(" ") };
}

/** A table of those lines under the head of the pages they come from. */
function tableOf(like: HTMLTableElement, rows: HTMLTableRowElement[]): HTMLTableElement {
  const table = document.importNode(like, false);
  table.createCaption().textContent = words.caption;
  if (like.tHead) table.append(document.importNode(like.tHead, true));
  const body = table.createTBody();
  body.append(...rows.map((row) => document.importNode(row, true)));
  makeSortable(table);
  return table;
}

const form = document.querySelector<HTMLFormElement>("[data-find]");
const index = document.querySelector<HTMLTableElement>("[data-groups]");
if (form && index) start(form, index);
