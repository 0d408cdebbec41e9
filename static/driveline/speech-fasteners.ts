// What is said of tightening bolts.
import { capital } from "../matcher/speech-words";
import type { CalculationWords } from "./description";
import { fitting } from "./speech-cautions";

export const fasteners: CalculationWords = {
  title: "How tight",
  inputs: {
    thread: { label: "Thread" },
    grade: {
      label: "Grade of the bolt",
      options: {
        "SAE-8": "SAE grade 8, six marks",
        "SAE-5": "SAE grade 5, three marks",
        "8.8": "8.8",
        "10.9": "10.9",
        "12.9": "12.9",
      },
    },
    condition: { label: "Thread and seat", options: { dry: "clean and dry", oiled: "oiled" } },
    series: { label: "Series of the joint" },
  },
  parts: {
    published: "Published for this thread",
    formula: "By the general formula",
    reuse: "What may be used again",
  },
  cautions: fitting,
  unchecked: [
    "Coatings, thread-locking compound and washers: each changes how much of the torque becomes pull.",
    "Whether the nut or the threaded hole holds as much as the bolt.",
    "The maker’s own torque, which overrides all of this.",
  ],
};

export const say = {
  row: (item: string, series: string): string => capital(series === "" ? item : `${item}, ${series}`),
  span: (least: string, most: string): string => `${least} to ${most}`,
  noRow: "The chart has no published torque for this thread. Ask the maker before going by the formula.",
  first: "These come before the formula; the figure of the part’s or vehicle’s own maker comes before both.",
  torque: "Torque by the formula",
  preload: "Pull in the bolt",
  area: "Stress area of the thread",
  proof: "Proof strength of the grade",
  factor: "Nut factor K",
  general: "A general figure for a general bolt. Oil alone takes a quarter off it.",
  rule: (says: string, ground: string): string => `${capital(says)} (${ground}).`,
};
