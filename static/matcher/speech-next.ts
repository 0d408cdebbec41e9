// What to do next, one step to a sentence.
import type { Unit } from "./types";
import type { MeasuredEnd, RowFit } from "./agree";
import type { Measured } from "./estimate";
import * as given from "./given";
import type { Doubt } from "./claim";
import { both, facesWords, holdWords, list } from "./speech-words";
import {
  askService,
  checkYoke,
  cleanYoke,
  onYoke,
  otherYoke,
  readOnYoke,
  tryByHand,
  yokes as yokesBy,
} from "./speech-yokes";

export const beforePressing = (yokes: number): string =>
  yokes > 0
    ? tryByHand()
    : "Before you press it in, lay the new joint beside the old one: caps, across and clips must look the same.";
export const takeBoth = (): string => "Measure both the cap and the across.";
export const firstReading = (): string => "Measure a cap, then the across, and enter each reading.";
export const putRight = (): string => "Change or remove what is marked, then look again.";
export const otherPair = (yokes: number): string =>
  yokes > 0 ? otherYoke() : "Measure the other pair of caps too: some conversion joints have one end like this.";
export const eachPair = (): string =>
  "Mark which caps are opposite each other, then enter each pair as an end of its own.";
export const lookAtHold = (): string => "Look how it is held, and choose that.";
export const cleanAndRepeat = (yokes: number): string =>
  yokes > 0 ? cleanYoke() : "Clean the caps, push them home, and take each reading again, two or three times.";
export function checkFaces(end: MeasuredEnd): string {
  const across = end.yoke === undefined ? null : yokesBy[end.yoke.hold].across;
  if (across !== null) return checkYoke(across);
  return end.hold === "unknown"
    ? "Look how it is held: that tells which faces to measure between."
    : `Check that you measured ${facesWords[end.faces]}.`;
}
export const measureOtherFaces = (faces: string): string => `Take the across again, ${faces}.`;
export const whichEnd = (): string =>
  "Ask for a joint that joins these two ends: each end is a known one, the pair is not in the chart.";

// What those readings are of that something is to be said of, each once. A yoke has other names for what was read.
function wordsOf(asked: readonly MeasuredEnd[], which: (m: Measured) => boolean): string[] {
  const measured = asked.flatMap((e) => [e.cap, e.across]).filter((m) => m !== undefined);
  const word = (m: Measured): string => (asked[m.end]?.yoke === undefined ? m.quantity : readOnYoke[m.quantity]);
  return [...new Set(measured.filter(which).map(word))];
}

/** One reading of something can hide a slip. */
export function secondReading(asked: readonly MeasuredEnd[]): string | undefined {
  const once = wordsOf(asked, (m) => m.readings === 1);
  return once.length === 0 ? undefined : `Take a second reading of the ${list(once)}: one reading can hide a slip.`;
}

/** Readings that spread more than the tool explains have a reason that can be found. */
export function steadier(asked: readonly MeasuredEnd[]): string | undefined {
  const wide = wordsOf(asked, (m) => m.wide);
  return wide.length === 0
    ? undefined
    : `The ${list(wide)} readings spread more than the tool explains: clean the part, and take ${wide.length > 1 ? "them" : "it"} again.`;
}

/** A worn cap has worked in its bore. */
export const lookAtBores = (renew: boolean): string =>
  `${renew ? "Renew this joint: its cap is below its size by more than any published play. " : ""}Look at the bores of the yoke too: the cap may have worked in them.`;

/** The nearest size would agree were the cap worn. */
export const tryWorn = (name: string, mm: number, lead: Unit): string =>
  `If the cap is worn, say so and look again: it is ${both(mm, lead)} below that of ${name}, and everything else agrees.`;

/** Half a millimetre is lost by leaving digits out. */
export function everyDigit(asked: readonly MeasuredEnd[]): string | undefined {
  const coarse = wordsOf(asked, (m) => m.step >= given.coarseStep);
  return coarse.length === 0
    ? undefined
    : `Measure the ${list(coarse)} with a caliper and write every digit it shows, noughts too.`;
}

/** Ask the counter by figures when no name is known. */
export function orderByFigures(asked: readonly MeasuredEnd[]): string {
  const ends = asked.map((e) => {
    const parts: string[] = [];
    if (e.cap) parts.push(`cap ${both(e.cap.mm, e.cap.how.lead)}`);
    if (e.across)
      parts.push(
        `across ${both(e.across.mm, e.across.how.lead)}${e.faces === "unknown" ? "" : ` ${facesWords[e.faces]}`}`,
      );
    if (e.hold !== "unknown") parts.push(`held by ${holdWords[e.hold]}`);
    return parts.join(", ");
  });
  return `If the readings come out the same, ask for it by its figures: ${ends.join("; and ")}.`;
}

/** The step that settles a doubt. */
export function settle(doubt: Doubt, fit: RowFit, yokes: number): string | undefined {
  switch (doubt.kind) {
    case "one-quantity":
      return doubt.yoke === undefined ? `Measure the ${doubt.missing} too.` : onYoke(doubt.yoke, doubt.missing);
    case "second-size":
      return doubt.says;
    case "hold-not-asked":
      return doubt.hold === "unknown"
        ? lookAtHold()
        : `Look how yours is held: this size has ${holdWords[doubt.hold]}.`;
    case "faces-not-asked":
      return "Say which faces you measured the across between.";
    case "clips-unmeasured":
      return doubt.says;
    case "service-joint":
      return askService();
    case "coarse":
      return undefined; // the step about digits says it, or the chart itself is coarse
    case "chart-digits":
      return "Ask the seller for the figures with their decimals, and compare them with your readings, before you order.";
    case "memory":
      return "Recalled, not published: compare every figure with the old joint before ordering.";
    case "chart-hold":
      return "Ask how it is held before ordering, and compare it with yours.";
    case "chart-faces":
      return "Ask which faces its across is measured between before ordering.";
    case "other-figure":
      return "Take the reading again: sources differ on this size.";
    case "no-figure":
      return `Ask for the ${doubt.quantity} of ${fit.row.row.name} before ordering.`;
    case "not-likely":
      return cleanAndRepeat(yokes);
  }
}

/** A hold that is only recalled can be seen on the joint itself. */
export function checkHold(fit: RowFit): string | undefined {
  const holds = [
    ...new Set(
      fit.ends
        .filter((e) => e.end.holdBasis === "memory" && e.end.hold !== "unknown")
        .map((e) => holdWords[e.end.hold]),
    ),
  ];
  return holds.length === 0
    ? undefined
    : `Check on the new joint that it is held by ${list(holds)}: the chart only recalls that.`;
}
