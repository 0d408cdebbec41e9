// What the pages of slip and record know of a large chart: only what the joints in hand need. That is three things, one
// behind the other: where the sizes stand that were chosen by name, the core's answers, and the rows of the sizes that
// they name. Nothing is said of a joint until all three are here for all joints.
import { within } from "../../matcher/candidates";
import type { KnownRow } from "../../matcher/prepared";
import { addressOf, boxOf } from "../../matcher/size-key";
import type { Answer, Query, Unit } from "../../matcher/types";
import { nameIn } from "../../order/add";
import { askLike, type AskedChart, type AskedRow } from "../../order/facts";
import type { SlipJoint } from "../../order/slip";
import { fetchChart } from "../identify/chart";
import { page } from "../pieces/ask";
import { failed, whyLost } from "../pieces/fetch";
import { heldOf, type Held } from "../pieces/held";
import type { Known } from "./known";
import { openSlips, type Slips } from "./slips";
import { words } from "words:order";
import { words as pieces } from "words:pieces";

/** A name that many sizes also have is asked back for: more of them than that need not be fetched to do so. */
const mostOfName = 20;

/** A joint, as far as it is looked up. */
export type Asked = Pick<SlipJoint, "row" | "query">;

export type LookedUp = AskedChart & {
  /** Whether all is here that factsOf takes for these joints; `again` is called when it is worth another look. */
  isHere(joints: readonly Asked[], again: () => void): boolean;
  /** The address of the page of a row that was chosen, below the site; none when the chart has no such row. */
  placeOf(id: string): string | undefined;
  /** Takes in the rows that a text may name, for jointsFrom; rejects when they do not come. `anew` waits for nothing older. */
  find(typed: string, anew: boolean): Promise<void>;
};

/** inPieces is the chart that openLarge has opened. */
export function inPieces(chart: AskedChart): LookedUp {
  return chart as LookedUp;
}

/** openLarge opens the chart that a page names; the error's message is a sentence for the reader. */
export async function openLarge(root: HTMLElement): Promise<Known> {
  const [directory, slips] = await Promise.all([
    fetchChart(root.dataset.chart ?? ""),
    openSlips(root.dataset.slips ?? "").catch(() => {
      throw new Error(words.noChart);
    }),
  ]);
  if (slips.chart.version !== directory.version) throw new Error(pieces.gone);
  return { chart: lookedUp(heldOf(directory), slips), slips: slips.chart };
}

function lookedUp(held: Held, slips: Slips): LookedUp {
  const rows: AskedRow[] = [];
  const answers = new Map<string, Answer>();
  const places = new Map<string, string | undefined>(); // of ids
  const pages = new Map<string, string[]>(); // where a question's answer and a chosen row lead, by question and id

  // What it takes to know of one joint. It asks the core, which may lack pieces.
  function look({ row, query }: Asked): string[] {
    const needed: string[] = [];
    let asked = query;
    const place = row === undefined ? undefined : places.get(row);
    if (place !== undefined) {
      const twins = rowsAt(held, place, slips.chart.rows.find(({ id }) => id === row)?.twins);
      if (held.missing.size > 0) throw new Error("pieces are missing"); // tried finds them noted
      for (const twin of twins)
        if (!rows.some(({ ref }) => ref === twin.row.ref)) rows.push(askedRow(twin, twins[0] ?? twin));
      needed.push(...twins.map(addressOf));
      const own = rows.find(({ name }) => name === row);
      asked ??= own && askLike(own);
    }
    return asked === undefined ? needed : [...needed, ...answered(asked)];
  }

  function answered(query: Query): string[] {
    const key = JSON.stringify(query);
    const answer = answers.get(key) ?? held.identify(query);
    answers.set(key, answer);
    const named = [...answer.sizes, ...answer.near, ...answer.sameFigures].flatMap((size) => size.rows);
    return named.flatMap((ref) => answer.at?.[ref] ?? []);
  }

  async function fetchRows(anew: boolean, ask: () => Promise<void>): Promise<void> {
    try {
      if (anew) await slips.renew();
      await ask();
    } catch (error) {
      throw whyLost(error) === null ? failed("unreachable") : error;
    }
  }

  async function placeAll(ids: readonly string[]): Promise<void> {
    for (const id of ids) {
      const place = (await slips.named(id)).find((place) => place.endsWith(`#${id}`));
      if (place !== undefined) await slips.fetch([place]);
      places.set(id, place);
    }
  }

  return {
    ...held.chart,
    rows,
    answer: (query) => answers.get(JSON.stringify(query)),
    placeOf: (id) => places.get(id),
    async find(typed, anew) {
      if (anew) await slips.renew();
      const found = await slips.named(nameIn(typed));
      await slips.fetch(found.slice(0, mostOfName));
    },
    isHere(joints, again) {
      const key = JSON.stringify(joints.map(({ row, query }) => [row, query]));
      const before = pages.get(key);
      if (before !== undefined && slips.has(before)) return true;
      const ids = joints.flatMap(({ row }) => (row === undefined || places.has(row) ? [] : [row]));
      if (ids.length > 0) {
        page.waitFor(key, (anew) => fetchRows(anew, () => placeAll(ids)), again);
        return false;
      }
      const few = joints.some(({ query }) => query?.ends.some((end) => !end.cap?.length || !end.across?.length));
      const needed = before ?? page.lookUp(held.chart, key, () => joints.flatMap(look), again, few);
      if (needed === null) return false;
      pages.set(key, needed);
      if (slips.has(needed)) return true;
      page.waitFor(key, (anew) => fetchRows(anew, () => slips.fetch(needed)), again);
      return false;
    },
  };
}

// The row that has its page there, and the rows of its size, in the chart's order. Of a conversion joint the pieces do not
// tell those; `others` are their places.
function rowsAt(held: Held, place: string, others: readonly string[] = []): KnownRow[] {
  const found = rowAt(held, place);
  if (found === undefined) return [];
  const twins = found.ends.length === 1 ? held.known.twins(found) : [place, ...others].map((p) => rowAt(held, p));
  return twins.filter((twin) => twin !== undefined).sort((a, b) => a.index - b.index);
}

function rowAt({ known }: Held, place: string): KnownRow | undefined {
  const box = boxOf(place);
  const name = place.slice(place.indexOf("#") + 1);
  return within(known, () => box).find(({ row }) => row.name === name);
}

function askedRow({ row, ends }: KnownRow, { size }: KnownRow): AskedRow {
  const figure = (value: { text: string } | null): { text: string; unit: Unit } | null => {
    if (value === null) return null;
    const at = value.text.lastIndexOf(" ");
    return { text: value.text.slice(0, at), unit: value.text.slice(at + 1) as Unit };
  };
  return {
    ref: row.ref,
    name: row.name,
    size,
    ends: ends.map(({ hold, faces, cap, across }) => ({ hold, faces, cap: figure(cap), across: figure(across) })),
  };
}
