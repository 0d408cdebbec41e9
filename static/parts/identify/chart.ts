// Fetches the chart the page names, and refuses one it would misread.
import type { AnyChart } from "../../matcher/prepared";
import type { Chart } from "../../matcher/types";
import { words } from "words:identify";
import { openPieces } from "../pieces/held";

/** Fetches and checks the chart; the error's message is a sentence for the reader. */
export async function fetchChart(address: string): Promise<AnyChart> {
  if (typeof CapspanCore === "undefined") throw new Error(words.noCore);
  if (capspanInPieces) return fetchDirectory(address);
  let chart: Chart;
  try {
    const response = await fetch(address);
    if (!response.ok) throw new Error(String(response.status));
    chart = (await response.json()) as Chart;
  } catch {
    throw new Error(words.noChart);
  }
  if (chart.format !== 1 || !Array.isArray(chart.rows)) throw new Error(words.badChart);
  return chart;
}

async function fetchDirectory(address: string): Promise<AnyChart> {
  if (typeof CapspanPieces === "undefined") throw new Error(words.noCore);
  try {
    return await openPieces(address);
  } catch {
    throw new Error(words.noChart);
  }
}
