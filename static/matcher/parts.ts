// Identifying in a table without joints: splines, flanges, shaft ends, whatever the head
// of a table declares (tables/match.go). A bundle of its own for its own pages.
//
//   understand -> measure each column -> fit every row -> verdict
//
//   goal      name a row only when the readings leave no other and the chart may claim it
//   non-goal  weighing one row against another: several that agree are several
import type { Unit, Verdict } from "./types";
import type { PartAnswer, PartColumn, PartFound, PartReading, PartTable } from "./part-types";
import { leadUnit, type How } from "./estimate";
import { wornPart } from "./given-parts";
import { chordFactor, holeSign } from "./part-circle";
import { fitParts, type PartRowFit, type TakenPart } from "./part-fit";
import { combined, measureInside, measureOutside, measurePitch, type Length } from "./part-measure";
import { holeKey, holesOf, understandPart, type AskedPart } from "./part-query";
import * as gum from "./gum";
import { otherChart } from "./speech-part-query";
import * as say from "./speech-parts";

export { chordFactor } from "./part-circle";
export { decodePart, encodePart } from "./part-address";
export { parseReading } from "./reading";

/** How many rows that do not match are named. */
const mostNear = 3;

/** A count that is further off was not miscounted. */
const mostMiscounted = 2;

/** identifyPart never throws for anything in the query; it does for a table of another format. */
export function identifyPart(table: PartTable, query: unknown): PartAnswer {
  if (table.format !== 1) throw new Error(otherChart());
  const asked = understandPart(table, query);
  const answer: PartAnswer = {
    verdict: "measure-again",
    says: { head: "", because: [], next: [] },
    rows: [],
    near: [],
    readings: [],
    complaints: asked.complaints,
    cautions: [...table.cautions],
    chart: { version: table.version },
  };
  const lead = leadUnit([...asked.lengths.values(), asked.hole].flat());
  if (asked.complaints.length > 0) return measureAgain(answer, say.unreadable(), [say.putRight()]);
  const measured = measure(table, asked, lead, answer);
  if (measured.taken.length === 0)
    return measureAgain(answer, say.nothingYet(), [say.measureAll(table.columns.map((c) => c.label))]);
  if (measured.troubles.length > 0) return measureAgain(answer, say.cannotBelong(), measured.troubles);
  conclude(table, asked, measured, lead, answer);
  return answer;
}

function measureAgain(answer: PartAnswer, head: string, next: string[]): PartAnswer {
  answer.says.head = head;
  answer.says.next = next;
  return answer;
}

// ---- measuring

interface MeasuredPart {
  taken: TakenPart[];
  troubles: string[];
  doubts: PartColumn[]; // of which a reading was set aside that may be right
  once: PartColumn[]; // of which there is one reading
}

function measure(table: PartTable, asked: AskedPart, lead: Unit, answer: PartAnswer): MeasuredPart {
  const how: How = { tool: asked.tool, condition: asked.condition, lead };
  const out: MeasuredPart = { taken: [], troubles: [], doubts: [], once: [] };
  for (const column of table.columns) {
    const counted = asked.counts.get(column.id);
    if (counted !== undefined) {
      out.taken.push({ column, value: counted, standard: 0, dof: Infinity });
      answer.readings.push(readingOf(column, [String(counted)], counted, say.counted()));
      continue;
    }
    const readings = asked.lengths.get(column.id);
    if (readings === undefined) continue;
    const length =
      column.match === "inside"
        ? measureInside(readings, how)
        : column.match === "circle"
          ? pitch(asked, how)(readings)
          : measureOutside(readings, how);
    if (length.trouble) out.troubles.push(say.spreadTooFar(column.label, length.spread, lead));
    if (length.doubt) out.doubts.push(column);
    if (readings.length === 1) out.once.push(column);
    const value = column.match === "circle" ? circle(table, asked, how, length, lead, out) : plain(length, lead);
    out.taken.push({ column, value: value.mm, standard: value.standard, dof: value.dof });
    const { used, setAside } = length.estimate;
    const uncertainty = gum.coverage(0.95, value.dof) * value.standard;
    answer.readings.push({
      ...readingOf(column, used, value.mm, value.why),
      setAside,
      uncertainty,
      unit: "mm",
    });
  }
  return out;
}

function readingOf(column: PartColumn, used: string[], value: number, why: string): PartReading {
  return { column: column.id, label: column.label, used, setAside: [], value, uncertainty: 0, unit: "", why };
}

