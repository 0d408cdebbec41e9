// A size's figures beside the readings: yours, the chart's, how far off, and how far off they may be.
import type { Comparison, Quantity, Size, Unit } from "../../matcher/types";
import { make } from "./element";
import { bothUnits, difference } from "./lengths";
import { quantities } from "./state";
import { quantityWords, words } from "./words";

export function comparisonTable(size: Size, lead: Unit): HTMLElement | null {
  const several = size.ends.length > 1;
  const lines = size.ends.flatMap((end, n) =>
    quantities.flatMap((quantity) => {
      const compared = end[quantity];
      return compared ? [line(title(quantity, n, several), compared, lead)] : [];
    }),
  );
  if (lines.length === 0) return null;
  const heads = [words.yours, words.chart, words.difference, words.within];
  const caption = `${words.compare}: ${size.names[0] ?? ""}`;
  const table = make(
    "table",
    { class: "compare" },
    make("caption", {}, words.compare),
    make(
      "thead",
      {},
      make("tr", {}, make("th", { scope: "col" }, words.measure), ...heads.map((h) => make("th", { scope: "col", class: "num" }, h))),
    ),
    make("tbody", {}, ...lines),
  );
  return make("div", { class: "scroll", role: "region", tabindex: "0", "aria-label": caption }, table);
}

function title(quantity: Quantity, end: number, several: boolean): string {
  return several ? `${quantityWords[quantity]}, ${words.endTitle(end).toLowerCase()}` : quantityWords[quantity];
}

function line(name: string, c: Comparison, lead: Unit): HTMLTableRowElement {
  const off = bothUnits(c.difference, lead, difference);
  if (Math.abs(c.difference) > c.uncertainty) off.classList.add("off");
  const within = bothUnits(c.uncertainty, lead);
  within.prepend("± ");
  return make(
    "tr",
    {},
    make("th", { scope: "row" }, name),
    bothUnits(c.measured, lead),
    bothUnits(c.chart, lead, undefined, c.chartText),
    off,
    within,
  );
}
