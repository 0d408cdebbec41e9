// What the page on clips and fit explains.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "Whether a joint floats or binds between its clips, which clips would do, and how a cap sits in its bore.",
  purpose: [
    "What is left between yoke, joint and two clips is the float. Below zero the joint binds; too much and it knocks. Makers allow from none to a quarter of a millimetre, and do not agree.",
    "The readings are never exact, so the result says how sure it is. Clips of a set are chosen so that they do not bind, equal on both sides.",
  ],
  groups: { across: "Across the yoke", fit: "Cap and bore" },
  hints: {
    hold: "Outside the ears: rings in grooves of the bores. Inside: C-clips in grooves of the caps.",
    yoke: "Outside clips: between the inner faces of the two grooves. Inside clips: from ear to ear over the machined inner faces.",
    joint: "Outside clips: over the caps, pushed home. Inside clips: between the inner groove faces of the caps.",
    within: "A caliper is good to about 0.03 mm, a reading inside a groove to 0.05.",
    clip: "With a micrometer, flat, at three places.",
    other: "Only if it differs.",
    clipwithin: "A micrometer is good to 0.01 mm.",
    float: "What you want to be left.",
    cap: "Wiped clean, at two places.",
    bore1: "Twice, a quarter turn apart: take the smaller.",
    bore2: "The ears may differ.",
    capwithin: "A caliper inside a bore is good to about 0.04 mm, an inside micrometer to 0.01.",
    size: "What the cap should be, such as 27 mm.",
    class: "h6 is the closer one.",
  },
  example:
    "An invented repair with figures of an owner’s case: 41.35 mm between the ears, a joint listed with 37.617 mm, clips of 1.5 mm; and a cap of 27.00 mm before bores of 26.92 and 26.80 mm.",
};
