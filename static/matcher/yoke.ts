// From the readings of a bare yoke to an end in the joint's terms:
//
//   bore      -> the cap that goes into it     less or plus the fit of a cap in its bore
//   distance  -> the joint's across            less two clips, where it has them, and play
//
// Every step adds its own line to the budget of uncertainty, so that everything after
// this knows no difference between a joint and a yoke.
import type { Condition, Hold, Tool, Unit } from "./types";
import type { MeasuredEnd } from "./agree";
import * as given from "./given";
import * as gum from "./gum";
import { estimate, type How, type Measured, type Trouble } from "./estimate";
import type { AskedEnd } from "./query";
import type { Reading } from "./reading";
import { sources as jointSources } from "./speech-estimate";
import * as say from "./speech-yokes";

/** What was read on a yoke, for what is said of it later. */
export interface YokeRead {
  hold: Hold; // as asked: an injected yoke is compared as one of inside clips
  bores: number[]; // those used, mm
  good: number; // expanded uncertainty of the mean bore alone, mm; 0 without one
  clips: boolean; // two clips lie between
  distance?: number; // mean, mm
  clip?: Measured; // of one clip
}

interface Line extends gum.Component {
  source: string;
}

// least and most by which the yoke's figure exceeds the joint's
type Range = readonly [number, number];

const boreOver: Record<Condition, Range> = {
  new: [0, given.newBoreLarger],
  used: [-given.boreSmaller, given.usedBoreLarger],
  worn: [-given.boreSmaller, given.wornBoreLarger],
  rusted: [-given.rustedBoreSmaller, given.wornBoreLarger],
};

const play: Record<Condition, Range> = {
  new: [0, given.newPlay],
  used: [0, given.playRenew],
  worn: [0, given.wornPlay],
  rusted: [-given.rustedBoreSmaller, given.wornPlay],
};

/** fromYoke reads a yoke as the end of the joint that goes into it. */
export function fromYoke(n: number, end: AskedEnd, how: How): MeasuredEnd {
  const kind = say.yokes[end.hold];
  const read: YokeRead = { hold: end.hold, bores: [], good: 0, clips: kind.clip };
  const out: MeasuredEnd = { hold: end.hold === "injected" ? "inside-clip" : end.hold, faces: end.faces, yoke: read };
  if (end.cap.length > 0) out.cap = capOf(n, end.cap, how, read);
  if (end.clip.length > 0) read.clip = clipOf(n, end.clip, how);
  if (end.across.length > 0) out.across = acrossOf(n, end, how, read);
  return out;
}

function capOf(n: number, readings: readonly Reading[], how: How, read: YokeRead): Measured {
  const bore = estimate(n, "cap", readings, fresh(how), "over-caps");
  read.bores = usedOf(bore, readings);
  read.good = bore.estimate.uncertainty;
  const lines: Line[] = [...insideOf(how.tool), between(say.sources.bore, boreOver[how.condition])];
  const out = recast(bore, how, bore.mm - middle(boreOver[how.condition]), lines);
  out.estimate.why = say.setAside(bore.estimate.setAside) + say.fromBore(reckoned(bore, out, readings));
  return reworded(out, readings, how, say.boresDiffer, say.farBore);
}

function clipOf(n: number, readings: readonly Reading[], how: How): Measured {
  const clip = estimate(n, "cap", readings, fresh(how), "over-caps");
  const out: Measured = { ...clip, estimate: { ...clip.estimate, quantity: "clip" } };
  out.estimate.why =
    say.setAside(clip.estimate.setAside) + say.ofClip(clip.readings, clip.estimate.uncertainty, how.lead);
  return reworded(out, readings, how, say.clipsDiffer, undefined);
}

