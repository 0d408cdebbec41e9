// What is said of the length of a shaft.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const long = "A drive shaft is 50 mm to 12 m long.";
const yoke = "A yoke is less than a metre long.";
const slide = "A slip has less than 2 m.";
const high = "Heights lie within 3 m; below the driving joint is positive.";

export const length: CalculationWords = {
  title: "Length of the shaft",
  inputs: {
    between: { label: "Between the two faces it is bolted to", why: long },
    drivingface: { label: "Driving end: face to joint centre", why: yoke },
    drivenface: { label: "Driven end: face to joint centre", why: yoke },
    drivingyoke: { label: "Driving end: joint centre to the tube’s end", why: yoke },
    drivenyoke: { label: "Driven end: joint centre to the tube’s end, slip home", why: yoke },
    slip: { label: "Whole travel of the slip", why: slide },
    out: { label: "Slip drawn out, as it stands", why: slide },
    root: { label: "Gap for welding, each end", why: "A gap of more than 20 mm is no weld." },
    run: { label: "Level distance between joint centres", why: "Between 10 mm and 20 m." },
    offset: { label: "Sideways between them", why: "Within 20 m." },
    stands: { label: "Driven joint below the driving one, standing", why: high },
    bump: { label: "The same, sprung all the way in", why: high },
    droop: { label: "The same, hanging free", why: high },
    bumpahead: { label: "Sprung in, the driven joint moves away by", why: high },
    droopahead: { label: "Hanging, the driven joint moves away by", why: high },
    tube: { label: "Sliding halves: longest overlap there can be", why: long },
    working: { label: "Overlap in normal work", why: slide },
    least: { label: "Overlap at the longest position", why: slide },
    left: { label: "Left before bottoming, at the shortest", why: slide },
  },
  parts: {
    cut: "Length, slip and cut of the tube",
    travel: "Over the travel of the suspension",
    overlap: "Overlap of sliding halves",
  },
  cautions: turning,
  unchecked: [
    "Whether the shaft clears frame, exhaust and floor through its travel.",
    "Engine and gearbox that rock on their mounts, which also takes slip.",
    "The critical speed of the tube at this length: there is a page for it.",
  ],
};

export const say = {
  centres: "Joint centre to joint centre, as it stands",
  cut: "Cut the tube to",
  closed: "Closed, slip home",
  open: "Drawn out all the way",
  inward: "Travel left inwards",
  outward: "Travel left outwards",
  slipOut: "Slip drawn out, as it stands",
  lengthAt: { stands: "Length, standing", bump: "Length, sprung in", droop: "Length, hanging" },
  slopeAt: { stands: "Slope of the shaft, standing", bump: "Slope, sprung in", droop: "Slope, hanging" },
  change: "Longest less shortest",
  shorter: "Shorter than standing by at most",
  longer: "Longer than standing by at most",
  ends: "The axle turns as it moves too, and the joint angles with it: measure them at both ends of the travel.",
  share: "Overlap in normal work, share of the tube",
  shareLeast: "Overlap at the longest, share of the tube",
  overlapOf: {
    overlapWorking: "Overlap in normal work",
    overlapLeast: "Overlap at the longest position",
    leftLeast: "Left before bottoming",
  },
  angleRule: (says: string, ground: string): string => `Angle of the joints of such a shaft: ${says} (${ground}).`,
};