interface Value {
  mm: number;
  standard: number;
  dof: number;
  why: string;
}

function plain(length: Length, lead: Unit): Value {
  const { used, setAside } = length.estimate;
  const uncertainty = gum.coverage(0.95, length.dof) * length.standard;
  return { ...length, why: say.why(used.length, setAside.length, uncertainty, length.largest, lead) };
}

// Outer edges are read with inside jaws, inner edges with outside jaws over what stands between.
function pitch(asked: AskedPart, how: How): (readings: Parameters<typeof measurePitch>[0]) => Length {
  return (readings) =>
    asked.edges === "outer"
      ? measureInside(readings, how)
      : asked.edges === "inner"
        ? measureOutside(readings, how)
        : measurePitch(readings, how);
}

function circle(table: PartTable, asked: AskedPart, how: How, edges: Length, lead: Unit, out: MeasuredPart): Value {
  const sign = holeSign(asked.edges);
  const hole = sign === 0 ? undefined : measureInside(asked.hole, how);
  if (hole?.trouble) out.troubles.push(say.spreadTooFar(holeKey, hole.spread, lead));
  const holes = asked.counts.get(holesOf(table)?.id ?? "") ?? 2;
  const factor = chordFactor(holes, asked.between);
  const centres = edges.mm + sign * (hole?.mm ?? 0);
  const known = combined(hole === undefined ? [edges] : [edges, hole]);
  const chord = { holes, between: asked.between, edges: asked.edges, factor, centres, circle: centres / factor };
  const { used, setAside } = edges.estimate;
  const standard = known.standard / factor;
  const good = say.why(used.length, setAside.length, gum.coverage(0.95, known.dof) * standard, edges.largest, lead);
  const why = `${say.fromChord(hole === undefined ? chord : { ...chord, hole: hole.mm }, lead)} ${good}`;
  return { mm: chord.circle, standard, dof: known.dof, why };
}

// ---- concluding

function conclude(table: PartTable, asked: AskedPart, measured: MeasuredPart, lead: Unit, answer: PartAnswer): void {
  const fits = fitParts(table, measured.taken);
  const left = fits.filter((f) => f.agrees).sort(nearestFirst);
  const rest = fits.filter((f) => !f.agrees && f.fits.length + f.without.length > 0).sort(nearestFirst);
  answer.rows = left.map((f) => found(f, lead));
  // Beside rows that agree only those that miss by a hair are worth a word.
  answer.near = rest
    .filter((f) => left.length === 0 || f.near)
    .slice(0, mostNear)
    .map((f) => found(f, lead));
  const { says } = answer;
  const [first] = left;
  if (first === undefined) {
    answer.verdict = "not-in-chart";
    says.head = say.notInChart(table);
    noneFits(rest, asked, lead, answer);
    return;
  }
  for (const fit of first.fits) {
    if (fit.taken.column.belowText !== undefined) says.because.push(say.nominal(fit.taken.column));
  }
  if (left.length > 1) {
    answer.verdict = "between";
    says.head = say.between(
      left.map((f) => f.row),
      table,
    );
    says.next.push(...apart(table, left, measured.taken), say.lookAlike());
    return;
  }
  const doubts = doubtsOf(first, rest, measured);
  const [doubt] = doubts;
  const verdict: Verdict = doubt === undefined ? "identified" : "possible";
  answer.verdict = verdict;
  says.head = doubt === undefined ? say.identified(first.row, table) : say.possible(first.row, table, doubt);
  says.because.push(...doubts.slice(1).map(say.furtherDoubt));
  const steps = doubts.map(say.settle).filter((s) => s !== undefined);
  if (measured.once.length > 0) steps.push(say.secondReading(measured.once.map((c) => c.label)));
  says.next.push(...new Set(steps), say.lookAlike());
}

// The order of rows in the table decides nothing: what is as near as another goes by its name.
function nearestFirst(a: PartRowFit, b: PartRowFit): number {
  const off = (f: PartRowFit): number => Math.round(f.away * 1e6); // what differs by rounding alone is as near
  return off(a) - off(b) || (a.row.ref < b.row.ref ? -1 : a.row.ref > b.row.ref ? 1 : 0);
}

