// Whether the key / opens the search. A key that is only a character can be in the way of speech input and of other
// tools, so it can be turned off (WCAG 2.2, 2.1.4). Where nothing can be stored it stays on.
const place = "capspan-search-key";

export function keyIsOn(): boolean {
  try {
    return localStorage.getItem(place) !== "off";
  } catch {
    return true;
  }
}

export function turnKey(on: boolean): void {
  try {
    if (on) localStorage.removeItem(place);
    else localStorage.setItem(place, "off");
  } catch {
    // nothing to do: the box says what it is on this page
  }
}
