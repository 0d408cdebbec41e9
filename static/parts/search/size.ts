// A question that is a size: "1.062 x 3.219", "27x74.6", "1 1/16", "30 mm". It is read by the core and judged by the
// core; here is only what a bare number is taken for, which the hit then says.
import type { AnyChart } from "../../matcher/prepared";
import type { Answer, Query, Unit } from "../../matcher/types";

type Core = Pick<typeof CapspanCore, "parseReading" | "identify" | "encodeAddress">;

/** One way to understand the question; a single length may be either. */
export interface Size {
  cap?: string; // "1.062 in"
  across?: string;
}

export interface Judged extends Size {
  answer: Answer;
  fragment: string; // of the identify page
}

// Caps of the chart reach from 15 mm to 3.3 in, distances from 38 mm to 8.9 in: a bare number below ten is inches.
const inchesBelow = 10;
// A whole number without a unit may be a name; a longer one always is.
const name = /^\d$|^\d{4,}$/;

/** The sizes a question may mean; none when it is words or a name. */
export function sizesIn(question: string, core: Core): Size[] {
  const text = question.trim().replace(/^[øØ⌀]\s*/, "");
  const pair = /^(.+?)\s*(?:x|×|\*|\bby\b)\s*(.+)$/i.exec(text);
  if (pair) {
    const [a = "", b = ""] = pair.slice(1);
    const unit = unitOf(a, core) ?? unitOf(b, core) ?? bareUnit(a);
    const cap = read(a, unit, core);
    const across = read(b, unit, core);
    return cap && across ? [{ cap, across }] : [];
  }
  if (name.test(text)) return [];
  const length = read(text, unitOf(text, core) ?? bareUnit(text), core);
  return length ? [{ cap: length }, { across: length }] : [];
}

function read(text: string, unit: Unit, core: Core): string | null {
  const reading = core.parseReading(text, unit);
  return reading.ok ? reading.text : null;
}

// The unit that is written, or follows from a fraction.
function unitOf(text: string, core: Core): Unit | null {
  const reading = core.parseReading(text);
  return reading.ok ? reading.unit : null;
}

function bareUnit(text: string): Unit {
  return Number.parseFloat(text.replace(",", ".")) < inchesBelow ? "in" : "mm";
}

/** What the core says to each; of one length only the readings it can use, if there are any. */
export function judge(sizes: readonly Size[], chart: AnyChart, core: Core): Judged[] {
  const all = sizes.map((size) => {
    const { cap, across } = size;
    const query: Query = { ends: [{ hold: "unknown", cap: cap ? [cap] : [], across: across ? [across] : [] }] };
    return { ...size, answer: core.identify(chart, query), fragment: core.encodeAddress(query, chart.version) };
  });
  const found = all.filter((j) => j.answer.sizes.length > 0);
  const usable = all.filter((j) => j.answer.verdict !== "measure-again");
  return found.length > 0 ? found : [...usable, ...all].slice(0, 1);
}
