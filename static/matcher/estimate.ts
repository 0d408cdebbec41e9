// From the readings of one quantity at one end to one value with its uncertainty.
//
//   readings -> set aside what cannot belong -> mean -> put right for the condition -> type A and type B -> budget
//
// Wear makes a part read small, dirt and rust large: what is known of that is taken off
// the mean (JCGM 100 3.2.3), and what is not known of it is a line of the budget.
// Readings that cannot belong together are never averaged: `trouble` says what to do.
import type { Condition, Estimate, Faces, Quantity, Tool, Unit } from "./types";
import * as given from "./given";
import * as gum from "./gum";
import type { Reading } from "./reading";
import * as say from "./speech-estimate";

/** How a whole query was measured. */
export interface How {
  tool: Tool;
  condition: Condition;
  lead: Unit; // the unit of most readings: answers speak it first
}

export interface Measured {
  end: number;
  quantity: Quantity;
  how: How;
  mm: number; // the mean, put right for the condition
  shift: number; // what was taken off the mean for that: a used cap reads small, so its shift is below 0
  standard: number; // of the reading alone
  dof: number;
  readings: number; // how many were used
  step: number; // the last digit taken as read, mm
  estimate: Estimate;
  trouble?: Trouble; // why these readings cannot be used
  far?: number; // that reading, put right for the condition like mm
  doubt?: string; // why a reading set aside may be a second size rather than a slip
  wide: boolean; // the readings spread more than tool and hand explain
}

export interface Trouble {
  says: string;
  twoEnds: boolean; // the readings look like those of two different ends
}

/** The unit of most readings; millimetres when there are as many of both. */
export function leadUnit(readings: readonly Reading[]): Unit {
  return 2 * readings.filter((r) => r.unit === "in").length > readings.length ? "in" : "mm";
}

export function estimate(
  end: number,
  quantity: Quantity,
  readings: readonly Reading[],
  how: How,
  faces: Faces,
): Measured {
  const middle = gum.median(readings.map((r) => r.mm));
  // The finest reading shows how the scale was read: 1.06 beside 1.061 had its nought dropped.
  const step = Math.max(toolStep(how.tool), Math.min(...readings.map((r) => r.step)));
  const limits = typeB(quantity, middle, step, how, faces);
  const floor = Math.max(
    quantity === "cap" ? given.capFloor : given.acrossFloor,
    given.floorLimits * gum.combine(limits),
  );
  const { used, aside } = setAside(readings, middle, floor);

  const values = used.map((r) => r.mm);
  const average = gum.mean(values);
  const { shift } = offset(quantity, how.condition);
  const value = average - shift;
  const repeat = repeatability(quantity, how.tool);
  const expected = expectedSpread(Math.hypot(repeat, gum.resolution(step)), values.length);
  const wide = spread(values) > expected;
  const s = gum.pooled(repeat, given.repeatDof, gum.stdev(values), values.length - 1);
  const sources: Source[] = [
    { source: say.sources.repeat, standard: s / Math.sqrt(values.length), dof: given.repeatDof + values.length - 1 },
    ...limits,
  ];
  const standard = gum.combine(sources);
  const dof = gum.welchSatterthwaite(sources);
  const uncertainty = gum.coverage(0.95, dof) * standard;

  const out: Measured = {
    end,
    quantity,
    how,
    mm: value,
    shift,
    standard,
    dof,
    readings: used.length,
    step,
    wide,
    estimate: {
      end,
      quantity,
      used: used.map((r) => r.text),
      setAside: aside.map((r) => r.text),
      value,
      uncertainty,
      unit: "mm",
      why: say.why(quantity, how, {
        used: used.length,
        shift,
        uncertainty,
        largest: largest(sources),
        aside: aside.map((r) => r.mm - average),
        ...(wide ? { spread: spread(values), expected } : {}),
      }),
      budget: sources.map((p) => ({ source: p.source, standard: p.standard, dof: p.dof === Infinity ? null : p.dof })),
    },
  };
  const trouble = cannotBelong(quantity, values, floor, how.lead);
  if (trouble !== undefined) out.trouble = trouble;
  const other = quantity === "cap" ? given.capOther : given.acrossOther;
  const far = aside.find((r) => apart(r.mm, average) > Math.max(other, floor));
  if (far !== undefined && used.length < 3) {
    out.doubt = say.secondSize(quantity, far.text);
    out.far = far.mm - shift;
  }
  return out;
}

interface Source extends gum.Component {
  source: string;
}

/** What that many readings of a length would know, taken with that tool: for a measure that is only proposed. */
export function foreseen(
  quantity: Quantity,
  mm: number,
  readings: number,
  how: Omit<How, "lead">,
  faces: Faces,
): gum.Component[] {
  const standard = repeatability(quantity, how.tool) / Math.sqrt(readings);
  return [{ standard, dof: given.repeatDof + readings - 1 }, ...typeB(quantity, mm, toolStep(how.tool), how, faces)];
}

// What no repeating can find out: JCGM 100 4.3.
function typeB(quantity: Quantity, mm: number, step: number, how: Omit<How, "lead">, faces: Faces): Source[] {
  const { tool, condition } = how;
  const groove =
    quantity === "across" &&
    (faces === "groove-inner" || faces === "groove-outer") &&
    tool !== "steel-rule" &&
    tool !== "tape";
  const limit = toolLimit(tool, mm) + (groove ? given.grooveReading : 0);
  return [
    { source: say.sources.tool, standard: gum.rectangular(limit), dof: Infinity },
    { source: say.sources.step, standard: gum.resolution(step), dof: Infinity },
    { source: say.sources.condition, standard: gum.rectangular(offset(quantity, condition).half), dof: Infinity },
  ];
}

