// What is said of joining two ends; the core's own sentences stand beside.
import { holdWords } from "../matcher/speech-words";
import type { Hold, Verdict } from "../matcher/types";
import type { CalculationWords } from "./description";
import { fitting } from "./speech-cautions";

const holds = Object.fromEntries(
  (Object.keys(holdWords) as Hold[]).map((hold) => [hold, hold === "unknown" ? "not sure" : holdWords[hold]]),
);
const taken = { joint: "on a joint", yoke: "on a bare yoke" };

export const ends: CalculationWords = {
  title: "Joining two ends",
  inputs: {
    hold1: { label: "First end, held by", options: holds },
    taken1: { label: "First end, measured", options: taken },
    cap1: { label: "First end, cap (or bore)" },
    across1: { label: "First end, across" },
    hold2: { label: "Second end, held by", options: holds },
    taken2: { label: "Second end, measured", options: taken },
    cap2: { label: "Second end, cap (or bore)" },
    across2: { label: "Second end, across" },
    unit: { label: "Readings without a unit are in", options: { mm: "millimetres", in: "inches" } },
    tool: {
      label: "Read with",
      options: {
        "digital-caliper": "digital caliper",
        "dial-caliper": "dial caliper",
        "vernier-caliper": "vernier caliper, 0.02 mm",
        "vernier-caliper-coarse": "vernier caliper, 0.05 mm",
        micrometer: "micrometer",
        "steel-rule": "steel rule",
        tape: "tape",
      },
    },
    condition: { label: "Condition", options: { used: "used", new: "new", worn: "worn", rusted: "rusted" } },
  },
  parts: {
    each: "The two ends",
    joints: "Joints that fit both",
    chains: "One joint and one changed yoke",
  },
  cautions: fitting,
  unchecked: [
    "Whether the joint carries the torque, at that angle and speed: there are pages for each.",
    "Whether a yoke of that size is made for the flange, spline or tube it has to sit on.",
    "Faces other than those that go with the hold: the identify page has them all.",
  ],
};

export const say = {
  noChart: "The chart is not here yet. The result follows when it has come.",
  end: (n: number): string => (n === 0 ? "First end" : "Second end"),
  none: "in no row",
  joint: (verdict: Verdict): string => (verdict === "identified" ? "Joint that fits both" : "Joint that may fit both"),
  noJoint: "No joint of the chart has both ends.",
  way: (n: number): string => `Way ${n}`,
  noWay: (fits: boolean): string =>
    fits ? "None is needed: a joint fits both ends." : "None is known. Measure again, or both yokes have to change.",
  shop: "Those that leave most in place come first. Welding a yoke on and balancing the shaft are for a driveline shop.",
};
