// A size's figures beside the readings: yours, the chart's, how far off, and how far off they may be. The measures
// are the columns, so that the table of a plain joint fits a phone.
import type { Comparison, Size, Unit } from "../../matcher/types";
import { make } from "./element";
import { bothUnits, difference } from "./lengths";
import { quantities } from "./state";
import { words } from "words:identify";
import { endTitle, quantityWords } from "words:terms";

interface Column {
  title: string;
  compared: Comparison;
}

export function comparisonTable(size: Size, lead: Unit): HTMLElement | null {
  const columns = columnsOf(size);
  if (columns.length === 0) return null;
  const line = (title: string, cell: (c: Comparison) => HTMLTableCellElement) =>
    make("tr", {}, make("th", { scope: "row" }, title), ...columns.map((c) => cell(c.compared)));
  const table = make(
    "table",
    { class: "compare" },
    make("caption", {}, words.compare),
    make(
      "thead",
      {},
      make(
        "tr",
        {},
        make("th", { scope: "col" }, words.measure),
        ...columns.map((c) => make("th", { scope: "col", class: "num" }, c.title)),
      ),
    ),
    make(
      "tbody",
      {},
      line(words.yours, (c) => bothUnits(c.measured, lead)),
      line(words.chart, (c) => bothUnits(c.chart, lead, undefined, c.chartText)),
      line(words.difference, (c) => off(c, lead)),
      line(words.within, (c) => within(c, lead)),
    ),
  );
  const label = `${words.compare}: ${size.names[0] ?? ""}`;
  return make("div", { class: "scroll", role: "region", tabindex: "0", "aria-label": label }, table);
}

function columnsOf(size: Size): Column[] {
  return size.ends.flatMap((end, n) =>
    quantities.flatMap((quantity) => {
      const compared = end[quantity];
      if (!compared) return [];
      const name = quantityWords[quantity];
      return [{ title: size.ends.length > 1 ? `${name}, ${endTitle(n).toLowerCase()}` : name, compared }];
    }),
  );
}

// What is off by more than it may be says so in words as well as in red.
function off(c: Comparison, lead: Unit): HTMLTableCellElement {
  const cell = bothUnits(c.difference, lead, difference);
  if (Math.abs(c.difference) > c.uncertainty) {
    cell.classList.add("off");
    cell.append(make("span", { class: "note" }, words.tooFar));
  }
  return cell;
}

function within(c: Comparison, lead: Unit): HTMLTableCellElement {
  const cell = bothUnits(c.uncertainty, lead);
  cell.prepend("± ");
  return cell;
}
