// What the frame lends to every part: figures in the reader's units with the other system beside them, lines with their
// formula and sources, limits with the word that says how a value stands to them.
import type { Calculation, Finding, Kit, Line, LimitLine, Provided } from "./description";
import { formulas } from "./formulas";
import { printedUnits, type Quantity, type System, type Unit } from "./quantities";
import * as say from "./speech-result";
import type { Complaint, Formula, Limit, Si } from "./types";

/** What stops a part whose figures cannot be used together. */
class Unusable {
  constructor(readonly complaints: Complaint[]) {}
}

export function kitOf(lead: System, chart: Provided): Kit {
  const figure: Kit["figure"] = (quantity, base, digits) => {
    const [own, other] = printedUnits(quantity, lead);
    if (own === undefined) return { value: "", unit: "" };
    const metric = lead === "metric" || other === undefined;
    const first = { value: print(own, base, digits, metric), unit: own.sign };
    return other === undefined
      ? first
      : { ...first, also: `${print(other, base, digits, lead !== "metric")} ${other.sign}` };
  };
  const words: Kit["words"] = (quantity, base, digits) => {
    const { value, unit, also } = figure(quantity, base, digits);
    return say.both(say.withUnit(value, unit), also);
  };
  return {
    figure,
    words,
    line: (id, label, quantity, base, formula, digits) => ({
      id,
      label,
      ...figure(quantity, base, digits),
      ...by(formula),
    }),
    said: (id, label, value, formula) => ({ id, label, value, unit: "", ...by(formula) }),
    limit: (of, quantity, base, limit, digits) => limitLine(figure, of, quantity, base, limit, digits),
    take: (outcome) => {
      if (!outcome.ok) throw new Unusable(outcome.complaints);
      return outcome.result;
    },
    chart,
  };
}

function by(id: string): Pick<Line, "formula" | "source"> & { valid?: string } {
  const formula: Formula | undefined = formulas.find((f) => f.id === id);
  if (formula === undefined) return { formula: "", source: [] };
  const { text, valid, basis, source } = formula;
  const ground = formula.at === undefined ? { basis, source } : { basis, source, at: formula.at };
  return valid === "" ? { formula: text, source: [ground] } : { formula: text, source: [ground], valid };
}

// Decimals are given for the metric unit; an inch unit of length needs one more for the same grain.
function print(unit: Unit, base: number, digits: number | undefined, metric: boolean): string {
  const wanted = digits === undefined ? unit.digits : metric ? digits : unit.name === "in" ? digits + 1 : digits;
  return number(unit.fromBase(base), wanted);
}

/** A number with a true minus, and no minus before nothing. */
export function number(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−");
}

const quantityOf: Partial<Record<Si, Quantity>> = {
  m: "length",
  rad: "angle",
  "rad/s": "speed",
  "rad/s2": "acceleration",
};

function limitLine(
  figure: Kit["figure"],
  of: string,
  quantity: Quantity,
  base: number,
  limit: Limit,
  digits?: number,
): Omit<LimitLine, "part"> {
  const shown = figure(quantity, base, digits);
  const bound = figure(quantityOf[limit.unit] ?? quantity, limit.value, digits);
  // What is printed as equal counts as equal: a limit of 3 degrees is met by 3.00.
  const over = limit.bound === "most" ? base > limit.value : base < limit.value;
  const equal = shown.value === bound.value;
  const { basis, source, at } = limit;
  return {
    of,
    value: say.both(say.withUnit(shown.value, shown.unit), shown.also),
    limit: say.bound(limit.bound, say.both(say.withUnit(bound.value, bound.unit), bound.also)),
    says: limit.says,
    met: equal || !over ? "within" : limit.bound === "most" ? "above" : "below",
    source: [at === undefined ? { basis, source } : { basis, source, at }],
  };
}

/** Runs a part. Where its figures do not go together it has a sentence and no lines. */
export function find(calculation: Calculation, run: () => Finding): Finding {
  try {
    return run();
  } catch (fault) {
    if (!(fault instanceof Unusable)) throw fault;
    const label = (input: string): string => {
      const id = calculation.places[input.replace(/\[\d+\]/g, "")] ?? "";
      return calculation.words.inputs[id]?.label ?? "";
    };
    return { lines: [], says: fault.complaints.map((c) => say.unusable(label(c.input), label(c.beside), c.wrong)) };
  }
}
