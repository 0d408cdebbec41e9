// What readers measured of one value of the chart, and what it comes to: the front door of
// a script of its own, which the page that takes corrections loads and package matcher runs
// while the site is built.
//
//   each measurement -> its mean and uncertainty, as for a reading to be identified
//   all of them      -> weighted mean, Birge's ratio, chi-square
//   beside it        -> does that agree with what is printed?
import type { Condition, Faces, Quantity, Tool, Unit } from "./types";
import * as birge from "./birge";
import { estimate } from "./estimate";
import { coverage, rectangular } from "./gum";
import { parseReading, type Reading } from "./reading";
import * as say from "./speech-measured";

export { parseReading } from "./reading";
export { facesFor } from "./words";

/** A length of the chart that is neither cap nor across: a bolt circle, a pilot. */
export type Column = Quantity | "length";

export interface Measurement {
  readings: string[]; // with units: "1.061 in"
  tool: Tool;
  condition?: Condition; // of a cap or an across; left out: used
  faces?: Faces; // of an across; left out: those of the value
}

/** What the chart prints; both ends of a range, which are the same for one number. */
export interface Printed {
  text: string; // with its unit
  least: number; // mm
  greatest: number;
  half: number; // half the last printed digit, mm
}

export interface Question {
  column: Column;
  faces?: Faces; // of the value
  printed?: Printed; // left out: the value is not printed, or rests on these very readings
  measurements: Measurement[];
}

export interface Worth {
  mm: number;
  uncertainty: number; // expanded, about 95 %
  readings: number; // used of them
  says: string;
  trouble: boolean; // its readings cannot belong together: it is not used
  elsewhere: boolean; // it was taken between other faces: it is not used
}

export interface Combined {
  mm: number;
  uncertainty: number; // expanded, about 95 %
  count: number;
  readings: number;
  ratio: number;
  limit: number;
  chance: number;
  consistent: boolean;
  agrees: "yes" | "no" | ""; // with the print; "" where nothing is printed, or where they do not agree among themselves
}

export interface Comes {
  each: Worth[];
  combined: Combined | null; // null: no measurement can be used
  says: string[];
}

/** comesTo works out what measurements are worth, alone and together. */
export function comesTo(question: Question): Comes {
  const each: Worth[] = [];
  const used: birge.Measurement[] = [];
  let readings = 0;
  let lead: Unit = "mm";
  for (const m of question.measurements) {
    const worth = worthOf(question, m);
    each.push(worth.says);
    if (worth.says.trouble || worth.says.elsewhere) continue;
    if (used.length === 0) lead = worth.lead;
    used.push(worth.measurement);
    readings += worth.says.readings;
  }
  if (used.length === 0) return { each, combined: null, says: say.unused(each) };
  const all = birge.together(used);
  const uncertainty = coverage(0.95, all.dof) * all.standard;
  const beside = question.printed === undefined ? undefined : compare(question.printed, all);
  const combined: Combined = {
    mm: all.value,
    uncertainty,
    count: used.length,
    readings,
    ratio: all.ratio,
    limit: all.limit,
    chance: all.chance,
    consistent: all.consistent,
    agrees: beside === undefined ? "" : beside.off > beside.within ? "no" : all.consistent ? "yes" : "",
  };
  const only = used.length === 1 ? question.measurements[each.findIndex((w) => !w.trouble && !w.elsewhere)] : undefined;
  return {
    each,
    combined,
    says: [
      say.comes(combined, only?.tool, lead),
      ...(used.length > 1 ? [say.amongThemselves(combined)] : []),
      ...(beside === undefined ? [] : [say.beside(question.printed?.text ?? "", beside, all.consistent, lead)]),
      ...say.unused(each),
    ],
  };
}

/** How the combined value lies to the printed one; lengths in mm. */
export interface Beside {
  off: number; // how far outside of what is printed, 0 within a range
  larger: boolean;
  within: number; // expanded uncertainty of both together, about 95 %
}

function compare(printed: Printed, all: birge.Together): Beside {
  const below = printed.least - all.value;
  const above = all.value - printed.greatest;
  const print = rectangular(printed.half);
  const standard = Math.hypot(all.standard, print);
  const dof = all.dof === Infinity ? Infinity : (standard ** 4 * all.dof) / all.standard ** 4;
  return { off: Math.max(0, below, above), larger: above > below, within: coverage(0.95, dof) * standard };
}

function worthOf(question: Question, m: Measurement): { says: Worth; measurement: birge.Measurement; lead: Unit } {
  const readings = m.readings.map((text) => parseReading(text)).filter((r): r is Reading => r.ok);
  const faces = m.faces ?? question.faces ?? "unknown";
  const elsewhere = question.column === "across" && faces !== (question.faces ?? "unknown");
  const inches = 2 * readings.filter((r) => r.unit === "in").length > readings.length;
  const lead = inches ? "in" : "mm";
  if (readings.length === 0) {
    const says = { mm: 0, uncertainty: 0, readings: 0, says: say.nothingRead(), trouble: true, elsewhere };
    return { says, measurement: { value: 0, standard: 1, dof: Infinity }, lead };
  }
  // How wear changes other parts than joints is not known: they are taken as new, and the wider spread of an across.
  const quantity = question.column === "length" ? "across" : question.column;
  const condition = question.column === "length" ? "new" : (m.condition ?? "used");
  const got = estimate(0, quantity, readings, { tool: m.tool, condition, lead }, faces);
  const says: Worth = {
    mm: got.mm,
    uncertainty: got.estimate.uncertainty,
    readings: got.readings,
    says: got.trouble?.says ?? say.worth(got.mm, got.estimate.uncertainty, got.readings, m.tool, lead),
    trouble: got.trouble !== undefined,
    elsewhere,
  };
  return { says, measurement: { value: got.mm, standard: got.standard, dof: got.dof }, lead };
}
