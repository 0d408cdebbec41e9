// The way from a calculation into a shaft record: fetched late, with the first result of the reader's own.
import { asset } from "asset:keep.js";
import type { Report } from "../../driveline/description";
import { load } from "../late/load";
import type * as Keep from "../shaft/keep-calculation";

declare const CapspanKeep: typeof Keep | undefined; // what keep.js leaves behind

const here = (document.currentScript as HTMLScriptElement).src;

/** Hands over each report: a result of the reader's own that has figures can be kept. */
export function keeping(root: HTMLElement): (report: Report, own: boolean) => void {
  let last: Report | null = null;
  let able = false;
  let box: ReturnType<typeof Keep.keepCalculation> | null = null;
  let coming = false;

  function show(): void {
    box?.show(able);
  }

  function fetch(): void {
    if (coming) return;
    coming = true;
    load("script", asset, here).then(
      () => {
        if (typeof CapspanKeep === "undefined") return;
        box = CapspanKeep.keepCalculation(root, () => last as Report, root.dataset.version);
        show();
      },
      () => {
        coming = false; // the page works without; the next result tries again
      },
    );
  }

  return (report, own) => {
    last = report;
    able = own && report.lines.length > 0;
    if (able) fetch();
    show();
  };
}
