// What searches: fetched by open.ts on first use, and by the search page at once.
import { asset as matcher } from "asset:matcher.js";
import { asset as pieces } from "asset:pieces.js";
import { asset as rows } from "asset:search-rows.js";
import { asset as sheet } from "asset:search.css";
import type { AnyChart } from "../../matcher/prepared";
import type { Chart } from "../../matcher/types";
import { make, part } from "../identify/element";
import { keyIsOn, turnKey } from "./key";
import { load } from "../late/load";
import { longestQuestion, lookup, type SearchIndex } from "./lookup";
import { panel, type Panel, type Source } from "./panel";
import { later } from "./later";
import type { finder, RowDirectory } from "./rows";
import { words } from "words:search";
import { openPieces } from "../pieces/held";

declare const CapspanSearchRows: { finder: typeof finder };

const here = (document.currentScript as HTMLScriptElement).src;
const styled = load("link", sheet, here).catch(() => {}); // it works without

/** Everything the panel asks. */
async function fetchSource(address: string): Promise<Source> {
  if (capspanInPieces) return fetchRows(address);
  const index = await fetchJSON<SearchIndex>(address);
  if (index.format !== 1) throw new Error(address); // of another build
  return {
    index,
    find: lookup(index),
    async core() {
      if (typeof CapspanCore === "undefined") await load("script", matcher, here);
      return fetchJSON<Chart>(index.chart); // of this build, as the core is
    },
  };
}

// Of a large chart: pages are in the index, and rows in drawers.
async function fetchRows(address: string): Promise<Source> {
  const directory = await fetchJSON<RowDirectory>(address);
  const index = await fetchJSON<SearchIndex>(directory.entries);
  if (index.format !== 1) throw new Error(address); // of another build
  await load("script", rows, here);
  const find = lookup(index);
  return {
    index,
    find,
    late: later(CapspanSearchRows.finder(address, directory, index.passing, find)),
    async core() {
      if (typeof CapspanCore === "undefined") await load("script", matcher, here);
      return fetchDirectory(directory.chart);
    },
  };
}

async function fetchDirectory(address: string): Promise<AnyChart> {
  if (typeof CapspanPieces === "undefined") await load("script", pieces, here);
  return openPieces(address);
}

async function fetchJSON<T>(address: string): Promise<T> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(String(response.status));
  return (await response.json()) as T;
}

// A question of characters that an address escapes to nine each.
const longestAddress = 3 + 9 * longestQuestion;

/** The search page: the question is the fragment's, #q=..., and goes back into it, so that it can be sent on. */
async function page(form: HTMLFormElement, address: string): Promise<void> {
  const root = form.parentElement ?? form;
  const field = part<HTMLInputElement>(root, "search-field");
  const asking = await start(root, address);
  if (!asking) return; // the form leads to the list from A to Z
  const fromAddress = (): void => {
    const question = new URLSearchParams(location.hash.slice(1, longestAddress)).get("q");
    asking.ask((question ?? field.value).slice(0, longestQuestion));
  };
  field.addEventListener("input", () => {
    history.replaceState(null, "", field.value === "" ? location.pathname : `#q=${encodeURIComponent(field.value)}`);
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  window.addEventListener("hashchange", fromAddress);
  fromAddress();
  root.append(keyBox());
  root.dataset.ready = "";
}

async function start(root: HTMLElement, address: string): Promise<Panel | null> {
  try {
    return panel(root, await fetchSource(address));
  } catch {
    part(root, "search-status").textContent = words.noIndex;
    return null;
  }
}

let dialog: HTMLDialogElement | null = null;

/** Opens the dialog over the page, with what was typed already. Closing it gives the focus back. */
async function open(address: string, ownPage: string, typed: string): Promise<void> {
  await styled;
  dialog ??= build(ownPage);
  const { dataset } = dialog;
  if (!dialog.open) dialog.showModal();
  const field = part<HTMLInputElement>(dialog, "search-field");
  field.select();
  if (dataset.ready !== undefined) return;
  dataset.ready = ""; // asked once
  field.value = typed;
  const asking = await start(dialog, address);
  if (asking) asking.ask(field.value);
  else delete dataset.ready; // to be tried again
}

function build(ownPage: string): HTMLDialogElement {
  const close = make("button", { type: "button", class: "btn btn--plain" }, words.close);
  const made = make(
    "dialog",
    { class: "search", "aria-labelledby": "search-title" },
    make("div", { class: "search__head" }, make("h2", { id: "search-title" }, words.title), close),
    make("label", { class: "search__label", for: "search-field" }, words.ask),
    make("input", {
      id: "search-field",
      type: "search",
      autocomplete: "off",
      autocapitalize: "off",
      spellcheck: "false",
      maxlength: String(longestQuestion),
      placeholder: words.example,
      "data-search-field": "",
    }),
    make("p", { class: "search__status", role: "status", "data-search-status": "" }),
    make("ol", { class: "search__hits", "data-search-hits": "" }),
    make("div", { class: "search__foot" }, make("a", { href: new URL("../a-z/", ownPage).href }, words.all), keyBox()),
  );
  close.addEventListener("click", () => made.close());
  made.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return; // a search field would take it to empty itself
    event.preventDefault();
    made.close();
  });
  made.addEventListener("click", (event) => {
    // Beside the sheet; or on a link, whose goal may be on this very page.
    if (event.target === made || (event.target as Element).closest("a")) made.close();
  });
  document.body.append(made);
  return made;
}

function keyBox(): HTMLElement {
  const box = make("input", { type: "checkbox" });
  box.checked = keyIsOn();
  box.addEventListener("change", () => turnKey(box.checked));
  return make("label", { class: "search__key" }, box, make("span", {}, words.key));
}

const search = { open, page };
export type Search = typeof search;
Object.assign(window, { CapspanSearch: search }); // shorter than a bundle with exports
