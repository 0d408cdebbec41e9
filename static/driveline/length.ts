// How long the shaft must be, how much it slides, and where to cut the tube.
import { answer, check, conflict, refuse } from "./check";
import * as given from "./given-length";
import * as range from "./given-ranges";
import type { Ground, Outcome, Ranges } from "./types";

export interface ShaftLengthInput {
  between: number; // of the two faces the shaft is bolted to, or of joint centres with both 0 below, m
  drivingFace: number; // from the face of the driving end to its joint centre, m
  drivenFace: number; // from the face of the driven end to its joint centre, m
  drivingYoke: number; // from its joint centre to where the tube butts, m
  drivenYoke: number; // the same at the other end; of a slip: pushed home, m
  slip: number; // whole travel of the slip from home to the end of its spline, m; 0 without one
  out: number; // how far it is drawn out when standing, m
  root: number; // gap left for welding at each end of the tube, m
}

/** How far out of home a slip should stand, m: between the two, which are one where one figure is printed. */
export interface SlipStand extends Ground {
  id: string;
  says: string;
  least: number;
  most: number;
}

export interface ShaftLength {
  centres: number; // between joint centres as it stands, m
  closed: number; // with the slip home, m
  open: number; // with the slip drawn out all the way, m
  cut: number; // length to cut the tube to, m
  in: number; // travel left towards home, m
  outLeft: number; // travel left outwards, m
  stands: SlipStand[]; // where the slip should stand, by source
}

export const shaftLengthRanges: Ranges<ShaftLengthInput> = {
  between: range.length,
  drivingFace: range.yokeLength,
  drivenFace: range.yokeLength,
  drivingYoke: range.yokeLength,
  drivenYoke: range.yokeLength,
  slip: range.slip,
  out: range.slip,
  root: range.gap,
};

/** Joint centres, slip and cut length of a shaft as it stands. */
export function shaftLength(input: ShaftLengthInput): Outcome<ShaftLength> {
  const wrong = check(input, shaftLengthRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { slip, out } = input;
  const centres = input.between - input.drivingFace - input.drivenFace;
  const ends = input.drivingYoke + input.drivenYoke + out + 2 * input.root;
  if (out > slip) wrong.push(conflict("out", "slip", { bound: slip, unit: "m" }));
  if (centres <= 0)
    wrong.push(conflict("drivingFace", "between", { bound: input.between - input.drivenFace, unit: "m" }));
  else if (centres <= ends)
    wrong.push(conflict("drivingYoke", "between", { bound: centres - ends + input.drivingYoke, unit: "m" }));
  if (wrong.length > 0) return refuse(wrong);
  return answer(
    {
      centres,
      closed: centres - out,
      open: centres - out + slip,
      cut: centres - ends,
      in: out,
      outLeft: slip - out,
      stands: given.slipStands.map(({ share, least, most, ...rest }) => ({
        ...rest,
        least: share * slip + least,
        most: share * slip + most,
      })),
    },
    [given.centresFormula],
  );
}

export interface TravelInput {
  run: number; // level distance between joint centres, m
  offset: number; // sideways between them, m
  heights: number[]; // of the driven joint below the driving one, m, 2 to 20 positions, the first as it stands
  ahead: number[]; // how far the driven joint moves away from the driving one at each, m
}

export interface Travel {
  lengths: number[]; // between joint centres, m
  inclinations: number[]; // of the shaft to the level, rad
  shortest: number; // m
  longest: number; // m
  change: number; // longest - shortest, m
  inward: number; // from standing to shortest, m
  outward: number; // from standing to longest, m
}

export const lengthOverTravelRanges: Ranges<TravelInput> = {
  run: range.run,
  offset: range.rise,
  heights: { ...range.height, count: [2, 20] },
  ahead: { ...range.height, count: [2, 20] },
};

/** Length and inclination of a shaft over the travel of its axle. */
export function lengthOverTravel(input: TravelInput): Outcome<Travel> {
  const wrong = check(input, lengthOverTravelRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { run, offset, heights, ahead } = input;
  if (ahead.length !== heights.length) return refuse([conflict("ahead", "heights", { bound: heights.length })]);
  const level = ahead.map((x) => run + x);
  const back = level.findIndex((x) => x <= 0);
  if (back >= 0) return refuse([conflict(`ahead[${back}]`, "run", { bound: -run, unit: "m" })]);
  const lengths = heights.map((h, i) => Math.hypot(level[i] ?? run, offset, h));
  const shortest = Math.min(...lengths);
  const longest = Math.max(...lengths);
  const standing = lengths[0] ?? shortest;
  return answer(
    {
      lengths,
      inclinations: heights.map((h, i) => Math.asin(h / (lengths[i] ?? 1))),
      shortest,
      longest,
      change: longest - shortest,
      inward: standing - shortest,
      outward: longest - standing,
    },
    [given.travelFormula],
  );
}

export interface OverlapInput {
  tube: number; // length over which the two halves can overlap, m
  overlapWorking: number; // overlap in normal work, m
  overlapLeast: number; // at the longest position, m
  leftLeast: number; // from bottoming at the shortest position, m
}

/** A rule of one maker, as the length it asks for here. */
export interface OverlapRule extends Ground {
  id: string;
  says: string;
  of: "overlapWorking" | "overlapLeast" | "leftLeast" | "angle";
  least: number | null; // m (of an angle null)
  most: number | null; // m, or rad of an angle
}

export const overlapRulesRanges: Ranges<OverlapInput> = {
  tube: range.length,
  overlapWorking: range.slip,
  overlapLeast: range.slip,
  leftLeast: range.slip,
};

/** The overlap rules in print for sliding power take-off shafts. They contradict each other and each holds for
 *  its machine. */
export function overlapRules(
  input: OverlapInput,
): Outcome<{ share: number; shareLeast: number; rules: OverlapRule[] }> {
  const wrong = check(input, overlapRulesRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { tube, overlapWorking, overlapLeast } = input;
  if (overlapWorking > tube) wrong.push(conflict("overlapWorking", "tube", { bound: tube, unit: "m" }));
  if (overlapLeast > overlapWorking)
    wrong.push(conflict("overlapLeast", "overlapWorking", { bound: overlapWorking, unit: "m" }));
  if (wrong.length > 0) return refuse(wrong);
  const rules = given.overlaps.map(({ share, ...r }) => ({ ...r, least: share > 0 ? share * tube : r.least }));
  return answer({ share: overlapWorking / tube, shareLeast: overlapLeast / tube, rules }, [given.overlapFormula]);
}
