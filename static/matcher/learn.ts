// Where the core finds what looks for slips. That is a script of its own (slips-entry.ts):
// a page answers the first reading before it is here, and asks again when it has come.
// Until then no slip is looked for. The command and the tests load both at once.
import type * as Slips from "./slips";
import type * as Speech from "./speech-slips";

export interface Finder {
  findSlips: typeof Slips.findSlips;
  otherByFaces: typeof Slips.otherByFaces;
  head: typeof Speech.head;
}

let finder: Finder | undefined;

/** learn gives the core what looks for slips. */
export function learn(found: Finder): void {
  finder = found;
}

/** What looks for slips; undefined until it is here. */
export function learned(): Finder | undefined {
  return finder;
}
