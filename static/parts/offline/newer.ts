// The bar that offers a newer chart. It imposes nothing: until the reader says so, this page and those after it stay
// with the chart they began with, whatever the host has by now.
import type { About } from "../../worker/messages";
import { make } from "../identify/element";
import { words as large } from "words:large";
import { words } from "words:offline";

/**
 * waiting: a newer edition is kept and ready. taken: it was taken in another window. no-room: it is there, and there is
 * no room to keep it beside the one in use.
 */
export type News = "waiting" | "taken" | "no-room";

let bar: HTMLElement | null = null;
let accepted = false;

/** Shows the bar; `own` are the data of the script element, with this page's chart. */
export function show(news: News, own: DOMStringMap, registration?: ServiceWorkerRegistration): void {
  if (capspanInPieces && own.version === undefined) {
    void showUnnamed(news, registration);
    return;
  }
  const chart = own.version ?? "";
  if (news === "taken") {
    if (accepted) location.reload();
    else put(words.taken(chart), [words.reload, () => location.reload()]);
  } else if (news === "no-room") {
    put(words.noRoom(chart), [words.drop, () => void drop()]);
  } else if (registration?.waiting) {
    void offer(registration, registration.waiting, chart);
  }
}

// Pages of a large chart do not name it: the worker that gave them out does, as long as it is there.
async function showUnnamed(news: News, registration?: ServiceWorkerRegistration): Promise<void> {
  const active = navigator.serviceWorker.controller;
  if (news !== "taken") show(news, { version: active ? (await ask(active)).chart : "" }, registration);
  else if (accepted) location.reload();
  else put(large.taken, [words.reload, () => location.reload()]);
}

async function offer(registration: ServiceWorkerRegistration, waiting: ServiceWorker, chart: string): Promise<void> {
  const about = await ask(waiting);
  if (postponed() === about.edition) return;
  put(
    words.waiting(chart, about.chart, about.pages - 1),
    [
      words.use,
      () => {
        accepted = true;
        registration.waiting?.postMessage("use"); // a newer one still, if there is one by now
      },
    ],
    () => postpone(about.edition),
  );
}

function ask(worker: ServiceWorker): Promise<About> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<About>) => resolve(data);
    worker.postMessage("about", [port2]);
  });
}

function put(text: string, [label, act]: [string, () => void], later?: () => void): void {
  bar?.remove();
  const said = make("p", { role: "status" });
  const button = make("button", { type: "button", class: "btn", "data-newer-use": "" }, label);
  const not = make("button", { type: "button", class: "btn btn--plain", "data-newer-later": "" }, words.later);
  button.addEventListener("click", act);
  not.addEventListener("click", () => {
    bar?.remove();
    later?.();
  });
  bar = make("aside", { class: "newer", "aria-label": words.label }, said, button, not);
  document.body.append(bar);
  said.textContent = text; // into an element that is there already, so that it is read out
}

/** Gives up the kept copy: the next page comes from the network, and a new copy has room. */
async function drop(): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration();
  const scope = registration?.scope ?? "";
  for (const name of await caches.keys()) if (name.startsWith(`capspan ${scope} `)) await caches.delete(name);
  await registration?.unregister();
  location.reload();
}

// "Later" holds for this window. A browser without storage asks again on the next page.
const note = "capspan-later";

function postponed(): string | null {
  try {
    return sessionStorage.getItem(note);
  } catch {
    return null;
  }
}

function postpone(edition: string): void {
  try {
    sessionStorage.setItem(note, edition);
  } catch {
    // asked again
  }
}
