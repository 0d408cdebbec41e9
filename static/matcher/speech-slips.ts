// What is said of slips: what the readings would be, and what to look at again. A slip is
// only ever supposed: "if", never "because".
import type { Hold, Quantity, Unit } from "./types";
import type { Slip } from "./slips-kinds";
import { both, holdWords, list, sizeCalled } from "./speech-words";

/** What there is to say of one slip. */
export interface Supposed {
  slip: Slip;
  end: string; // " of the first end", where there are two
  of?: Quantity; // left out: of both
  mm?: number; // what that reading would be
  lead: Unit;
  asked: Hold;
  sizes: readonly { names: readonly string[]; held: Hold }[]; // likeliest first
  conversion: boolean;
}

interface Speech {
  if: (s: Supposed) => string;
  next: (s: Supposed) => string;
  guide: string; // page of the guide, under /measure/
}

const what = (s: Supposed): string => `the ${s.of ?? "readings"}${s.end}`;
const it = (s: Supposed): string => (s.end === "" ? "it" : s.end.slice(" of ".length));
const are = (s: Supposed): string => (s.of === undefined ? "are" : "is");
const wouldBe = (s: Supposed): string => (s.mm === undefined ? "" : ` and it is ${both(s.mm, s.lead)}`);
const unit = (one: string, other: string): Speech => ({
  if: (s) => `${what(s)} ${are(s)} in ${one}, not ${other}`,
  next: () => "Look which unit the tool shows, and enter the readings again with that unit.",
  guide: "units",
});
const line = (fraction: string): Speech => ({
  if: (s) => `${what(s)} was read ${fraction} in off${wouldBe(s)}`,
  next: (s) => `Read the ${s.of ?? ""}${s.end} again, looking straight down on the lines, or take a caliper.`,
  guide: "rule",
});
const over = (faces: string, next: string, guide: string): Speech => ({
  if: (s) => `${what(s)} was taken ${faces}`,
  next: () => next,
  guide,
});
const betweenGrooves = "Take the clips out, and measure between the inner groove faces.";
const overCaps = "Take the clips off, push the caps home, and measure from cap end to cap end.";

const speech: Record<Slip, Speech> = {
  "inches-for-millimetres": unit("inches", "millimetres"),
  "millimetres-for-inches": unit("millimetres", "inches"),
  "cap-across-exchanged": {
    if: (s) => `cap and across${s.end} are in each other's place`,
    next: () => "Look which is which, and enter them again: the cap is always the smaller one.",
    guide: "across",
  },
  "decimal-point": {
    if: (s) => `the decimal point of ${what(s)} is in the wrong place${wouldBe(s)}`,
    next: (s) => `Read ${what(s)} again, and write every digit, with its point.`,
    guide: "units",
  },
  "digits-exchanged": {
    if: (s) => `two digits of ${what(s)} are in each other's place${wouldBe(s)}`,
    next: (s) => `Read ${what(s)} again, digit by digit.`,
    guide: "good-reading",
  },
  sixteenth: line("1/16"),
  "thirty-second": line("1/32"),
  "groove-outer-faces": over("between the outer groove faces, or with the clips in", betweenGrooves, "groove-outer"),
  "clips-included": over("over the clips", overCaps, "over-caps"),
  "over-caps-of-inside-clip": over("over the caps", betweenGrooves, "groove-inner"),
  "over-plates": over("over the plates", "Measure under the plates, with the inside jaws.", "under-plates"),
  "over-ears": over("over the yoke ears", overCaps, "over-caps"),
  "centre-to-cap": {
    if: (s) => `${what(s)} was taken only to the centre of the cross`,
    next: () => "Measure from one cap to the other, across the whole joint.",
    guide: "cannot",
  },
  "radius-for-diameter": {
    if: (s) => `${what(s)} is only half the diameter`,
    next: (s) => `Measure ${what(s)} again, with the jaws across its middle.`,
    guide: "cap",
  },
  "wrong-hold": {
    if: (s) => {
      const held = [...new Set(s.sizes.map((size) => holdWords[size.held]))];
      return held.length === 1 ? `${it(s)} is held by ${held[0]}` : `${it(s)} is not held by ${holdWords[s.asked]}`;
    },
    next: () => "Look again how it is held.",
    guide: "what-holds-it",
  },
};

export const says = (s: Supposed): string => `If ${speech[s.slip].if(s)}, this is ${sized(s)}.`;
export const head = (slip: { look: string; says: string }): string =>
  `${slip.look === "hold" ? "Look" : "Measure"} again. ${slip.says}`;
export const next = (s: Supposed): string => speech[s.slip].next(s);
export const guide = (slip: Slip): string => `/measure/${speech[slip].guide}/`;

// "the 1350 size, also called 30.2x92", or all the sizes where the slip leaves more than one.
function sized(s: Supposed): string {
  const [first, ...more] = s.sizes;
  if (more.length > 0) {
    const held = (h: Hold): string => (s.slip === "wrong-hold" ? ` (${holdWords[h]})` : "");
    return `one of these sizes: ${list(
      s.sizes.map((size) => `${size.names[0] ?? ""}${held(size.held)}`),
      "or",
    )}`;
  }
  return sizeCalled(first?.names ?? [], s.conversion);
}

/** Readings that agree with a size, and would with another had they been taken between the wrong faces. */
export function otherByFaces(s: Supposed): string {
  return `Check the faces: if ${speech[s.slip].if(s)}, it is ${list(
    s.sizes.slice(0, 4).map((size) => size.names[0] ?? ""),
    "or",
  )} instead.`;
}
