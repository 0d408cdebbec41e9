// The true angle of a joint whose two sides differ in side view and in plan.
import type { Attitude } from "./inclination";
import type { Ground, Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface CompoundInput {
  driving: Attitude;
  driven: Attitude;
}

/** One of the shop's forms, with how far it is off here. */
export interface ShopAngle extends Ground {
  id: "root-sum" | "arctan" | "cosines";
  angle: number; // rad
  off: number; // angle minus the exact one, rad
}

export interface Compound {
  angle: number; // between the two direction vectors, exact, rad
  side: number; // driven minus driving in side view, rad
  plan: number; // driven minus driving in plan, rad
  shop: ShopAngle[]; // by the forms in print, from side and plan alone
}

export function compoundAngle(input: CompoundInput): Outcome<Compound> {
  return unwritten(input);
}
