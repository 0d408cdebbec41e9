// The rows of a large chart as slip and record show them: build/slip_chart.go writes them. A slip needs the rows of the
// sizes it names, and those lie together; a name that is typed leads to its size.
//
//   const slips = await openSlips(address);
//   const [place] = await slips.named("1310");           or the places of an answer: Object.values(answer.at ?? {})
//   await slips.fetch([place]);
//   factsOf(joint, chart, slips.chart);
import { plain } from "../../order/add";
import type { SlipChart, SlipRow } from "../../order/chart";
import { failed } from "../pieces/fetch";
import { drawersOf, type DrawerList, fetchDirectory, keyEnd } from "../late/drawers";

interface SlipDirectory {
  format: number;
  version: string;
  sizes: DrawerList;
  names: DrawerList;
}

type NameRecord = readonly [id: string, key: string, ...also: string[]];

export interface Slips {
  /** With the rows that have come. */
  chart: SlipChart;
  /** Where rows of that name have their pages, below the site's root: one by its id, else all that are also called so. */
  named(name: string): Promise<string[]>;
  /** Takes in the rows of sizes, by places of rows; rejects when they do not come. */
  fetch(places: Iterable<string>): Promise<void>;
  /** Begins anew with what is on the site now, and waits for nothing that was asked for before. */
  renew(): Promise<void>;
  /** Whether the rows of all those sizes are here. */
  has(places: readonly string[]): boolean;
}

export async function openSlips(address: string): Promise<Slips> {
  let directory = await fetchDirectory<SlipDirectory>(address);
  const chart: SlipChart = { format: 1, version: directory.version, rows: [] };
  const keys = new Set<string>(); // of the sizes that are here
  let sizes = drawersOf<SlipRow>(directory.sizes);
  let names = drawersOf<NameRecord>(directory.names);

  // What a directory names may be gone when a newer edition has come since. One of another chart says nothing of this one.
  async function renew(): Promise<void> {
    directory = await fetchDirectory<SlipDirectory>(address);
    if (directory.version !== chart.version) throw failed("gone");
    sizes = drawersOf(directory.sizes);
    names = drawersOf(directory.names);
  }

  async function tried<T>(ask: () => Promise<T>): Promise<T> {
    try {
      return await ask();
    } catch {
      await renew();
      return await ask();
    }
  }

  return {
    chart,
    renew,
    named: (name) =>
      tried(async () => {
        const asked = plain(name);
        const found = await names.open(asked + keyEnd);
        const own = found.filter(([id]) => plain(id) === asked);
        const all =
          own.length > 0 ? own : found.filter(([, , ...also]) => also.some((other) => plain(other) === asked));
        return all.map(([id, key]) => `size/${key}/#${id}`);
      }),
    fetch: (places) =>
      tried(async () => {
        const asked = [...new Set([...places].map(keyOf))].filter((key) => !keys.has(key));
        const came = await Promise.all(asked.map((key) => sizes.open(key + keyEnd)));
        const here = new Set(chart.rows.map((row) => row.ref));
        for (const row of new Set(came.flat())) if (!here.has(row.ref)) chart.rows.push(row);
        for (const key of asked) keys.add(key);
      }),
    has: (places) => places.every((place) => keys.has(keyOf(place))),
  };
}

function keyOf(place: string): string {
  return place.split("/")[1] ?? "";
}
