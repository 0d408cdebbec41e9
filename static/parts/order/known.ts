// The chart in both its forms, as the pages of slip and record need it.
import type { Chart } from "../../matcher/types";
import type { SlipChart } from "../../order/chart";
import { fetchChart } from "../identify/chart";
import { words } from "words:order";
import { words as pieces } from "words:pieces";

export interface Known {
  chart: Chart;
  slips: SlipChart;
}

/** Fetches what the page names; the error's message is a sentence for the reader. */
export async function fetchKnown(root: HTMLElement): Promise<Known> {
  if (typeof CapspanCore === "undefined") throw new Error(words.noCore);
  if (capspanInPieces) throw new Error(pieces.notHere);
  const [chart, slips] = await Promise.all([
    fetchChart(root.dataset.chart ?? ""),
    fetchSlips(root.dataset.slips ?? ""),
  ]);
  return { chart: chart as Chart, slips };
}

async function fetchSlips(address: string): Promise<SlipChart> {
  const found = await fetch(address).then(
    (answer) => (answer.ok ? (answer.json() as Promise<SlipChart>) : null),
    () => null,
  );
  if (found === null || found.format !== 1) throw new Error(words.noChart);
  return found;
}
