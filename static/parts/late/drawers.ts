// What is told of a large chart's rows lies in drawers: files of records, each found by the beginning of its key.
// build/drawers.go writes them, and the directory that names them.
//
//   goal      a record is fetched with its drawer and nothing else; what comes is what the directory names
//   non-goal  no drawer is kept that did not come: who asks again, fetches again

/** What a directory says of its drawers. */
export interface DrawerList {
  folder: string; // address of the files, with a slash behind
  files: Record<string, string>; // names, by the beginning of the keys
}

export interface Drawers<T> {
  /** The records of the drawer that a key lies in; none when no key begins so. Rejects when it does not come. */
  open(key: string): Promise<T[]>;
  /** A file of the folder by its name. */
  file<F>(name: string): Promise<F>;
}

/** Stands behind every key. */
export const keyEnd = " ";

export function drawersOf<T>({ folder, files }: DrawerList): Drawers<T> {
  const names = new Map(Object.entries(files));
  const here = new Map<string, Promise<unknown>>();

  function file<F>(name: string): Promise<F> {
    const before = here.get(name);
    if (before !== undefined) return before as Promise<F>;
    const coming = fetchNamed<F>(`${folder}${name}.json`, name);
    here.set(name, coming);
    coming.catch(() => here.delete(name));
    return coming;
  }

  return {
    file,
    async open(key) {
      for (let n = key.length; n >= 0; n--) {
        const name = names.get(key.slice(0, n));
        if (name !== undefined) return file<T[]>(name);
      }
      return [];
    },
  };
}

/** A directory of drawers, as it is now: its address stays, and its bytes do not. */
export async function fetchDirectory<T>(address: string): Promise<T> {
  const response = await fetch(address, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return (await response.json()) as T;
}

// The name is the beginning of the sum of the bytes: what is not those bytes has not come.
async function fetchNamed<F>(address: string, name: string): Promise<F> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  const text = await response.text();
  if (!(await named(text, name))) throw new Error(`${address}: damaged`);
  return JSON.parse(text) as F;
}

async function named(text: string, name: string): Promise<boolean> {
  if (typeof crypto === "undefined" || crypto.subtle === undefined) return true; // a site without https: what was cut off does not parse
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  const digits = [...sum].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return digits.startsWith(name);
}
