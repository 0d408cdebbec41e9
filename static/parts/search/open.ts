// On every page: the key / or the link in the head opens the search. What searches is fetched on first use; when it
// does not come, the link's own page is the way. Markup: templates/frame.html, templates/search.html.
import { asset } from "asset:search.js";
import { keyIsOn } from "./key";
import { load } from "../late/load";
import type { Search } from "./search";

declare const CapspanSearch: Search;

const here = (document.currentScript as HTMLScriptElement).src;
const link = document.querySelector<HTMLAnchorElement>("[data-search]");
const page = document.querySelector<HTMLFormElement>("[data-search-page]");
const field = page?.querySelector("input");
const index = link?.dataset.search ?? "";
let coming: Promise<void> | null = null;
let early: string | null = null; // what is typed between the key and the search being there

function fetchPart(): Promise<void> {
  coming ??= load("script", asset, here);
  return coming;
}

async function open(at: HTMLAnchorElement): Promise<void> {
  if (field) return field.focus();
  early ??= "";
  try {
    await fetchPart();
    await CapspanSearch.open(index, at.href, early);
  } catch {
    location.assign(at.href);
  }
  early = null;
}

document.addEventListener("keydown", (event) => {
  const { key, target } = event;
  if (!link || event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || key.length !== 1) return;
  if (target instanceof Element && target.matches("textarea, select, input:not([type=radio], [type=checkbox])")) return;
  if (early !== null) early += key;
  else if (key === "/" && keyIsOn()) void open(link);
  else return;
  event.preventDefault();
});
link?.addEventListener("click", (event) => {
  if (event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  void open(link);
});
if (page) fetchPart().then(() => CapspanSearch.page(page, index), String); // the form leads to the list without it
