// What the frame lends to every part: figures in the reader's units with the other system beside them, lines with their
// formula and sources, limits with the word that says how a value stands to them.
import type { Calculation, Finding, Kit, Line, LimitLine, Provided, Stand } from "./description";
import { groundOf, number, pretty } from "./print";
import { printedUnits, type Quantity, type System, type Unit } from "./quantities";
import * as say from "./speech-result";
import type { Complaint, Formula, Limit, Si } from "./types";

/** What stops a part whose figures cannot be used together. */
class Unusable {
  constructor(readonly complaints: Complaint[]) {}
}

/** A kit for one part: the formulas its lines name are those of the calculations it took. */
export function kitOf(lead: System, chart: Provided, grounds: Record<string, string> = {}): Kit {
  const grounded = (text: string): string => grounds[text] ?? text;
  const formulas = new Map<string, Formula>();
  const by = (id: string): Pick<Line, "formula" | "source" | "valid"> => {
    const formula = formulas.get(id);
    if (formula === undefined) return { formula: "", source: [] };
    const said = { formula: pretty(grounded(formula.text)), source: [groundOf(formula)] };
    return formula.valid === "" ? said : { ...said, valid: grounded(formula.valid) };
  };
  const figure: Kit["figure"] = (quantity, base, digits) => {
    const [own, other] = printedUnits(quantity, lead);
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
    limits: (of, quantity, values, limits, digits) =>
      limits.map((l) => ({ ...limitLine(figure, of, quantity, values, l, digits), says: grounded(l.says) })),
    span: (of, quantity, base, rule, digits) => {
      const { least, most } = rule;
      const met = least !== null && base < least ? "below" : most !== null && base > most ? "above" : "within";
      const [from, to] = [least, most].map((x) => (x === null ? "" : words(quantity, x, digits)));
      const limit = say.span(from ?? "", to ?? "");
      const stands: Stand[] = [{ of: "", value: words(quantity, base, digits), met }];
      return { of, limit, says: grounded(rule.says), stands, source: [groundOf(rule)] };
    },
    take: (outcome) => {
      if (!outcome.ok) throw new Unusable(outcome.complaints);
      for (const formula of outcome.formulas) formulas.set(formula.id, formula);
      return outcome.result;
    },
    units: (quantity) => printedUnits(quantity, lead),
    ground: say.ground,
    says: grounded,
    chart,
  };
}

// Decimals are given for the metric unit; an inch unit of length needs one more for the same grain.
function print(unit: Unit, base: number, digits: number | undefined, metric: boolean): string {
  const wanted = digits === undefined ? unit.digits : metric ? digits : unit.name === "in" ? digits + 1 : digits;
  return number(unit.fromBase(base), wanted);
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
  values: readonly { of: string; base: number }[],
  limit: Limit,
  digits?: number,
): Omit<LimitLine, "part"> {
  const bound = figure(quantityOf[limit.unit] ?? quantity, limit.value, digits);
  const stands = values.map(({ of, base }): Stand => {
    const shown = figure(quantity, base, digits);
    const out = limit.bound === "most" ? base > limit.value : base < limit.value;
    // What is printed as equal counts as equal: a limit of 3 degrees is met by 3.00.
    const met = shown.value === bound.value || !out ? "within" : limit.bound === "most" ? "above" : "below";
    return { of, value: say.both(say.withUnit(shown.value, shown.unit), shown.also), met };
  });
  const shown = say.bound(limit.bound, say.both(say.withUnit(bound.value, bound.unit), bound.also));
  return { of, limit: shown, says: limit.says, stands, source: [groundOf(limit)] };
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
