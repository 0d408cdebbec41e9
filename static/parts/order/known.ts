// The chart in both its forms, as the pages of slip and record need it.
import type { SlipChart } from "../../order/chart";
import type { AskedChart } from "../../order/facts";
import { fetchChart } from "../identify/chart";
import { openLarge } from "./looked-up";
import { words } from "words:order";

export interface Known {
  chart: AskedChart;
  slips: SlipChart;
}

/** Fetches what the page names; the error's message is a sentence for the reader. */
export async function fetchKnown(root: HTMLElement): Promise<Known> {
  if (typeof CapspanCore === "undefined") throw new Error(words.noCore);
  if (capspanInPieces) return openLarge(root);
  const [chart, slips] = await Promise.all([
    fetchChart(root.dataset.chart ?? ""),
    fetchSlips(root.dataset.slips ?? ""),
  ]);
  return { chart: chart as AskedChart, slips };
}

async function fetchSlips(address: string): Promise<SlipChart> {
  const found = await fetch(address).then(
    (answer) => (answer.ok ? (answer.json() as Promise<SlipChart>) : null),
    () => null,
  );
  if (found === null || found.format !== 1) throw new Error(words.noChart);
  return found;
}
