// Names of one size: no caliper parts them, so what else the chart knows of them is told.
import type { KnownRow } from "./prepared";
import * as say from "./speech-sizes";
import { weaker } from "./prepared";

/** How the rows of one size differ, apart from what can be measured; undefined for one row. */
export function twinsDiffer(rows: readonly KnownRow[]): string | undefined {
  const lead = rows[0];
  if (lead === undefined || rows.length < 2) return undefined;
  const holds = rows.map((r) => r.ends[0]?.hold ?? "unknown");
  const known = holds.find((h) => h !== "unknown") ?? "unknown";
  return say.twins({
    hold: known,
    rows: rows.map((r, i) => ({
      name: r.row.name,
      table: r.row.table,
      basis: r.basis,
      openHold: known !== "unknown" && holds[i] === "unknown",
      recalledHold: holds[i] !== "unknown" && r.ends.map((e) => e.holdBasis).reduce(weaker, "published") === "memory",
    })),
  });
}
