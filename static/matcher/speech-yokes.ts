// What is said of readings from a bare yoke: how each hold is read there, how a bore
// becomes a cap, and what clips would do.
import type { Faces, Hold, Quantity, Unit } from "./types";
import type { MeasuredEnd } from "./agree";
import * as given from "./given-yokes";
import { both, list, ofEnd } from "./speech-words";

/** How a yoke of one hold is read. Words go behind "Measure". */
export interface Yoke {
  bore: string; // empty: no bore that tells the cap
  across: string | null; // null: no distance on the yoke gives the across
  clip: boolean; // two clips lie between the ears and the joint
  faces: Faces; // the joint's, which the distance then stands for
  instead: string; // what to do where bore or distance do not help; else empty
}

const bore = "the bores of both ears, twice each, a quarter turn apart";

export const yokes: Record<Hold, Yoke> = {
  "outside-clip": {
    bore,
    across: "from clip groove to clip groove in the ears, on the faces that look in to the cross",
    clip: true,
    faces: "over-caps",
    instead: "",
  },
  "inside-clip": {
    bore,
    across: "from ear to ear, over the flat inner faces",
    clip: true,
    faces: "groove-inner",
    instead: "",
  },
  injected: {
    bore,
    across: "from ear to ear, over the flat inner faces",
    clip: true,
    faces: "groove-inner",
    instead: "",
  },
  plate: { bore, across: "over the outsides of the ears", clip: false, faces: "under-plates", instead: "" },
  strap: { bore, across: "from tab to tab", clip: false, faces: "over-caps", instead: "" },
  staked: {
    bore,
    across: null,
    clip: false,
    faces: "over-caps",
    instead:
      "A staked yoke has no face that gives the across. Give its bores alone, and measure the old joint over the caps.",
  },
  wing: {
    bore: "",
    across: null,
    clip: false,
    faces: "wing-outer",
    instead:
      "A yoke for bolt-on wings has no bore that tells the size. Measure its keyway and the pitch of its bolt holes, and compare them with the wing figures by hand.",
  },
  unknown: {
    bore,
    across: null,
    clip: false,
    faces: "unknown",
    instead:
      "What to measure on a yoke goes by its hold. Look how it holds the caps and choose that, or give its bores alone.",
  },
};

/** yokeOf says how a yoke of that hold is read. */
export function yokeOf(hold: Hold): Yoke {
  return { ...yokes[hold] };
}

/** Names of the lines a yoke adds to a budget of uncertainty. */
export const sources = {
  inside: "reading inside a hole",
  bore: "the fit of a cap in its bore",
  play: "the play between joint and yoke",
  clipUnknown: "clips that were not measured",
  clip: "the clips as measured",
};

// ---- what cannot be used

export const clipOfJoint = (): string =>
  "The thickness of a clip helps with a bare yoke only. On a joint, measure between the faces that go with its hold, and leave the clip out.";
export const noClip = (): string => "This hold has no clips between yoke and joint. Leave the clip out.";
export const clipsDiffer = (apart: number, lead: Unit): string =>
  `The clip readings are ${both(apart, lead)} apart. Both clips of a pair are of one thickness: clean them and measure again.`;
export const boresDiffer = (apart: number, lead: Unit): string =>
  `The bore readings are ${both(apart, lead)} apart. Clean both bores and take off burrs; if they stay apart, one ear is worn or nipped, and its yoke is doubtful.`;
export const distancesDiffer = (apart: number, lead: Unit): string =>
  `The readings between the ears are ${both(apart, lead)} apart. Clean the faces and measure near the root and near the tip of the ears; if they stay apart, the ears are bent.`;
export const farBore = (text: string): string =>
  `The bore reading ${text} is far off. If it is right, one ear is worn or nipped: measure both ears again.`;
export const farDistance = (text: string): string =>
  `The reading ${text} between the ears is far off. If it is right, the ears are bent: measure near the root and near the tip.`;

// ---- how a value came about

/** What became of repeated readings on a yoke; lengths in mm. */
export interface Reckoned {
  readings: number;
  mean: number; // as read
  value: number; // the joint's
  uncertainty: number;
  largest: string; // the largest line of the budget
  apart?: number; // of readings that spread more than tool and hand explain
  lead: Unit;
}

export function fromBore(r: Reckoned): string {
  const spread =
    r.apart === undefined
      ? ""
      : ` The bores read ${both(r.apart, r.lead)} apart: look for a worn or a nipped ear, and go by the smaller.`;
  return `${counted(r.readings)} of the bore, ${both(r.mean, r.lead)}. Its cap is then near ${both(r.value, r.lead)}, good to about ±${both(r.uncertainty, r.lead)}; most of that is ${r.largest}.${spread}`;
}

/** What lies between yoke and joint. */
export type Between = { clips: "none" | "unknown" } | { clips: "measured"; clip: number };

export function fromDistance(r: Reckoned, between: Between): string {
  const spread =
    r.apart === undefined
      ? ""
      : ` The readings are ${both(r.apart, r.lead)} apart: look for burrs, and check the ears for a bend.`;
  return `${counted(r.readings)} between the ears, ${both(r.mean, r.lead)}. Less ${taken(between, r.lead)}, the joint is near ${both(r.value, r.lead)} across, good to about ±${both(r.uncertainty, r.lead)}; most of that is ${r.largest}.${spread}`;
}

