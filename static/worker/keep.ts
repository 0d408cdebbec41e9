// The store: one cache for each edition, named by it. A file goes in and comes out only with the sum the list gives,
// so that a page of one edition never stands among those of another, and a damaged copy is as good as none.
import { rest, root, scope, site, sums, windows } from "./site";

declare const self: ServiceWorkerGlobalScope;

// The scope keeps apart two charts, or two languages of one, that live on one host.
const prefix = `capspan ${scope} `;
const own = prefix + site.edition;

/** Not a file of the site: the windows that were open when this edition took over. */
const openThen = `${root}?open-then`;

/** Requests at a time; a browser has other things to fetch too. */
const hands = 4;

/** What the network says to the address of a listed file. */
export type Fetched =
  | { is: "listed"; response: Response }
  | { is: "elsewhere" } // the host sends the reader to another address
  | { is: "other" }; // no such file, or other bytes: the site on the host is another edition

async function sumOf(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest.subarray(0, 6)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The response with its bytes looked at, or null when they are not those of the list. */
async function checked(response: Response, address: string): Promise<Response | null> {
  const bytes = await response.arrayBuffer();
  if ((await sumOf(bytes)) !== sums.get(address)) return null;
  const headers = new Headers(response.headers);
  // The bytes are unpacked, and the same for everybody.
  for (const name of ["content-encoding", "content-length", "vary"]) headers.delete(name);
  return new Response(bytes, { headers });
}

/** Asks the network for a listed file; throws when there is none. */
export async function fromNetwork(address: string): Promise<Fetched> {
  // An asset's name changes with its content, so the browser's own copy will do, unless that is damaged.
  const ways: RequestCache[] = address.startsWith("assets/") ? ["default", "reload"] : ["no-cache"];
  for (const cache of ways) {
    const response = await fetch(root + address, { cache, redirect: "manual" });
    if (response.type === "opaqueredirect") return { is: "elsewhere" };
    const sound = response.ok ? await checked(response, address) : null;
    if (sound) return { is: "listed", response: sound };
  }
  return { is: "other" };
}

/** The kept copy of a listed file; null when there is none, or a damaged one. */
export async function kept(address: string, cache?: Cache): Promise<Response | null> {
  const found = await (cache ?? (await caches.open(own))).match(root + address);
  return found ? checked(found, address) : null;
}

/** Puts a response into the store. */
export async function put(address: string, response: Response): Promise<void> {
  await (await caches.open(own)).put(root + address, response);
}

async function others(): Promise<string[]> {
  return (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== own);
}

/** A file of an edition that some open page still belongs to; its address holds the sum of its content. */
export async function keptByOlder(address: string): Promise<Response | undefined> {
  for (const name of await others()) {
    const found = await (await caches.open(name)).match(root + address);
    if (found) return found;
  }
  return undefined;
}

/**
 * Keeps the files that are not kept yet. What an older edition has with the same bytes is copied, so that a new chart
 * costs no more than its changes, and one try goes on where another was cut short. Throws when a file cannot be had.
 */
export async function keep(addresses: string[]): Promise<void> {
  const cache = await caches.open(own);
  const have = new Set((await cache.keys()).map(({ url }) => url.slice(root.length)));
  const older = await Promise.all((await others()).map((name) => caches.open(name)));
  const queue = addresses.filter((address) => !have.has(address));

  async function one(address: string): Promise<void> {
    for (const other of older) {
      const same = await kept(address, other);
      if (same) return cache.put(root + address, same);
    }
    const fetched = await fromNetwork(address);
    if (fetched.is === "listed") return cache.put(root + address, fetched.response);
    // An address that leads elsewhere is never kept: it is the host's to answer.
    if (fetched.is === "other") throw new Error(`the host has another ${address}`);
  }
  async function work(): Promise<void> {
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) await one(next);
  }
  try {
    await Promise.all(Array.from({ length: hands }, work));
  } finally {
    queue.length = 0; // one failed: the others stop too
  }
}

let filling: Promise<void> | null = null;

/** Keeps the rest of the list; a file that cannot be had ends it until it is asked for again. */
export function fill(): Promise<void> {
  filling ??= keep(rest)
    .catch(() => undefined) // no network, no room, another edition on the host: nothing is lost
    .then(() => {
      filling = null;
    });
  return filling;
}

/** Gives back what a try has kept that cannot be finished. */
export async function giveUp(): Promise<void> {
  await caches.delete(own);
}

/** Notes which pages are open when this edition takes over: they belong to the one before. */
export async function noteOpen(): Promise<void> {
  const ids = (await windows()).map(({ id }) => id);
  await put("?open-then", new Response(JSON.stringify(ids)));
}

/** Removes older editions, once the last page that began with one is gone. */
export async function sweep(): Promise<void> {
  const names = await others();
  const { installing, waiting } = self.registration;
  if (names.length === 0 || installing || waiting) return; // one of them may be that of a newer edition
  const note = await (await caches.open(own)).match(openThen);
  const then: unknown = note ? await note.json() : [];
  const open = await windows();
  if (Array.isArray(then) && open.some(({ id }) => then.includes(id))) return;
  await Promise.all(names.map((name) => caches.delete(name)));
}
