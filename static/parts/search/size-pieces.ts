// A size that is searched for in a chart in pieces.
import type { AnyChart } from "../../matcher/prepared";
import { page } from "../pieces/ask";
import { heldOf } from "../pieces/held";
import type { Query } from "../../matcher/types";
import type { Entry, Found } from "./lookup";
import { judge, sizesIn, type Judged } from "./size";

/** judgeInPieces is judge, or nothing while pieces are missing; `again` is called when they have come. */
export function judgeInPieces(question: string, chart: AnyChart, again: () => void): Judged[] {
  const { parseReading, encodeAddress } = CapspanCore;
  const held = heldOf(chart);
  const sizes = sizesIn(question, CapspanCore);
  if (sizes.length === 0) {
    page.forget();
    return [];
  }
  const core = { parseReading, encodeAddress, identify: (_: unknown, query: unknown) => held.identify(query as Query) };
  return page.lookUp(chart, question, () => judge(sizes, chart, core), again) ?? [];
}

/** First the rows the verdict leaves, at their places, then what the words found. */
export function rowsInPieces(judged: readonly Judged[], found: Found): Entry[] {
  const rows = judged.flatMap(({ answer }) =>
    answer.sizes.flatMap((size) =>
      size.rows.flatMap((ref): Entry[] => {
        const address = answer.at?.[ref];
        const title = ref.slice(ref.indexOf("/") + 1);
        return address === undefined ? [] : [{ kind: "row", address, title, names: "", words: "" }];
      }),
    ),
  );
  const listed = new Set(rows.map((e) => e.address));
  return [...rows, ...found.entries.filter((e) => !listed.has(e.address))];
}
