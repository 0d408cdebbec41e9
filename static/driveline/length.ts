// How long the shaft must be, how much it slides, and where to cut the tube.
import type { Ground, Limit, Outcome } from "./types";
import { unwritten } from "./unwritten";

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

export interface ShaftLength {
  centres: number; // between joint centres as it stands, m
  closed: number; // with the slip home, m
  open: number; // with the slip drawn out all the way, m
  cut: number; // length to cut the tube to, m
  in: number; // travel left towards home, m
  outLeft: number; // travel left outwards, m
  limits: Limit[]; // where the slip should stand, as a length drawn out of home, by source
}

export function shaftLength(input: ShaftLengthInput): Outcome<ShaftLength> {
  return unwritten(input);
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

export function lengthOverTravel(input: TravelInput): Outcome<Travel> {
  return unwritten(input);
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

/** The overlap rules in print for sliding power take-off shafts. They contradict each other and each holds for
 *  its machine. */
export function overlapRules(
  input: OverlapInput,
): Outcome<{ share: number; shareLeast: number; rules: OverlapRule[] }> {
  return unwritten(input);
}
