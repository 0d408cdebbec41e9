// What is said of one row beside the readings.
import type { Fit, RowFit } from "./agree";
import type { TellApart } from "./types";
import { basisWords, both, capital, holdWords, isNothing, list, offBy, some } from "./speech-words";

/** Why a row that is left is left. */
export function fits(fit: RowFit): string {
  const quantities = [...new Set(fit.ends.flatMap((e) => e.fits.map((f) => f.quantity)))];
  const others = fit.ends.flatMap((e) => e.fits.filter((f) => f.other));
  const says = [`${capital(list(quantities))} ${quantities.length > 1 ? "agree" : "agrees"}.`];
  for (const f of others)
    says.push(`The ${f.quantity} agrees only with ${f.figure.text}, another figure given for it.`);
  if (fit.ends.some((e) => e.end.hold === "unknown")) says.push("The chart does not know how it is held.");
  says.push(`The figures are ${basisWords[fit.row.basis]}.`);
  return says.join(" ");
}

/** By how much a row misses: "Cap 1.03 mm (0.040 in) smaller than yours; across agrees." */
export function misses(fit: RowFit): string {
  const says = fit.ends.map(
    (end, n) => `${fit.ends.length > 1 ? `end ${n + 1}: ` : ""}${end.fits.map((f) => miss(f, fit.agrees)).join(", ")}`,
  );
  const held = fit.held ? "" : ` It is held by ${list([...new Set(fit.ends.map((e) => holdWords[e.end.hold]))])}.`;
  const doubted = fit.agrees && fit.held && !fit.ends.some((e) => e.fits.some((f) => f.other));
  const open = doubted ? " Its figures allow that, but it is far less likely than what is left." : "";
  const recalled = fit.row.basis === "memory" ? " Recalled, not published." : "";
  return `${capital(says.join("; "))}.${open}${held}${recalled}`;
}

function miss(f: Fit, exact: boolean): string {
  if (f.other) return `${f.quantity} agrees only with ${f.figure.text}, another figure given for it`;
  if (isNothing(f.difference)) return `${f.quantity} the same`;
  if (f.agrees && !exact) return `${f.quantity} agrees`;
  return `${f.quantity} ${offBy(-f.difference, f.quantity)} than yours`;
}

export function otherHold(fit: RowFit): string {
  return `Same figures, but held by ${holdWords[fit.ends[0]?.end.hold ?? "unknown"]}.`;
}

export function endIs(n: number, names: readonly string[], closest: RowFit | undefined): string {
  const which = n === 0 ? "The first end" : "The second end";
  if (names.length > 0) return `${which} agrees with ${some(names, 4, "or")}.`;
  if (closest === undefined) return `${which} can be compared with nothing in the chart.`;
  return `${which} agrees with nothing in the chart. The nearest is ${closest.row.row.name}: ${misses(closest)}`;
}

/** How to tell sizes apart by one measure; lengths are as the chart has them. */
export function tellApart(
  measure: TellApart["measure"],
  end: number | undefined,
  options: readonly { name: string; value: string }[],
  measured: boolean,
  gap: number,
): string {
  const which = end === undefined ? "" : end === 0 ? " of the first end" : " of the second end";
  const all = list(
    options.slice(0, 6).map((o) => `${o.name}: ${o.value}`),
    "or",
  );
  const more = options.length > 6 ? `; and ${options.length - 6} more` : "";
  if (measure === "hold")
    return `Look how it${end === undefined ? "" : end === 0 ? "s first end" : "s second end"} is held. ${all}${more}.`;
  if (!measured) return `Measure the ${measure}${which}. ${all}${more}.`;
  if (gap < 0.3)
    return `They differ most in the ${measure}${which}, by ${both(gap)}, which a caliper can hardly tell. ${all}${more}.`;
  return `Measure the ${measure}${which} again, with a caliper and clean parts. ${all}${more}.`;
}
