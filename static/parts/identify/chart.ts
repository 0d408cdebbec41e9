// Fetches the chart the page names, and refuses one it would misread.
import type { Chart } from "../../matcher/types";
import { words } from "words:identify";

/** Fetches and checks the chart; the error's message is a sentence for the reader. */
export async function fetchChart(address: string): Promise<Chart> {
  if (typeof CapspanCore === "undefined") throw new Error(words.noCore);
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