function acrossOf(n: number, end: AskedEnd, how: How, read: YokeRead): Measured {
  // Over the ears of a plate yoke is an outside reading, every other distance lies between two faces.
  const distance = estimate(n, "across", end.across, fresh(how), end.hold === "plate" ? "over-caps" : "groove-inner");
  read.distance = distance.mm;
  const lines: Line[] = [between(say.sources.play, play[how.condition])];
  let less = middle(play[how.condition]);
  if (read.clip !== undefined) {
    less += 2 * read.clip.mm;
    lines.push({ source: say.sources.clip, standard: 2 * read.clip.standard, dof: read.clip.dof });
  } else if (read.clips) {
    // Both clips are of one thickness, so what is not known of one counts twice.
    const both: Range = [2 * given.thinnestClip, 2 * given.thickestClip];
    less += middle(both);
    lines.push(between(say.sources.clipUnknown, both));
  }
  const out = recast(distance, how, distance.mm - less, lines);
  out.estimate.why =
    say.setAside(distance.estimate.setAside) +
    say.fromDistance(
      reckoned(distance, out, end.across),
      read.clip !== undefined ? { clips: "measured", clip: read.clip.mm } : { clips: read.clips ? "unknown" : "none" },
    );
  return reworded(out, end.across, how, say.distancesDiffer, say.farDistance);
}

// A hole is read worse than a shaft (DIN 862). The tool's own limit is in the estimate
// already, so this line holds what the sum of both limits adds to it.
function insideOf(tool: Tool): Line[] {
  if (tool === "steel-rule" || tool === "tape") return [];
  const sum = given.caliperLimit100 + given.grooveReading;
  const added = Math.sqrt(sum ** 2 - given.caliperLimit100 ** 2);
  return [{ source: say.sources.inside, standard: gum.rectangular(added), dof: Infinity }];
}

function between(source: string, range: Range): Line {
  return { source, standard: gum.rectangular((range[1] - range[0]) / 2), dof: Infinity };
}

function middle(range: Range): number {
  return (range[0] + range[1]) / 2;
}

// The same readings as a value in the joint's terms. What the condition of a joint would
// do to them is left out: the lines say what that of a yoke does.
function recast(m: Measured, how: How, mm: number, lines: readonly Line[]): Measured {
  const kept = m.estimate.budget
    .filter((b) => b.source !== jointSources.condition)
    .map((b): Line => ({ source: b.source, standard: b.standard, dof: b.dof ?? Infinity }));
  const all = [...kept, ...lines];
  const standard = gum.combine(all);
  const dof = gum.welchSatterthwaite(all);
  const budget = all.map((l) => ({ source: l.source, standard: l.standard, dof: l.dof === Infinity ? null : l.dof }));
  const uncertainty = gum.coverage(0.95, dof) * standard;
  return { ...m, how, mm, shift: 0, standard, dof, estimate: { ...m.estimate, value: mm, uncertainty, budget } };
}

function largest(m: Measured): string {
  return m.estimate.budget.reduce((a, b) => (b.standard > a.standard ? b : a)).source;
}

function reckoned(read: Measured, out: Measured, readings: readonly Reading[]): say.Reckoned {
  return {
    readings: read.readings,
    mean: read.mm,
    value: out.mm,
    uncertainty: out.estimate.uncertainty,
    largest: largest(out),
    lead: read.how.lead,
    ...(read.wide && read.trouble === undefined ? { apart: spread(usedOf(read, readings)) } : {}),
  };
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function usedOf(m: Measured, readings: readonly Reading[]): number[] {
  const aside = [...m.estimate.setAside];
  return readings
    .filter((r) => {
      const at = aside.indexOf(r.text);
      if (at >= 0) aside.splice(at, 1);
      return at < 0;
    })
    .map((r) => r.mm);
}

// The condition of a yoke has lines of its own, so the joint's is left as small as it goes.
function fresh(how: How): How {
  return { ...how, condition: "new" };
}

// What is wrong with the readings of a yoke has other reasons than with those of a joint.
function reworded(
  m: Measured,
  readings: readonly Reading[],
  how: How,
  differ: (apart: number, lead: Unit) => string,
  far: ((text: string) => string) | undefined,
): Measured {
  const { trouble, doubt, ...out } = m;
  const made: Measured = out;
  if (trouble !== undefined) {
    const says: Trouble = { says: differ(spread(usedOf(m, readings)), how.lead), twoEnds: false };
    made.trouble = says;
  }
  const aside = m.estimate.setAside[0];
  if (doubt !== undefined && aside !== undefined && far !== undefined) made.doubt = far(aside);
  return made;
}
