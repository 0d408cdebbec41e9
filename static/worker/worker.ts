// The service worker: it keeps the site on the reader's device and answers from there.
//
// One edition is one build. The browser gives a page the worker its edition was begun with, and this one never takes
// over by itself: a reader half-way through a job keeps the chart of the first reading until all pages are closed or
// the newer chart is asked for (static/parts/offline). The first edition keeps what a job needs, then begins, and
// keeps the rest when a page has nothing to do; a later one keeps all before it is offered, because the one it
// replaces may be complete.
//
// Nothing here knows the time, and nothing expires: a clock that is wrong changes nothing.
import { answer } from "./answer";
import { fill, giveUp, keep, noteOpen, sweep } from "./keep";
import type { About, Request } from "./messages";
import { first, rest, root, site, tell, windows } from "./site";

declare const self: ServiceWorkerGlobalScope;

async function install(): Promise<void> {
  try {
    await keep(self.registration.active ? [...first, ...rest] : first);
  } catch (error) {
    if (error instanceof DOMException && error.name === "QuotaExceededError") {
      await giveUp();
      await tell("no-room");
    }
    throw error; // this worker is dropped; the one before goes on, or the site works without
  }
}

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(root)) event.respondWith(answer(event.request));
});

self.addEventListener("message", (event) => {
  const asked = event.data as Request;
  if (asked === "fill") event.waitUntil(sweep().then(fill, fill));
  // Noted before, not after: a page that is loaded again already waits for this worker.
  if (asked === "use") event.waitUntil(noteOpen().then(takeOver, takeOver));
  if (asked === "about") event.waitUntil(about(event.ports[0]));
});

const takeOver = () => self.skipWaiting();

async function about(port?: MessagePort): Promise<void> {
  const pages = (await windows()).length;
  port?.postMessage({ edition: site.edition, chart: site.chart, pages } satisfies About);
}