function found(fit: PartRowFit, lead: Unit): PartFound {
  return {
    ref: fit.row.ref,
    name: say.called(fit.row),
    basis: fit.fits.length === 0 ? "memory" : fit.basis,
    compared: fit.fits.map((f) => f.compared),
    because: say.because(fit, lead),
  };
}

// What stands between the one row left and naming it, the gravest first.
function doubtsOf(row: PartRowFit, rest: readonly PartRowFit[], measured: MeasuredPart): say.PartDoubt[] {
  const out: say.PartDoubt[] = [];
  const labels = (columns: readonly PartColumn[]): string[] => columns.map((c) => c.label);
  if (row.unmeasured.length > 0) out.push({ kind: "unmeasured", labels: labels(row.unmeasured) });
  else if (row.fits.length < 2) out.push({ kind: "one-column", label: row.fits[0]?.compared.label ?? "" });
  const [aside] = measured.doubts;
  if (aside !== undefined) out.push({ kind: "set-aside", label: aside.label });
  const close = rest.filter((f) => f.near).map((f) => say.called(f.row));
  if (close.length > 0) out.push({ kind: "near-row", names: close });
  const edge = row.fits.find((f) => f.edge);
  if (edge !== undefined) out.push({ kind: "edge", label: edge.compared.label });
  // Of one the tool is to blame, of the other the chart.
  const [vague, coarse] = [true, false].map((chart) => row.fits.find((f) => f.coarse && f.digits === chart));
  if (coarse !== undefined) out.push({ kind: "coarse", label: coarse.compared.label });
  if (vague !== undefined)
    out.push({ kind: "chart-digits", label: vague.compared.label, text: vague.compared.chartText });
  if (row.unknown.length > 0) out.push({ kind: "no-figure", labels: labels(row.unknown) });
  const other = row.fits.find((f) => f.other);
  if (other !== undefined) out.push({ kind: "other-figure", label: other.compared.label });
  if (row.basis === "memory") out.push({ kind: "memory" });
  return out;
}

// Where nothing agrees: whether one thing alone is off, and how it might have come about. Told, never applied.
function noneFits(rest: readonly PartRowFit[], asked: AskedPart, lead: Unit, answer: PartAnswer): void {
  const { says } = answer;
  for (const row of rest.slice(0, mostNear)) {
    const off = row.fits.filter((f) => !f.compared.agrees);
    const [one] = off;
    if (one === undefined || off.length > 1 || row.without.length > 0 || row.fits.length < 2) continue;
    const { column, value } = one.taken;
    const under = -one.compared.difference;
    if (column.match === "exact") {
      if (Math.abs(one.compared.difference) > mostMiscounted) continue;
      says.because.push(say.miscounted(row.row, column.label, value, one.compared.chartText));
      says.next.push(say.countAgain());
    } else if (column.match === "outside" && under > 0 && under - one.compared.uncertainty <= wornPart) {
      says.because.push(say.short(row.row, column.label, under, lead));
      if (asked.condition !== "worn") says.next.push(say.unworn());
    }
  }
  says.next = [...new Set(says.next), say.checkTable()];
}

// The first column that parts all rows left and was not measured; else what the table says beside.
function apart(table: PartTable, left: readonly PartRowFit[], taken: readonly TakenPart[]): string[] {
  const column = table.columns.find(
    (c) => !taken.some((t) => t.column.id === c.id) && parts(left.map((f) => figureText(f, c.id))),
  );
  if (column !== undefined)
    return [
      say.tellApart(
        column.label,
        expect(left, (f) => figureText(f, column.id)),
        true,
      ),
    ];
  const labels = (left[0]?.row.beside ?? []).map((b) => b.label);
  const label = labels.find((l) => parts(left.map((f) => besideText(f, l))));
  if (label === undefined) return [say.nothingTells()];
  return [
    say.tellApart(
      label,
      expect(left, (f) => besideText(f, label)),
      false,
    ),
  ];
}

function parts(texts: readonly string[]): boolean {
  return new Set(texts).size > 1;
}

function expect(left: readonly PartRowFit[], text: (f: PartRowFit) => string): [string, string][] {
  return left.slice(0, 6).map((f) => [say.called(f.row), text(f)]);
}

function figureText(fit: PartRowFit, column: string): string {
  const value = fit.row.values[column];
  return typeof value === "object" ? value.text : (value ?? "unknown");
}

function besideText(fit: PartRowFit, label: string): string {
  return fit.row.beside.find((b) => b.label === label)?.text ?? "unknown";
}
