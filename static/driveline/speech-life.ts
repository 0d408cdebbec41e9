// What is said of the life of a joint's needles.
import { list } from "../matcher/speech-words";
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const unit = "Look whether the unit beside it is the one it was read in.";

export const life: CalculationWords = {
  title: "Life of the joint’s needles",
  inputs: {
    torque: { label: "Torque it carries", why: unit },
    angle: { label: "Angle of the joint", why: "At no angle the needles do not roll, and the form has no answer." },
    speed: { label: "Speed", why: "Above 20,000 rev/min no such shaft runs." },
    shock: { label: "Factor of shock", why: "1 is without shock; more than 10 is a hammer." },
    rating: { label: "Rating: torque for 5000 h at 3° and 100 rev/min", why: unit },
    capacity: { label: "Capacity: of the bearings, times their arm", why: unit },
    life: { label: "Life that is wanted", why: "Between an hour and a million." },
  },
  parts: {
    rated: "By a rating at 5000 h, 3° and 100 rev/min",
    capacity: "By the capacity of the bearings",
    wanted: "What a joint must be rated for",
  },
  cautions: turning,
  unchecked: [
    "Grease, dirt, water and seals, which end most joints before their needles tire.",
    "Yokes, splines, and whether the joint holds the torque at all.",
    "Torque, angle and speed that change: the figures are for one steady state.",
  ],
};

export const say = {
  life: "Life nine joints of ten reach (B10)",
  mean: "Mean life, about",
  cubic: "Life with the third power of torque",
  halfAngle: "Half the angle: life times",
  halfTorque: "Half the torque: life times",
  halfSpeed: "Half the speed: life times",
  counts: (angle: string): string => `Angles below ${angle} count as ${angle} in this form.`,
  ratedBasis: "Only a rating stated for 5000 h at 3° and 100 rev/min may stand in this form.",
  shocks: (list_: readonly string[]): string => `Factors of shock in print: ${list(list_)}.`,
  capacityBasis: "This form is recalled, not published: confirm it with the joint’s maker before going by it.",
  ratingFor: "Rating it must have (5000 h, 3°, 100 rev/min)",
  capacityFor: "Capacity it must have, in the other form",
  notComparable:
    "The two figures are of different meaning: never hold one maker’s rating against the other form’s figure.",
};
