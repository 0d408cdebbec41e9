// "Keep it in a shaft record" on the page of a calculation. The page fetches this with the first result of the reader's
// own (static/parts/driveline/keeping.ts).
import type { Report } from "../../driveline/description";
import type * as frame from "../../driveline/frame";
import { keptOf, putCalculation } from "../../shaft/record";
import { keepPart, type KeepPart } from "./keep";

declare const CapspanDriveline: typeof frame; // left by driveline.js

/** `report` is the result in hand when the button is pressed. */
export function keepCalculation(root: ParentNode, report: () => Report, chart: string | undefined): KeepPart {
  return keepPart(root, (record) => putCalculation(record, keptOf(report(), CapspanDriveline.ground, chart)));
}
