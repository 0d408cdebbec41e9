// The frame of the calculations: reads what was filled, runs the parts that have what they need, and gives the whole
// result as plain data. A page finds it as CapspanDriveline; each calculation is a script of its own behind it
// (calculation-*.ts), so that a page loads one and not nine. The command and the tests run all of them.
import type {
  Calculation,
  Element,
  Filled,
  LimitLine,
  Line,
  PartReport,
  Provided,
  Refusal,
  Report,
  Values,
} from "./description";
import { decode, encode, isAsked, readFields } from "./fill";
import { find, kitOf } from "./kit";
import { systemOf, type System } from "./quantities";
import { resultTree } from "./sheet";
import { learnDocuments } from "./speech-result";

export { convert, decode, encode, fieldOf, firstUnit } from "./fill";
export { unitOf } from "./quantities";
export { ground } from "./speech-result";

/** The calculations, in the order they were added. */
export const known: Calculation[] = [];
/** What they take from the chart. */
export let provided: Provided = {};

/** add makes a calculation known; its script does it. */
export function add(calculation: Calculation): void {
  known.push(calculation);
}

/** provide gives the calculations what they take from the chart. */
export function provide(more: Provided): void {
  provided = { ...provided, ...more };
  learnDocuments(more.documents ?? []);
}

/** The calculation of that name. */
export function calculationOf(name: string): Calculation | undefined {
  return known.find((one) => one.name === name);
}

/** reckon reads a fragment of a calculation's page, with or without "#", and gives what comes of it. A name that is not
 *  known has no lines and one refusal. */
export function reckon(name: string, fragment: string): Report {
  const calculation = calculationOf(name);
  if (calculation === undefined) return { ...emptyReport, calculation: name.slice(0, 40) };
  const { filled, refusals } = decode(calculation, fragment);
  return reckonFilled(calculation, filled, refusals);
}

const emptyReport: Report = {
  calculation: "",
  title: "",
  fragment: "",
  given: [],
  asked: [],
  lines: [],
  limits: [],
  parts: [],
  refusals: [],
  unchecked: [],
  cautions: [],
};

/** The same for what stands in a form. */
export function reckonFilled(calculation: Calculation, filled: Filled, before: Refusal[] = []): Report {
  const { values, given, asked, refusals } = readFields(calculation, filled);
  const { words } = calculation;
  const report: Report = {
    calculation: calculation.name,
    title: words.title,
    fragment: encode(calculation, filled),
    given,
    asked,
    lines: [],
    limits: [],
    parts: [],
    refusals: [...before, ...refusals],
    unchecked: words.unchecked,
    cautions: words.cautions,
  };
  const lead = leadOf(calculation, filled, values);
  for (const part of calculation.parts) {
    if (part.when && !part.when(values)) continue;
    const { id } = part;
    const needs = typeof part.needs === "function" ? part.needs(values) : part.needs;
    const missing = needs.filter((input) => asked.includes(input) && values[input] === undefined);
    const labels = missing.map((input) => words.inputs[input]?.label ?? input);
    const own: PartReport = { id, title: words.parts[id] ?? id, missing: labels, says: [], pictures: [] };
    report.parts.push(own);
    if (missing.length > 0) continue;
    const found = find(calculation, () => part.reckon(values, kitOf(lead, provided, words.grounds)));
    own.says = found.says ?? [];
    own.pictures = found.pictures ?? [];
    report.lines.push(...found.lines.map((line): Line => ({ ...line, part: id })));
    report.limits.push(...(found.limits ?? []).map((limit): LimitLine => ({ ...limit, part: id })));
  }
  return report;
}

/** The system most inputs are given in leads; where none says, the metric one. */
function leadOf(calculation: Calculation, filled: Filled, values: Values): System {
  let inch = 0;
  for (const input of calculation.inputs) {
    if (input.kind !== "number" || values[input.id] === undefined || !isAsked(input, values)) continue;
    const system = systemOf(filled[input.id]?.unit ?? "");
    if (system === "inch") inch++;
    if (system === "metric") inch--;
  }
  return inch > 0 ? "inch" : "metric";
}

/** The result as elements, for the page. */
export function result(report: Report): Element {
  return resultTree(report);
}
