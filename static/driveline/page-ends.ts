// What the page on joining two ends explains.
import type { PageWords } from "./description";

const cap = "Outside diameter of a cap; on a bare yoke the bore. Several readings with ; between them.";
const across = "Between the faces that go with the hold; the guide shows them. Several readings with ; between them.";

export const page: PageWords = {
  about: "Which joint fits two ends of different size, and where none does, which yoke to change so that one fits.",
  purpose: [
    "A conversion joint has a different size at each pair of caps. Where the chart has one that fits both ends, nothing else has to change.",
    "Where it has none, one yoke stays and the other is changed to one that takes a joint the chart has. The ways are in order: those that leave most in place come first.",
  ],
  groups: { one: "First end", two: "Second end", bench: "How it was measured" },
  hints: {
    hold1: "What keeps the caps in.",
    taken1: "A joint that is out, or the yoke it sat in.",
    cap1: cap,
    across1: across,
    hold2: "What keeps the caps in.",
    taken2: "A joint that is out, or the yoke it sat in.",
    cap2: cap,
    across2: across,
    unit: "A reading with its unit keeps it.",
    tool: "What an instrument can claim decides how close is close enough.",
    condition: "Wear and rust widen what a reading may be off.",
  },
  example: "An invented rail inspection trolley: the gearbox flange has one size, the tractor axle another.",
};
