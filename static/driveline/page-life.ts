// What the page on life explains.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "How many hours the needles last at a torque, angle and speed, and what changes that most.",
  purpose: [
    "The needles of a joint rock to and fro twice a turn. How soon they tire goes with the angle, the speed and, above all, the torque: half the angle doubles the life, half the torque makes it ten times as long.",
    "Makers rate joints in two ways that must not be mixed. Look in the catalogue which of them the figure is, and put it into its own field.",
  ],
  groups: { work: "What the joint does", joint: "What it is rated for" },
  hints: {
    torque: "Through most of its work, not the peak.",
    angle: "As it runs.",
    speed: "Through most of its work.",
    shock: "Electric motor 1, petrol engine 1.25, diesel 1.3, as one catalogue prints them.",
    rating: "Only if the maker states it so.",
    capacity: "Only if the maker states it so.",
    life: "Works backwards: what must the catalogue say?",
  },
  example: "An invented rail inspection trolley, with a rating made up for it.",
};
