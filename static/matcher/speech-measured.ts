// What is said of measurements that stand beside a value of the chart: on its page, and to
// whoever is about to add one.
import type { Beside, Combined, Worth } from "./measured";
import type { Tool, Unit } from "./types";
import { both, isNothing, toolWords } from "./speech-words";

const plusMinus = (mm: number, uncertainty: number, lead: Unit): string =>
  `${both(mm, lead)}, ±${both(uncertainty, lead)}`;

const readingsOf = (n: number): string => (n === 1 ? "one reading" : `${n} readings`);

export const nothingRead = (): string => "No reading can be understood.";

/** One measurement by itself. */
export function worth(mm: number, uncertainty: number, readings: number, tool: Tool, lead: Unit): string {
  return `${plusMinus(mm, uncertainty, lead)}, from ${readingsOf(readings)} with ${toolWords[tool]}.`;
}

export function comes(c: Combined, tool: Tool | undefined, lead: Unit): string {
  const from =
    tool === undefined
      ? `the weighted mean of ${c.count} measurements (${readingsOf(c.readings)})`
      : `from ${readingsOf(c.readings)} with ${toolWords[tool]}`;
  return `Measured: ${plusMinus(c.mm, c.uncertainty, lead)} (about 95 %), ${from}.`;
}

export function amongThemselves(c: Combined): string {
  const ratio = `Birge ratio ${c.ratio.toFixed(2)}, where chance goes up to ${c.limit.toFixed(2)} (chi-square, 95 %)`;
  return c.consistent
    ? `The measurements agree among themselves: ${ratio}.`
    : `The measurements do not agree among themselves: ${ratio}. The uncertainty is enlarged by that ratio.`;
}

export function beside(printed: string, b: Beside, consistent: boolean, lead: Unit): string {
  if (!consistent && b.off <= b.within)
    return `What does not agree with itself speaks neither for ${printed} as printed nor against it.`;
  const off = both(b.off, lead);
  const within = both(b.within, lead);
  if (isNothing(b.off)) return `That agrees with ${printed} as printed.`;
  const way = b.larger ? "larger" : "smaller";
  return b.off <= b.within
    ? `That agrees with ${printed} as printed: it is ${off} ${way}, and ±${within} is what both leave open.`
    : `That does not agree with ${printed} as printed: it is ${off} ${way}, and ±${within} is what both leave open. The printed figure stays until its source has been looked at again.`;
}

/** What was measured and is not in the mean. */
export function unused(each: readonly Worth[]): string[] {
  const out: string[] = [];
  const elsewhere = each.filter((w) => w.elsewhere).length;
  if (elsewhere > 0)
    out.push(
      elsewhere === 1
        ? "One measurement was taken between other faces than the value's: it is listed and not counted."
        : `${elsewhere} measurements were taken between other faces than the value's: they are listed and not counted.`,
    );
  for (const w of each) if (w.trouble && !w.elsewhere) out.push(`One measurement is listed and not counted. ${w.says}`);
  return out;
}
