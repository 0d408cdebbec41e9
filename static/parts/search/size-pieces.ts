// A size that is searched for in a chart in pieces.
import type { AnyChart } from "../../matcher/prepared";
import { forget, lookUp } from "../pieces/ask";
import { heldOf } from "../pieces/held";
import type { Query } from "../../matcher/types";
import { judge, sizesIn, type Judged } from "./size";

/** judgeInPieces is judge, or nothing while pieces are missing; `again` is called when they have come. */
export function judgeInPieces(question: string, chart: AnyChart, again: () => void): Judged[] {
  const { parseReading, encodeAddress } = CapspanCore;
  const held = heldOf(chart);
  const sizes = sizesIn(question, CapspanCore);
  if (sizes.length === 0) {
    forget();
    return [];
  }
  const core = { parseReading, encodeAddress, identify: (_: unknown, query: unknown) => held.identify(query as Query) };
  return lookUp(chart, question, () => judge(sizes, chart, core), again) ?? [];
}
