// What is said of one row beside the readings.
import type { Basis, Hold, Quantity, Tool } from "./types";
import type { Fit, RowFit } from "./agree";
import type { How } from "./estimate";
import type { Figure } from "./prepared";
import { basisWords, both, capital, holdWords, isNothing, list, ofEnd, offBy, some, toolWords } from "./speech-words";

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
  return `${f.quantity} ${offBy(-f.difference, f.quantity, f.measured.how.lead)} than yours`;
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

/** What a size would read: the chart's own digits and unit, and the other unit. */
export function printed(figure: Figure): string {
  const [first, second] = [both(figure.mm, "in"), both(figure.mm, "mm")].map((t) => t.replace(/^.*\(|\)$/g, ""));
  return `${figure.text} (${(figure.text.endsWith(" in") ? first : second) ?? ""})`;
}

interface Option {
  name: string;
  reads: string;
}

export function tellHolds(end: number | undefined, options: readonly Option[]): string {
  return `Look how it${end === undefined ? "" : end === 0 ? "s first end" : "s second end"} is held. ${would(options, (o) => `${o.name}: ${o.reads}`)}`;
}

/** One measure that is to tell sizes apart. */
export interface Told {
  quantity: Quantity;
  end: number | undefined; // named only when there are two
  how: How;
  options: readonly Option[];
  closest: readonly [string, string];
  apart: number; // of those two, mm
  measured: boolean; // that quantity was measured already
  able: boolean; // the tool in hand parts those two
  vague: boolean; // the chart's figures alone do not part them, whatever the tool
  better?: { tool: Tool; closest: boolean }; // the plainest tool that parts those two, or at least more of the others
}

export function tellLengths(told: Told): string {
  const { quantity, how, better } = told;
  const what = `the ${quantity}${ofEnd(told.end)}`;
  const two = told.options.length === 2;
  const reads = would(told.options, (o) => `${o.reads} if it is ${o.name}`, "It should read ");
  if (told.able) return `Measure ${what}${told.measured ? " again, three times and on clean parts" : ""}. ${reads}`;
  const gap = both(told.apart, how.lead);
  const measure = `Measure ${what}${told.measured ? " again" : ""}. ${reads}`;
  const lie = `${two ? "The two" : list(told.closest)} lie ${gap} apart`;
  const hand = `${toolWords[how.tool]} does not part that on a ${how.condition} joint`;
  if (better?.closest === true) return `${measure} ${lie}: take ${toolWords[better.tool]}, for ${hand}.`;
  const why = told.vague
    ? "the chart's own figures are not good enough to part that"
    : `no caliper or micrometer parts that on a ${how.condition} joint`;
  return two && better === undefined
    ? `They differ most in ${what}, by ${gap}, and ${why}. ${reads} Lay the new joint beside the old one and compare everything else.`
    : `${measure}${better === undefined ? "" : ` Take ${toolWords[better.tool]}, which parts more of them.`} ${lie}, and ${why}.`;
}

function would(options: readonly Option[], one: (o: Option) => string, before = ""): string {
  const more = options.length > 6 ? `; and ${options.length - 6} more` : "";
  return `${before}${list(options.slice(0, 6).map(one), "or")}${more}.`;
}

/** What the chart knows of the names of one size beside their figures. */
export interface Twins {
  hold: Hold;
  rows: readonly { name: string; table: string; basis: Basis; openHold: boolean; recalledHold: boolean }[];
}

export function twins(of: Twins): string {
  const names = list(of.rows.map((r) => r.name));
  const says = [`${names} are one size: no more caliper work parts them.`];
  if (new Set(of.rows.map((r) => r.table)).size > 1)
    says.push(`${capital(list(of.rows.map((r) => `${r.name} stands under “${r.table}”`)))}.`);
  if (new Set(of.rows.map((r) => r.basis)).size > 1)
    says.push(
      `The figures of ${list(of.rows.map((r, i) => `${i === 0 ? "" : "those of "}${r.name} are ${basisWords[r.basis].replace(/,.*/, "")}`))}.`,
    );
  const open = of.rows.filter((r) => r.openHold).map((r) => r.name);
  if (open.length > 0) says.push(`The chart does not know how ${list(open)} ${open.length > 1 ? "are" : "is"} held.`);
  const recalled = of.rows.filter((r) => r.recalledHold).map((r) => r.name);
  if (recalled.length > 0 && recalled.length < of.rows.length)
    says.push(`How ${list(recalled)} ${recalled.length > 1 ? "are" : "is"} held is only recalled.`);
  says.push(
    `Before ordering look at the joint itself: ${look[of.hold]}, a grease fitting or none, and what it is for.`,
  );
  return says.join(" ");
}

const look: Record<Hold, string> = {
  "outside-clip": "full round caps with a clip outside each, the kind and thickness of clip",
  "inside-clip": "the place and width of the groove, the kind and thickness of clip",
  plate: "the bolts of the plates and how they are locked",
  strap: "half-round bores, their tabs, and straps or U-bolts",
  wing: "the bolts and the key of the wings",
  injected: "the plastic and the groove it sits in",
  staked: "the bore and where the metal is peened",
  unknown: "how it is held, full round or half-round",
};
