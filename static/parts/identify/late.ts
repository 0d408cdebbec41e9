// What the first readings can be answered without is fetched with them: the picture of the neighbourhood, and the part
// of the core that looks for slips, for ways to join two ends and for what parts sizes. A page opened where there is little signal does not wait for either.
import { asset as picture } from "asset:neighbourhood.js";
import { asset as core } from "asset:matcher-late.js";
import { load } from "../late/load";
import type * as Neighbourhood from "../neighbourhood/neighbourhood";

declare const CapspanNeighbourhood: typeof Neighbourhood | undefined; // what the script leaves behind

export const here = (document.currentScript as HTMLScriptElement).src;
let coming: Promise<boolean> | null = null;

/** The part that draws; null until it is here. */
export function drawn(): typeof Neighbourhood | null {
  return typeof CapspanNeighbourhood === "undefined" ? null : CapspanNeighbourhood;
}

/** Whether both parts are here. */
export function whole(): boolean {
  return drawn() !== null && CapspanCore.learned() !== undefined;
}

/** Fetches both; false when one did not come, and then the next call tries again. */
export function fetchLate(): Promise<boolean> {
  coming ??= Promise.all([load("script", picture, here), load("script", core, here)]).then(
    () => true,
    () => {
      coming = null;
      return false;
    },
  );
  return coming;
}
