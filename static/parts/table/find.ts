// What is looked for in a table in groups: which groups can hold it, and which of their lines do. Pure functions; the
// page part is in groups.ts.
import { mmPerInch } from "../identify/lengths";
import { figure, rowFits, type Filter, type RowFigures } from "./filter";

/** Least and greatest, mm; null where nothing is said. */
export interface Span {
  from: number | null;
  to: number | null;
}

export interface Wanted {
  text: Filter;
  hold: string; // as the chart calls it; "" for any
  cap: Span;
  across: Span;
}

/** A group as the table's page has it. */
export interface Group {
  millimetre: number | null; // of its caps; null: not known, or none
  holds: string[];
  across: Span; // of all its sizes; nothing where none is known
}

/** A line of a group's page. */
export interface Line extends RowFigures {
  holds: string[];
}

/** Reads a length in mm or in; null for an empty field, undefined for what is no length. */
export function parseLength(text: string, unit: string): number | null | undefined {
  if (text.trim() === "") return null;
  const value = figure(text);
  if (value === null) return undefined;
  return unit === "in" ? value * mmPerInch : value;
}

/** Nothing is asked for at all. */
export function asksNothing({ text, hold, cap, across }: Wanted): boolean {
  const ends = [cap.from, cap.to, across.from, across.to];
  return text.size === null && text.words.length === 0 && hold === "" && ends.every((end) => end === null);
}

// The name of a size rounds its cap to a tenth, so a group holds caps that much below its millimetre.
const rounded = 0.05;

/** A group that need not be read holds nothing that fits. */
export function groupCan(wanted: Wanted, group: Group): boolean {
  if (wanted.hold !== "" && !group.holds.includes(wanted.hold)) return false;
  const { from, to } = wanted.across;
  if (from !== null || to !== null) {
    if (group.across.from === null || group.across.to === null) return false;
    if (!meet(group.across.from, group.across.to, wanted.across)) return false;
  }
  const capped = wanted.cap.from !== null || wanted.cap.to !== null;
  if (group.millimetre === null) return !capped && wanted.text.size === null;
  const [least, greatest] = [group.millimetre - rounded, group.millimetre + 1];
  if (capped && !meet(least, greatest, wanted.cap)) return false;
  if (!wanted.text.size) return true;
  const [cap] = wanted.text.size;
  return [cap, cap * mmPerInch].some((mm) => {
    const room = Math.max(0.1, 0.01 * mm); // more than the filter allows
    return meet(least, greatest, { from: mm - room, to: mm + room });
  });
}

function meet(least: number, greatest: number, { from, to }: Span): boolean {
  return (from === null || greatest >= from) && (to === null || least <= to);
}

export function lineFits(wanted: Wanted, line: Line): boolean {
  if (wanted.hold !== "" && !line.holds.includes(wanted.hold)) return false;
  if (!rowFits(wanted.text, line)) return false;
  const cap = (mm: number) => meet(mm, mm, wanted.cap);
  const across = (mm: number) => meet(mm, mm, wanted.across);
  const asksCap = wanted.cap.from !== null || wanted.cap.to !== null;
  const asksAcross = wanted.across.from !== null || wanted.across.to !== null;
  if (asksCap && asksAcross && line.caps.length === line.acrosses.length) {
    return line.caps.some((mm, n) => cap(mm) && across(line.acrosses[n] ?? Number.NaN)); // of one end
  }
  return (!asksCap || line.caps.some(cap)) && (!asksAcross || line.acrosses.some(across));
}
