// One file of a chart in pieces, from this device or from the network, held to its name. What does not have the bytes
// that its name stands for is never used.
import { isNamed } from "./sum";
import { keptCopy } from "./kept";

/**
 * gone: the site has it no more, so this page is of an older edition. damaged: what came has other bytes, also when
 * asked for anew. unreachable: nothing came, or not all of it.
 */
export type Why = "gone" | "damaged" | "unreachable";

const lost = "Lost";

/** whyLost is why a file did not come; null for an error of another kind. */
export function whyLost(error: unknown): Why | null {
  return error instanceof Error && error.name === lost ? (error.message as Why) : null;
}

/** failed is an error of which whyLost knows that. */
export function failed(why: Why): Error {
  return Object.assign(new Error(why), { name: lost });
}

/** fetchFile gives the text of a file; it rejects with what whyLost knows. */
export async function fetchFile(address: string, name: string, signal?: AbortSignal): Promise<string> {
  const kept = await keptCopy(address);
  if (kept && isNamed(kept, name)) return text(kept);
  return text(await fromNetwork(address, name, signal));
}

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** fromNetwork asks a second time, past every cache, when the bytes are others than those that were meant. */
export async function fromNetwork(address: string, name: string, signal?: AbortSignal): Promise<Uint8Array> {
  for (const cache of ["default", "reload"] as const) {
    const bytes = await get(address, { cache, credentials: "same-origin", ...(signal ? { signal } : {}) });
    if (isNamed(bytes, name)) return bytes;
  }
  throw failed("damaged");
}

async function get(address: string, how: RequestInit): Promise<Uint8Array> {
  let status = 0;
  try {
    const response = await fetch(address, how);
    status = response.status;
    if (response.ok) return new Uint8Array(await response.arrayBuffer());
  } catch {
    // no network, cut off, or given up
  }
  throw failed(status === 404 || status === 410 ? "gone" : "unreachable");
}
