// What the page on angles explains.
import type { PageWords } from "./description";

const inclinometer =
  "Lay an inclinometer or a level along it, or measure how far it falls over a length. Falling towards the driven end is positive, rising is negative.";
const offset =
  "Seen from above, running to the right towards the driven end is positive: the sideways difference over the length. Leave it at 0 when all lies in one plane.";
const base =
  "How far apart its two mounts are, or how long the spring seat is. With it the height of the shim is worked out.";

export const page: PageWords = {
  about: "What each joint runs at, what unevenness is left at the driven end, and which end to tilt by how much.",
  purpose: [
    "A joint at an angle turns its far side faster and slower twice a turn. A second joint takes that out again, if its angle is as large, its yokes stand right and both lie in one plane. What is left is given as the one joint that would be as uneven: the residual angle.",
    "Measure with the vehicle at the height it works at, on level ground: the angle at each end and of the shaft itself.",
  ],
  groups: {
    shaft: "The shaft, seen from the side",
    plan: "Seen from above",
    turn: "Yokes and load",
    change: "What to change",
  },
  hints: {
    joints: "Cross joints between the driving and the driven end. A double joint counts as two.",
    gearbox: `Gearbox or engine. ${inclinometer}`,
    shaft: "Along the tube, or the first tube of two.",
    rear: "Along the second tube, behind the hanger bearing.",
    axle: "The pinion of the axle, or whatever is driven.",
    speed: "The greatest it runs at. The page on speed works it out from engine or road speed.",
    read: "An inclinometer on the part reads its true slope. Drawings and offsets give the two views.",
    gearboxplan: offset,
    shaftplan: offset,
    rearplan: offset,
    axleplan: offset,
    turn: "0 when the yokes at both ends of the shaft stand in line; clockwise is positive, seen from the driving end.",
    turn2: "The same for the second shaft.",
    inertia: "Only if it is known: the uneven turning shakes it with a torque.",
    aim: "0 asks for the least that one change can reach.",
    gearboxbase: base,
    axlebase: base,
    shaftlength: "Joint centre to hanger bearing: needed to raise or lower the hanger.",
    rearlength: "Hanger bearing to joint centre.",
  },
  example:
    "An invented rail inspection trolley: a car gearbox drives a tractor axle, the gearbox falls 3°, the shaft 7.5°, the axle’s pinion 2°.",
};
