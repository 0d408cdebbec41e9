// Every constant of the method with what it rests on, so that a reader can see which
// figures are published and which are our judgement. A bundle of its own, for the about
// page alone. A constant without its prose does not pass the type check.
import * as slipsGiven from "./given-slips";
import * as weighingGiven from "./given-weighing";
import * as measuringGiven from "./given-measuring";
import * as partsGiven from "./given-parts";
import * as yokesGiven from "./given-yokes";
import { measuring } from "./method-measuring";
import { parts } from "./method-parts";
import { slips } from "./method-slips";
import { weighing } from "./method-weighing";
import { yokes } from "./method-yokes";
import * as say from "./speech-method";

export type AssumptionBasis = "published" | "common-practice" | "memory" | "judgement";

/** What a constant rests on. */
export interface Prose {
  id: string;
  unit: "mm" | ""; // empty: a plain number
  basis: AssumptionBasis;
  source: string; // key in the source registry that the figure is, or is taken from; may be empty
}

export interface Assumption extends Prose {
  says: string; // what it is, in speech-method.ts
  value: number;
}

/** Every constant, in the order of its prose. */
export const assumptions: readonly Assumption[] = [
  ...join(measuringGiven, measuring, say.measuring),
  ...join(weighingGiven, weighing, say.weighing),
  ...join(slipsGiven, slips, say.slips),
  ...join(yokesGiven, yokes, say.yokes),
  ...join(partsGiven, parts, say.parts),
];

function join<K extends string>(
  given: Record<K, number>,
  prose: Record<K, Prose>,
  says: Record<K, string>,
): Assumption[] {
  return (Object.keys(prose) as K[]).map((name) => ({ ...prose[name], says: says[name], value: given[name] }));
}
