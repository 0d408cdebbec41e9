// A calculation that asks a chart in pieces has no result while some are missing.
import type { Calculation, Filled } from "../../driveline/description";
import type * as frame from "../../driveline/frame";
import { page } from "../pieces/ask";

declare const CapspanDriveline: typeof frame; // left by driveline.js

/** Whether all pieces are here that the filled inputs and the worked example touch; `again` is called when more are. */
export function isWhole(calculation: Calculation, filled: Filled, again: () => void): boolean {
  const { chart } = CapspanDriveline.provided;
  if (!chart) return true; // the calculation says that it is not here
  const run = (): boolean => {
    CapspanDriveline.reckonFilled(calculation, filled, []);
    CapspanDriveline.reckon(calculation.name, calculation.example);
    return true;
  };
  return page.lookUp(chart, JSON.stringify(filled), run, again) ?? false;
}
