// Registers the service worker (static/worker), which keeps the site on this device. The frame puts the addresses on
// the script element; without them there is no worker. On every page, so it is small: what it may have to say is in newer.ts, fetched when needed.
//
// Where there is no worker, no storage or no room, nothing happens: the site works as it does without this script.
import { asset as sheet } from "asset:newer.css";
import { asset as script } from "asset:newer.js";
import type { Message } from "../../worker/messages";
import { load } from "../late/load";
import type * as Newer from "./newer";

declare const CapspanNewer: typeof Newer; // what newer.js leaves behind

/** How long after the page has loaded: the chart and the pictures of a first visit come before the copy. */
const pause = 1000;

const here = (document.currentScript as HTMLScriptElement).src;

function start(box: ServiceWorkerContainer, own: DOMStringMap): void {
  // Whether a worker of this site gave out the page: not so on a first visit, nor below another chart on the same host.
  const began = box.controller?.scriptURL === new URL(own.worker ?? "", location.href).href;

  function show(what: Newer.News, registration?: ServiceWorkerRegistration): void {
    if (typeof CapspanNewer !== "undefined") {
      CapspanNewer.show(what, own, registration);
      return;
    }
    load("link", sheet, here).catch(() => undefined); // a bar without its looks still says what is new
    load("script", script, here).then(
      () => show(what, registration),
      () => undefined,
    );
  }

  async function register(): Promise<void> {
    const registration = await box.register(own.worker ?? "", { updateViaCache: "none" });
    // Not in the same moment: what only takes the worker away (retire.ts) does not wait to be asked.
    const look = () =>
      setTimeout(() => {
        if (registration.waiting && began) show("waiting", registration);
      }, pause / 2);
    const watch = () => registration.installing?.addEventListener("statechange", look);
    registration.addEventListener("updatefound", watch);
    watch();
    look();
    const active = (await box.ready).active;
    const { connection } = navigator as { connection?: { saveData?: boolean } };
    if (!connection?.saveData) active?.postMessage("fill");
  }

  box.addEventListener("message", ({ data }: MessageEvent<Message>) => {
    if (data === "no-room" && began) show("no-room");
  });
  box.addEventListener("controllerchange", () => began && show("taken"));
  const soon = () => setTimeout(() => register().catch(() => undefined), pause);
  if (document.readyState === "complete") soon();
  else addEventListener("load", soon);
}

const own = document.currentScript?.dataset;
try {
  // A browser without storage may refuse the very name.
  if (own?.worker && navigator.serviceWorker) start(navigator.serviceWorker, own);
} catch {
  // works without
}
