// Figures of a slip in plain text, both units always.
import type { Estimate, Unit } from "../matcher/types";
import { inch } from "../matcher/reading";
import { local } from "../matcher/speech-number";
import type { Cell, SlipRow } from "./chart";
import { slipWords as say } from "words:order";

/** A measured length with its uncertainty, rounded away from zero so that it is never made smaller:
 *  "1.1870 ± 0.0020 in (30.15 ± 0.05 mm)". */
export function measured(e: Pick<Estimate, "value" | "uncertainty">, lead: Unit): string {
  const [first, second] = lead === "in" ? [inches(e), millimetres(e)] : [millimetres(e), inches(e)];
  return `${first} (${second})`;
}

function millimetres(e: Pick<Estimate, "value" | "uncertainty">): string {
  return local(`${e.value.toFixed(2)} ± ${up(e.uncertainty, 2)} mm`);
}

function inches(e: Pick<Estimate, "value" | "uncertainty">): string {
  return local(`${(e.value / inch).toFixed(4)} ± ${up(e.uncertainty / inch, 4)} in`);
}

// A hundredth of the last digit is forgiven: 0.05 is not to become 0.06 by the way computers hold it.
function up(x: number, digits: number): string {
  const scale = 10 ** digits;
  return (Math.ceil(x * scale - 0.01) / scale).toFixed(digits);
}

/** The chart's own digits with the converted ones: "1.188 in (≈ 30.18 mm)". */
export function figure(cell: Cell): string {
  return cell.converted ? local(`${cell.text} (≈ ${cell.converted})`) : cell.text;
}

/** Why a figure is believed: "published: Some list, 1984". */
export function evidence(cell: Cell): string {
  const from = (cell.from ?? []).join("; ");
  return [cell.basis ?? "", from].filter((t) => t !== "").join(": ");
}

/** A figure with its faces, its evidence, and what else is printed or said of it. */
export function whole(cell: Cell): string {
  const note = cell.note ? `, ${cell.note}` : "";
  const why = evidence(cell);
  const others = (cell.others ?? []).map((o) => `; ${say.elsewhere} ${figure(o)}${evidenceOf(o)}`).join("");
  return `${figure(cell)}${note}${why ? ` [${why}]` : ""}${others}`;
}

function evidenceOf(cell: Cell): string {
  const why = evidence(cell);
  return why ? ` [${why}]` : "";
}

/** A row in one line, both units: "cap 1.062 in (≈ 26.97 mm), across 3.625 in (≈ 92.08 mm), clip outside". */
export function lineOf(row: SlipRow): string {
  return row.ends.map((end) => say.line(figure(end.cap), figure(end.across), end.hold.text)).join("; ");
}

/** The rows of a size by what they print: names under which the same figures stand, with those figures in one line. */
export function printings(rows: readonly SlipRow[]): { names: string[]; line: string }[] {
  const lines = rows.map(lineOf);
  return [...new Set(lines)].map((line) => {
    const same = rows.filter((_, n) => lines[n] === line);
    return { line, names: [...new Set(same.flatMap((row) => [row.id, ...row.also]))] };
  });
}