function taken(between: Between, lead: Unit): string {
  switch (between.clips) {
    case "none":
      return "a little play";
    case "unknown":
      return `two clips, which were not measured and may be ${given.thinnestClip} to ${given.thickestClip} mm each, and a little play`;
    case "measured":
      return `two clips of ${both(between.clip, lead)} and a little play`;
  }
}

export function ofClip(readings: number, uncertainty: number, lead: Unit): string {
  return `${counted(readings)} of one clip, good to about ±${both(uncertainty, lead)}. Both clips are taken to be alike.`;
}

export const setAside = (texts: readonly string[]): string =>
  texts.length === 0 ? "" : `Set aside: ${list(texts)}, too far from the others. `;

function counted(n: number): string {
  return n === 1 ? "One reading" : `Mean of ${n} readings`;
}

// ---- beside a size

export const boreWide = (by: number, lead: Unit, n: number | undefined): string =>
  `The bore${ofEnd(n)} is ${both(by, lead)} wider than that cap: is it worn?`;
export const boreNarrow = (cap: string, reading: number, by: number, lead: Unit, n: number | undefined): string =>
  `A cap of ${cap} would not go into a bore${ofEnd(n)} that reads ${both(reading, lead)}, ${both(by, lead)} smaller: look for rust, a burr or a nipped ear.`;

/** What the measured clips would do with a joint of that size, and which clips would fit. */
export function withClips(
  clip: number,
  float: number,
  fitting: number | undefined,
  lead: Unit,
  n: number | undefined,
): string {
  const does =
    float > 0 ? `leave it ${both(float, lead)} of play` : `bind: they are ${both(-float, lead)} too thick together`;
  const fit = fitting === undefined ? "" : ` Clips of ${both(fitting, lead)} each would fit.`;
  return `Your clips of ${both(clip, lead)}${ofEnd(n)} would ${does}.${fit}`;
}

/** Which clips a size would need. */
export function clipsFor(fitting: number, lead: Unit, n: number | undefined): string {
  const odd =
    fitting < given.thinnestClip
      ? ", thinner than any of the ranges makers print"
      : fitting > given.thickestClip
        ? ", thicker than any of the ranges makers print"
        : "";
  return `It would need clips of about ${both(fitting, lead)} each${ofEnd(n)}${odd}.`;
}

// ---- verdict

export const service = (): string =>
  "A yoke made for injected plastic is compared with joints for inside clips: the joint sold to replace one usually has those.";
export const clipsNotMeasured = (): string => "the clips were not measured, and they decide the across";
export const clipsLeaveOpen = (): string =>
  "Two clips that were not measured leave too much open to part sizes this close.";
export const serviceOnly = (): string => "which joint replaces injected plastic has to be asked";

/** What was compared of yokes, and what was not. */
export function checkedYokes(compared: string, hold: string, asked: readonly MeasuredEnd[]): string {
  const other = asked.length === 1 ? "the other yoke, " : "";
  const joint = asked.every((e) => e.yoke !== undefined) ? "" : "wear inside the caps, ";
  return `Compared: ${compared}${hold}. Not compared: ${other}${joint}whether ears are bent and bores in line.`;
}

// ---- next

/** What the two measures are called on a yoke. */
export const readOnYoke: Record<Quantity, string> = { cap: "bore", across: "distance between the ears" };

/** What to measure on a yoke for what is missing. */
export function onYoke(hold: Hold, missing: Quantity): string {
  const { bore, across, clip, instead } = yokes[hold];
  const what = missing === "cap" ? bore : (across ?? "");
  if (what === "") return instead;
  return `Measure ${what}${missing === "across" && clip ? ", and one clip" : ""}.`;
}

export const measureClip = (
  options: readonly { name: string; clip: number }[],
  lead: Unit,
  n: number | undefined,
): string =>
  `Measure how thick one clip${ofEnd(n)} is. ${list(
    options.slice(0, 6).map((o) => `${o.name}: about ${both(o.clip, lead)}`),
    "or",
  )}.`;
export const measureBore = (options: readonly Printed[], n: number | undefined): string =>
  `Measure the bores${ofEnd(n)} again, clean and with the greatest of several readings. ${caps(options, "has caps of")}.`;
export const measureDistance = (
  across: string,
  options: readonly Printed[],
  clips: boolean,
  n: number | undefined,
): string =>
  `Measure the yoke${ofEnd(n)} ${across}${clips ? ", and how thick one clip is" : ""}. ${clips ? "Less two clips, " : ""}${caps(options, "is")}.`;

interface Printed {
  name: string;
  text: string; // the chart's own digits and unit, and the other unit
}

function caps(options: readonly Printed[], is: string): string {
  const more = options.length > 6 ? `; and ${options.length - 6} more` : "";
  return `${list(
    options.slice(0, 6).map((o) => `${o.name} ${is} ${o.text}`),
    "or",
  )}${more}`;
}

export const measureAnyClip = (): string => "Measure how thick one clip is, and give that too.";
export const askService = (): string => "Ask whether that joint is the one sold to replace injected plastic.";
export const tryByHand = (): string =>
  "Before you press it in, try a new cap by hand at both bores, and check that a bar through both turns: a bent ear shows in no figure here.";
export const otherYoke = (): string => "Measure the other yoke too: some conversion joints have one end like this.";
export const cleanYoke = (): string =>
  "Clean the bores and the faces of the ears, and take each reading again, two or three times.";
export const workedOut = (quantities: readonly Quantity[]): string =>
  `The ${list(quantities)} of the joint that goes in ${quantities.length > 1 ? "are" : "is"} worked out from the yoke.`;
export const checkYoke = (across: string): string => `Check that you measured ${across}.`;
