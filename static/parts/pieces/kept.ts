// The pieces that a reader has chosen to keep on the device, in a store of their own. The service worker neither fills
// nor empties it: a piece has the same name in every edition of the chart that has it, so most outlive an edition.
import { fromNetwork } from "./fetch";

let folder = ""; // where the pieces lie: another chart on the same host has another
let names = new Set<string>(); // the addresses of what is kept
let store: Cache | null = null;

const named = (): string => `capspan-chart ${folder}`;

/** lookInto notes what is kept of the chart whose pieces lie there. */
export async function lookInto(pieces: string): Promise<void> {
  folder = pieces;
  names = new Set();
  store = null;
  try {
    if (!(await caches.has(named()))) return;
    store = await caches.open(named());
    names = new Set((await store.keys()).map(({ url }) => url));
  } catch {
    // no store: nothing is kept
  }
}

/** Whether this browser can keep anything: not on a page that came by plain http. */
export function canKeep(): boolean {
  return typeof caches !== "undefined";
}

export function isKept(address: string): boolean {
  return names.has(address);
}

export function countKept(): number {
  return names.size;
}

/** The bytes that are kept; null when there are none. Whoever asks looks whether they are the right ones. */
export async function keptCopy(address: string): Promise<Uint8Array | null> {
  if (!names.has(address)) return null;
  try {
    const found = await store?.match(address);
    if (found) return new Uint8Array(await found.arrayBuffer());
  } catch {
    // as good as none
  }
  names.delete(address); // somebody else has emptied the store
  return null;
}

/** Requests at a time; a browser has other things to fetch too. */
const hands = 4;

export interface File {
  address: string;
  name: string;
  /** What its bytes lead to that is kept with it: it is there before it. */
  beside?(bytes: Uint8Array): File;
}

/**
 * keep keeps all of the files, and lets go what is not among them once all are there. It rejects with what whyLost knows, or with
 * what the store says when it refuses; what was kept by then stays, also when the signal stops it.
 */
export async function keep(files: readonly File[], signal: AbortSignal, kept: (n: number) => void): Promise<void> {
  const cache = await caches.open(named());
  store = cache;
  const queue = files.filter(({ address }) => !names.has(address));
  kept(files.length - queue.length);
  async function one({ name, address, beside }: File): Promise<void> {
    const bytes = await fromNetwork(address, name, signal);
    const more = beside?.(bytes);
    if (more && !names.has(more.address)) await one(more);
    if (signal.aborted) return;
    await cache.put(address, new Response(bytes as BodyInit, { headers: { "content-type": "application/json" } }));
    names.add(address);
  }
  async function work(): Promise<void> {
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      await one(next);
      if (signal.aborted) return;
      kept(files.filter(({ address }) => names.has(address)).length);
    }
  }
  const ended = await Promise.allSettled(
    Array.from({ length: hands }, () =>
      work().catch((error: unknown) => {
        queue.length = 0; // one failed: the others stop too
        throw error;
      }),
    ),
  );
  for (const end of ended) if (end.status === "rejected") throw end.reason;
  if (signal.aborted) return;
  const wanted = new Set<string>();
  for (const { address, beside } of files) {
    wanted.add(address);
    const bytes = beside && (await keptCopy(address));
    if (bytes) wanted.add(beside(bytes).address);
  }
  for (const address of [...names].filter((a) => !wanted.has(a))) {
    await cache.delete(address);
    names.delete(address);
  }
}

/** letGo removes all that is kept. */
export async function letGo(): Promise<void> {
  await caches.delete(named());
  names = new Set();
  store = null;
}
