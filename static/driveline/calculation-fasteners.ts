// How tight: what the chart has published for the thread first, then the general formula, and what may be used again.
import type { Finding, Kit, Line, Values } from "./description";
import { type Grade, type PublishedTorque, tightening } from "./fasteners";
import type * as frame from "./frame";
import { inputs, word } from "./given";
import { groundOf, number } from "./print";
import { fasteners as words, say } from "./speech-fasteners";
import type { SourceKey } from "./sources";
import type { Ground } from "./types";
import { inch } from "./units";

declare const CapspanDriveline: typeof frame; // left by driveline.js

function found(values: Values, kit: Kit) {
  return kit.take(
    tightening({
      thread: word(values, "thread"),
      grade: word(values, "grade") as Grade,
      condition: word(values, "condition") === "oiled" ? "oiled" : "dry",
      series: word(values, "series"),
      published: kit.chart.fasteners ?? [],
    }),
  );
}

function published(values: Values, kit: Kit): Finding {
  const { published: rows } = found(values, kit);
  return {
    lines: rows.map((row) => lineOf(row, kit)),
    says: rows.length === 0 ? [say.noRow] : [say.first],
  };
}

function lineOf(row: PublishedTorque, kit: Kit): Omit<Line, "part"> {
  const least = kit.figure("torque", row.least, 0);
  const most = kit.figure("torque", row.most, 0);
  const span = (a: string | undefined, b: string | undefined) =>
    a === b || a === undefined ? b : say.span(a, b ?? "");
  const line = {
    id: row.id,
    label: say.row(row.item, row.series),
    value: span(least.value, most.value) ?? "",
    unit: least.unit,
    formula: "",
    source: groundsOf(row),
  };
  const also = span(least.also?.split(" ")[0], most.also);
  return also === undefined ? line : { ...line, also };
}

function groundsOf(row: PublishedTorque): Ground[] {
  const basis = row.ground.basis as Ground["basis"];
  if (row.ground.source.length === 0) return [{ basis, source: "" }];
  return row.ground.source.map((source) => ({ basis, source: source as SourceKey }));
}

function byFormula(values: Values, kit: Kit): Finding {
  const t = found(values, kit);
  const area = t.area * 1e6;
  return {
    lines: [
      kit.line("torque", say.torque, "torque", t.torque, "tightening-torque"),
      kit.line("preload", say.preload, "force", t.preload, "tightening-torque", 0),
      {
        ...kit.said(
          "area",
          say.area,
          number(area, 1),
          word(values, "thread").trim().toUpperCase().startsWith("M") ? "stress-area-metric" : "stress-area-inch",
        ),
        unit: "mm²",
        also: `${number(t.area / inch ** 2, 4)} in²`,
      },
      { ...kit.line("proof", say.proof, "stress", t.proof, "", 0), source: [groundOf(t.proofGround)] },
      kit.line("factor", say.factor, "number", t.factor, "tightening-torque", 2),
    ],
    says: [say.general],
  };
}

function reuse(values: Values, kit: Kit): Finding {
  return { lines: [], says: found(values, kit).reuse.map((r) => say.rule(kit.says(r.says), kit.ground(r))) };
}

const bolt = inputs("bolt");

CapspanDriveline.add({
  name: "fasteners",
  words,
  example: "thread=3%2F8-24&grade=SAE-8&series=1710",
  places: { thread: "thread", grade: "grade" },
  inputs: [
    bolt.text("thread", 20),
    bolt.choice("grade", ["SAE-8", "SAE-5", "8.8", "10.9", "12.9"]),
    bolt.choice("condition", ["dry", "oiled"]),
    bolt.text("series", 20, { optional: true }),
  ],
  parts: [
    { id: "published", needs: ["thread"], reckon: published },
    { id: "formula", needs: ["thread"], reckon: byFormula },
    { id: "reuse", needs: ["thread"], reckon: reuse },
  ],
});
