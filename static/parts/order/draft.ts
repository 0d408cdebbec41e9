// The slip under way in this window, so that a second joint can be fetched from another page. Where the browser keeps
// nothing there is none, and the slip still stands in its address.
const key = "capspan-slip";

export function draft(): string {
  try {
    return sessionStorage.getItem(key) ?? "";
  } catch {
    return "";
  }
}

/** Keeps the fragment; "" forgets it. */
export function keepDraft(fragment: string): void {
  try {
    if (fragment) sessionStorage.setItem(key, fragment);
    else sessionStorage.removeItem(key);
  } catch {
    // kept nowhere
  }
}
