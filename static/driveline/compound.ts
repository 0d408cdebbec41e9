// The true angle of a joint whose two sides differ in side view and in plan.
import { answer, check, refuse } from "./check";
import { compoundFormula } from "./given-angles";
import { derived, published } from "./ground";
import { type Attitude, directionRanges } from "./inclination";
import type { Ground, Outcome, Ranges } from "./types";
import { angleBetween, directionOf } from "./vector";

export interface CompoundInput {
  driving: Attitude;
  driven: Attitude;
}

/** One of the shop's forms, with how far it is off here. */
export interface ShopAngle extends Ground {
  id: "root-sum" | "arctan" | "cosines";
  angle: number; // rad
  off: number; // angle minus the exact one, rad
  says: string;
}

export interface Compound {
  angle: number; // between the two direction vectors, exact, rad
  side: number; // driven minus driving in side view, rad
  plan: number; // driven minus driving in plan, rad
  shop: ShopAngle[]; // by the forms in print, from side and plan alone
}

/** Both attitudes are looked at by directionRanges. */
export const compoundAngleRanges: Ranges<CompoundInput> = { driving: null, driven: null };

/** The true angle between two shafts, and what the shop's forms make of it. */
export function compoundAngle(input: CompoundInput): Outcome<Compound> {
  const wrong = [
    ...check(input?.driving, directionRanges, "driving."),
    ...check(input?.driven, directionRanges, "driven."),
  ];
  if (wrong.length > 0) return refuse(wrong);
  const { driving, driven } = input;
  const angle = angleBetween(directionOf(driving), directionOf(driven));
  const side = driven.side - driving.side;
  const plan = driven.plan - driving.plan;
  return answer({ angle, side, plan, shop: shopAngles(side, plan).map((s) => ({ ...s, off: s.angle - angle })) }, [
    compoundFormula,
  ]);
}

/** The forms in use, from the differences in side view and plan (rad). */
export function shopAngles(side: number, plan: number): Omit<ShopAngle, "off">[] {
  return [
    {
      id: "root-sum",
      angle: Math.hypot(side, plan),
      says: "sqrt(T^2 + S^2)",
      ...published("dana-j3311"),
    },
    {
      id: "arctan",
      // Past a right angle the projections of a difference say nothing; the nearest end does.
      angle: Math.atan(Math.hypot(Math.tan(within(side)), Math.tan(within(plan)))),
      says: "arctan sqrt(tan^2 T + tan^2 S); exact from one shaft's axis",
      ...published("elbe"),
    },
    {
      id: "cosines",
      angle: Math.acos(Math.cos(side) * Math.cos(plan)),
      says: "arccos(cos T cos S); exact with one shaft level",
      ...derived,
    },
  ];
}

function within(angle: number): number {
  const end = Math.PI / 2 - 1e-9;
  return Math.max(-end, Math.min(end, angle));
}
