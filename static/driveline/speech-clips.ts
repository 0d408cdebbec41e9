// What is said of clips and of a cap in its bore.
import type { CalculationWords } from "./description";
import { fitting } from "./speech-cautions";

const span = "A joint is 10 to 400 mm across.";
const thick = "Clips are 0.5 to 6 mm thick.";
const within = "A reading that may be more than 5 mm off is none.";
const round = "Caps and bores are 5 to 120 mm.";

export const clips: CalculationWords = {
  title: "Clips and fit",
  inputs: {
    hold: { label: "Clips", options: { "outside-clip": "outside the ears", "inside-clip": "inside the ears" } },
    yoke: { label: "Yoke", why: span },
    joint: { label: "Joint", why: span },
    within: { label: "These readings are good to ±", why: within },
    clip: { label: "Clip thickness", why: thick },
    other: { label: "Thickness of the clip on the other side", why: thick },
    clipwithin: { label: "Clip readings are good to ±", why: within },
    float: { label: "Float that is wanted", why: "From none to 2 mm." },
    cap: { label: "Cap diameter", why: round },
    bore1: { label: "Bore of one ear", why: round },
    bore2: { label: "Bore of the other ear", why: round },
    capwithin: { label: "Cap and bore readings are good to ±", why: within },
    size: { label: "Nominal cap size, for ISO 286", why: "The printed limits reach from 18 to 80 mm." },
    class: { label: "Tolerance class of the cap", options: { h6: "h6", h7: "h7" } },
  },
  parts: {
    float: "Float between the clips",
    choose: "Clips that would do",
    bores: "Cap in its bore, as measured",
    iso: "Cap in its bore, by ISO 286",
  },
  cautions: fitting,
  unchecked: [
    "Dirt or burrs under a clip, bent ears, worn needles: each makes a float that is not in these figures.",
    "Whether the joint moves freely by hand after fitting, which only the hand tells.",
    "Whether the clip seats in its groove all round.",
  ],
};

export const say = {
  float: "Float",
  uncertainty: "It may be off by ±",
  binds: "Probability that it binds",
  offCentre: "Joint off the middle by",
  state: (state: "floats" | "binds" | "not-known", least: string, most: string): string =>
    state === "floats"
      ? `It floats: between ${least} and ${most} with what the readings may be off.`
      : state === "binds"
        ? `It binds: between ${least} and ${most} with what the readings may be off. A joint that is pressed in like that runs hot and tears its needles.`
        : `Whether it floats or binds is not known: between ${least} and ${most} with what the readings may be off. Measure again, with a finer tool.`,
  thickness: "Thickness of two equal clips for the wanted float",
  thicknessUncertainty: "It may be off by ±",
  fromSet: (least: string, most: string): string =>
    `Of the set from ${least} to ${most}, the thickest that does not bind`,
  leaves: (float: string): string => `leaves ${float}`,
  rangeOnly: "only a range is printed",
  noneOfSet: "none fits",
  bothSides: "The same thickness on both sides, or the joint sits off the middle and shakes. Clips are not used again.",
  clearance: (n: number): string => `Ear ${n}: bore less cap`,
  tight: (n: number): string => `Ear ${n}: probability that the cap is larger`,
  bore: (n: number): string => `ear ${n}`,
  clearanceTitle: "Bore less cap",
  press: "Below zero the cap has to be pressed in. A cap that drops in loosely will turn and wear the ear.",
  between: (least: string, most: string): string => `${least} to ${most}`,
  isoCap: "Cap",
  isoBore: "Bore, H7",
  isoClearance: "Bore less cap",
  isoUse: (ground: string): string => `That makers use this fit for caps: ${ground}.`,
};
