// What stands in the worker's place while the site is being edited: a rebuilt page must show at once, so a worker that
// an earlier visit left is taken away, with all it kept, and the pages it gave out are loaded again.
declare const self: ServiceWorkerGlobalScope;

async function retire(): Promise<void> {
  const { scope } = self.registration;
  const names = (await caches.keys()).filter((name) => name.startsWith(`capspan ${scope} `));
  await Promise.all(names.map((name) => caches.delete(name)));
  await self.registration.unregister();
  // Not waited for: a page that loads waits for this to end.
  for (const page of await self.clients.matchAll({ type: "window" })) void page.navigate(page.url);
}

self.addEventListener("install", (event) => event.waitUntil(self.skipWaiting()));
self.addEventListener("activate", (event) => event.waitUntil(retire()));

export {}; // a module, so that self is its own
