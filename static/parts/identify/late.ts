// What the first readings can be answered without is fetched with them: the picture of the neighbourhood, the ways on
// to the shaft, and the part of the core that looks for slips, for ways to join two ends and for what parts sizes. A page
// opened where there is little signal does not wait for any of it.
import { asset as sheet } from "asset:neighbourhood.css";
import { asset as core } from "asset:matcher-late.js";
import { asset as verdict } from "asset:verdict-late.js";
import { load } from "../late/load";
import type * as VerdictLate from "./verdict-late";

declare const CapspanVerdictLate: typeof VerdictLate | undefined; // what the script leaves behind

export const here = (document.currentScript as HTMLScriptElement).src;
let coming: Promise<boolean> | null = null;

/** The late parts of the verdict; null until they are here. */
export function drawn(): typeof VerdictLate | null {
  return typeof CapspanVerdictLate === "undefined" ? null : CapspanVerdictLate;
}

/** Whether both parts are here. */
export function whole(): boolean {
  return drawn() !== null && CapspanCore.learned() !== undefined;
}

/** Fetches all of it; false when something did not come, and then the next call tries again. */
export function fetchLate(): Promise<boolean> {
  coming ??= Promise.all([load("link", sheet, here), load("script", verdict, here), load("script", core, here)]).then(
    () => true,
    () => {
      coming = null;
      return false;
    },
  );
  return coming;
}
