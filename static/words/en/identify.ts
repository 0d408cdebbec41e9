// Every word the form says by itself. What the verdict says is the core's own text, so that the page and the
// command speak alike; labels in the markup are in templates/words/en/identify.yaml.
import type { Measurand, SlipFound } from "../../matcher/types";
import type { Target } from "../../parts/identify/field";
import type { State } from "../../parts/identify/state";
import { endTitle, quantityWords } from "./terms";

const next: Record<"joint" | "yoke", Record<Measurand, string>> = {
  joint: { cap: "Next cap reading", across: "Next reading across", clip: "Next clip reading" },
  yoke: { cap: "Next bore reading", across: "Next reading across the yoke", clip: "Next clip reading" },
};

export const words = {
  partMissing:
    "A part of this page did not load: nobody has looked for known slips of measuring, and the picture is missing. It is tried again with the next reading.",
  enquiry: "Write an enquiry slip",
  waiting: "Waiting for readings",
  start: "Choose what you see, then put in a cap diameter and the distance across.",
  startMore: "Two or three readings of each tell more than one: a slip stands out.",
  addReading: (state: State, { end, quantity }: Target) =>
    `${next[state.ends[end]?.taken ?? "joint"][quantity]}${state.ends.length > 1 ? `, ${endTitle(end).toLowerCase()}` : ""}`,
  onwardHold: "Next: look how it is held",
  holdFirst: "Choose above how it is held, to see what to measure between.",
  noDrawing: "The drawing could not be fetched; the words below say the same.",
  again: (quantities: string[]) =>
    `Measure the ${quantities.join(" and the ")} again. The old readings can be put back.`,
  lookAtHold: "Look at it again, and choose the picture that is like it.",
  takenOut: "Taken out, to be measured again:",
  putBack: "Put back",
  areBack: (readings: string) => `${readings}: back again.`,
  remove: (reading: string) => `remove ${reading}`,
  added: (reading: string) => `${reading} added.`,
  removed: (reading: string) => `${reading} removed.`,
  setAside: "set aside",
  misread: "look again",
  because: "Because",
  compare: "Your readings beside the chart",
  measure: "Measure",
  yours: "Yours",
  chart: "Chart",
  difference: "Off by",
  within: "Agrees within",
  tooFar: "too far",
  sizeLeft: "The size",
  sizesLeft: "Sizes left",
  sizesLeftAbout: "These readings cannot separate them.",
  share: (p: number) =>
    `${p >= 0.995 ? "over 99" : p < 0.01 ? "under 1" : Math.round(p * 100)} in 100 by these readings`,
  sameNames: "A caliper cannot tell these names apart; they are one size.",
  near: "Nearest rows, none of them matching",
  nearMatched: "Nearest other rows, not matching",
  doesNotMatch: "Does not match.",
  sameFigures: "Same figures, other hold",
  sameFiguresAbout: "Cap and across agree, the hold does not. These do not interchange.",
  conversions: "Conversion joints with this end",
  ends: "Each end by itself",
  readings: "What became of the readings",
  used: "used",
  slips: "A slip to look for",
  slipsAbout: "Nothing was put right by itself. Look at it, then measure again.",
  startAgain: (look: SlipFound["look"]) =>
    look === "hold"
      ? "Choose the hold again"
      : look === "unit"
        ? "Take the readings out and choose the unit"
        : `Take the ${quantityWords[look]} readings out and measure again`,
  showHow: "Show me how",
  ways: "Ways to join these ends",
  waysAbout: "No listed joint joins them as they are. Those that keep most come first.",
  wayJoint: "Joint",
  wayTo: (end: number) => `${endTitle(end)}: a yoke for one of these`,
  next: "What to do next",
  cautionTitle: "Before you order:",
  caution:
    "compare the new joint with the old one, caps, hold and across, before anything is pressed. What was checked is the size alone: not wear, torque, angle or speed.",
  cautionMemory: "The chart has this row from memory, without a source. Have the size confirmed before ordering.",
  cautionFit:
    "Wear eye protection when caps are pressed or driven and stay out of line with the press. Vehicle level, wheels chocked, on rated stands; mark the phase before taking anything apart. The maker's manual and a driveline shop have the last word.",
  toDetails: "see why",
  copied: "The address of these readings is on the clipboard.",
  copyByHand: "Copying is not allowed here. Select the address below and copy it.",
  shared: "Sent.",
  shareTitle: "Readings of a joint",
  restored: "Readings taken from the address.",
  otherChart: (then: string, now: string) =>
    `The address was made with chart ${then}; this page has chart ${now}. The verdict below is by the chart of this page.`,
  badAddress: "Part of the address could not be read:",
  startedOver: "All readings removed.",
  noChart: "The chart could not be fetched, so nothing can be identified here yet. The method by hand is below.",
  noCore: "The part of this page that compares readings did not arrive.",
  badChart: "The chart has a format this page does not know. Reload the page.",
  retry: "Try again",
} as const;
