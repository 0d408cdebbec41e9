// Fetches what says how the chart has changed since a link was made, when the link's chart is another than the page's.
import { asset } from "asset:since.js";
import type { PartAnswer } from "../../matcher/part-types";
import type { Answer } from "../../matcher/types";
import { load } from "../late/load";
import type * as Since from "./since";

declare const CapspanSince: typeof Since; // what the script leaves behind

export function sinceMade(
  root: HTMLElement,
  here: string,
  made: string | undefined,
  now: string,
  answer: Answer | PartAnswer,
): void {
  root.querySelector("[data-since]")?.remove(); // of the link before
  if (!made || made === now) return;
  void load("script", asset, here).then(
    () => CapspanSince.show(root, made, answer),
    () => {}, // the page has said already that the charts differ
  );
}
