// What is said of unbalance.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

export const balance: CalculationWords = {
  title: "Balance of the shaft",
  inputs: {
    mass: { label: "Mass of the shaft", why: "Between 10 g and 2 t." },
    speed: { label: "Greatest speed", why: "Above 20,000 rev/min no such shaft runs." },
    grade: { label: "Balance grade G", why: "Grades run from 0.4 to 4000." },
    unbalance: {
      label: "Unbalance that was measured",
      why: "Look at its unit: g·mm, g·cm and oz·in differ by hundreds.",
    },
  },
  parts: { permissible: "What is permitted", measured: "What the measured unbalance amounts to" },
  cautions: turning,
  unchecked: [
    "Whether the shaft stays rigid: near its critical speed no balancing of this kind holds.",
    "Runout, worn joints and loose splines, which no weight makes good.",
    "How the shop’s machine holds the shaft, and what its own error is.",
  ],
};

export const say = {
  unbalance: "Permissible unbalance, whole shaft",
  plane: "In each of two planes, ends alike",
  eccentricity: "Mass centre off the axis, at most",
  grade: (grade: number, says: string): string => `Grade ${grade}, ${says}`,
  slow: (speed: string): string => `Below ${speed} balancing is normally not needed, as one maker prints it.`,
  amounts: "Grade it amounts to",
  gradeTitle: "Balance grade",
};
