// What the browser lends to the shelf: its storage, names for new records, and which record this window was last about.
import { shelfOf, type Shelf } from "../../shaft/shelf";

export function deviceShelf(schema: string): Shelf {
  return shelfOf(() => localStorage, new URL(schema, location.href).href);
}

/** A name for a new record that no other window gives. */
export function newId(): string {
  const numbers = crypto.getRandomValues(new Uint32Array(3));
  return [...numbers].map((n) => n.toString(36).padStart(7, "0")).join("");
}

const key = "capspan-shaft"; // of this window: the shelf's keys are longer

/** The record this window was last about; "" for none. */
export function current(): string {
  try {
    return sessionStorage.getItem(key) ?? "";
  } catch {
    return "";
  }
}

export function remember(id: string): void {
  try {
    sessionStorage.setItem(key, id);
  } catch {
    // the next page begins without
  }
}
