// What the page on balance explains.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "How much unbalance a shaft of a mass and speed may have, by grade of ISO 21940-11.",
  purpose: [
    "An unbalance is a mass times how far it sits off the axis. How much a shaft may have falls with its speed and grows with its mass; the grade G is the speed at which its mass centre may circle, in mm/s.",
    "Balancing is work for a driveline shop. With this page you can say what to ask for, and read what the shop reports.",
  ],
  groups: { shaft: "The shaft" },
  hints: {
    mass: "Tube, yokes and joints together, on a scale.",
    speed: "The greatest it runs at.",
    grade: "40 for drive shafts, 16 with special demands.",
    unbalance: "From the shop’s report: which grade is that?",
  },
  example: "An invented rail inspection trolley with a shaft of 6 kg and a report that is made up.",
};