// Error of a reading for the condition of the part: its mean, and half of how wide it lies about that.
function offset(quantity: Quantity, condition: Condition): { shift: number; half: number } {
  const [below, above] = errors(quantity, condition);
  return { shift: (above - below) / 2, half: (above + below) / 2 };
}

function errors(quantity: Quantity, condition: Condition): readonly [below: number, above: number] {
  switch (condition) {
    case "new":
      return [given.newEither, given.newEither];
    case "used":
      return quantity === "cap"
        ? [given.usedCapSmall, given.usedCapLarge]
        : [given.usedAcrossNarrow, given.usedAcrossWide];
    case "worn":
      return quantity === "cap"
        ? [given.wornCapSmall, given.wornCapLarge]
        : [given.wornAcrossNarrow, given.wornAcrossWide];
    case "rusted":
      return [given.rustedSmall, given.rustedLarge];
  }
}

// No two of n readings should lie farther apart than this. The level is shared out over
// the pairs (Bonferroni), which is exact for two readings and a little wide for more.
function expectedSpread(standard: number, n: number): number {
  if (n < 2) return Infinity;
  const pairs = (n * (n - 1)) / 2;
  return Math.SQRT2 * standard * gum.normalQuantile(1 - (1 - given.spreadLevel) / (2 * pairs));
}

function toolLimit(tool: Tool, mm: number): number {
  switch (tool) {
    case "digital-caliper":
    case "dial-caliper":
    case "vernier-caliper":
      return mm <= 100 ? given.caliperLimit100 : given.caliperLimit300;
    case "vernier-caliper-coarse":
      return given.coarseVernierLimit;
    case "micrometer":
      return mm <= 50 ? given.micrometerLimit50 : mm <= 75 ? given.micrometerLimit75 : given.micrometerLimitAbove;
    case "steel-rule":
      return given.ruleLimit;
    case "tape":
      return given.tapeLimit;
  }
}

function toolStep(tool: Tool): number {
  switch (tool) {
    case "digital-caliper":
      return given.digitalStep;
    case "dial-caliper":
    case "vernier-caliper":
      return given.dialStep;
    case "vernier-caliper-coarse":
      return given.coarseVernierStep;
    case "micrometer":
      return given.micrometerStep;
    case "steel-rule":
      return given.ruleStep;
    case "tape":
      return given.tapeStep;
  }
}

function repeatability(quantity: Quantity, tool: Tool): number {
  const method = quantity === "cap" ? given.capRepeat : given.acrossRepeat;
  if (tool === "steel-rule") return Math.max(method, given.ruleRepeat);
  if (tool === "tape") return Math.max(method, given.tapeRepeat);
  return method;
}

// Median and median deviation are not moved by the reading in question; never more
// than a third goes, and of three readings one goes only if the other two agree well.
function setAside(readings: readonly Reading[], middle: number, floor: number): { used: Reading[]; aside: Reading[] } {
  const n = readings.length;
  if (n < 3) return { used: [...readings], aside: [] };
  const mad = gum.median(readings.map((r) => Math.abs(r.mm - middle)));
  const limit = Math.max(given.outlierMads * given.madScale * mad, floor);
  const worst = readings
    .map((r, index) => ({ index, off: apart(r.mm, middle) }))
    .filter((x) => x.off > limit)
    .sort((a, b) => b.off - a.off || a.index - b.index)
    .slice(0, Math.floor(n / 3))
    .map((x) => x.index);
  const used = readings.filter((_, i) => !worst.includes(i));
  if (n === 3 && worst.length === 1 && spread(used.map((r) => r.mm)) > floor / 2)
    return { used: [...readings], aside: [] };
  return { used, aside: readings.filter((_, i) => worst.includes(i)) };
}

function cannotBelong(quantity: Quantity, values: readonly number[], floor: number, lead: Unit): Trouble | undefined {
  if (values.length === 2 && spread(values) > given.apartFloors * floor)
    return { says: say.twoDisagree(quantity, spread(values), lead), twoEnds: false };
  const groups = twoGroups(values, floor);
  if (groups !== undefined) return { says: say.twoGroups(quantity, groups, lead), twoEnds: true };
  if (spread(values) > given.spreadFloors * floor)
    return { says: say.spreadTooFar(quantity, spread(values), lead), twoEnds: false };
  return undefined;
}

// Two tight groups with a gap between, at least two readings in each: two different
// things were measured, and their mean is neither.
function twoGroups(values: readonly number[], floor: number): [number, number] | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  for (let i = 2; i <= sorted.length - 2; i++) {
    const low = sorted.slice(0, i);
    const high = sorted.slice(i);
    const gap = apart(high[0] ?? 0, low[i - 1] ?? 0);
    if (gap > given.apartFloors * floor && spread(low) < gap / 2 && spread(high) < gap / 2)
      return [gum.mean(low), gum.mean(high)];
  }
  return undefined;
}

function spread(values: readonly number[]): number {
  return values.length === 0 ? 0 : apart(Math.max(...values), Math.min(...values));
}

// How far apart, to the nanometre: the same lengths written in inches lie on the same side of every limit.
function apart(a: number, b: number): number {
  return Math.round(Math.abs(a - b) * 1e6) / 1e6;
}

function largest(sources: readonly Source[]): string {
  return sources.reduce((a, b) => (b.standard > a.standard ? b : a)).source;
}
