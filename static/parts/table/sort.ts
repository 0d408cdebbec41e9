// A press on a column's head sorts by it, a second press the other way, a third restores the chart's own order.
import { words } from "words:table";

type Order = "ascending" | "descending" | null;

export function makeSortable(table: HTMLTableElement): void {
  const body = table.tBodies[0];
  if (!body) return;
  const chartOrder = [...body.rows];
  const heads = [...table.querySelectorAll<HTMLTableCellElement>("thead th")];

  heads.forEach((head, column) => {
    // A head that links to its method keeps the link; the button goes beside it, before a number's head, whose end
    // stays in line with its figures.
    const button = document.createElement("button");
    button.type = "button";
    button.className = "sort";
    const link = head.querySelector("a");
    if (link) {
      button.setAttribute("aria-label", words.sortBy(link.textContent));
      if (head.dataset.sort === "number") head.prepend(button);
      else head.append(button);
    } else {
      button.append(...head.childNodes);
      head.append(button);
    }
    button.addEventListener("click", () => {
      const order = next(head.getAttribute("aria-sort"));
      for (const h of heads) h.removeAttribute("aria-sort");
      if (order) head.setAttribute("aria-sort", order);
      body.append(...sorted(chartOrder, column, head.dataset.sort === "number", order));
    });
  });
}

function next(order: string | null): Order {
  return order === "ascending" ? "descending" : order === "descending" ? null : "ascending";
}

// Equal rows stay in the chart's order; a cell without a figure goes last either way.
function sorted(rows: HTMLTableRowElement[], column: number, numeric: boolean, order: Order): HTMLTableRowElement[] {
  if (order === null) return rows;
  const sign = order === "ascending" ? 1 : -1;
  const text = (row: HTMLTableRowElement) => row.cells[column]?.firstChild?.textContent?.trim() ?? "";
  const number = (row: HTMLTableRowElement) => {
    const value = Number.parseFloat(text(row).replace(",", "."));
    return Number.isNaN(value) ? null : value;
  };
  return [...rows].sort((a, b) => {
    if (!numeric) return sign * text(a).localeCompare(text(b), document.documentElement.lang, { numeric: true });
    const [x, y] = [number(a), number(b)];
    if (x === null || y === null) return Number(x === null) - Number(y === null);
    return sign * (x - y);
  });
}
