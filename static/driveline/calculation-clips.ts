// Clips and fit: whether a joint floats or binds between its clips, which clips would do, and a cap in its bore.
import { type ClipHold, clipFloat, clipFor } from "./clips";
import type { Finding, Kit, Line, Values } from "./description";
import { type CapClass, capInBore, isoFit } from "./fits";
import type * as frame from "./frame";
import { inputs, maybe, num, word } from "./given";
import * as ranges from "./given-ranges";
import { groundOf } from "./print";
import { clips as words, say } from "./speech-clips";
import type { MeasuredLength } from "./types";

declare const CapspanDriveline: typeof frame; // left by driveline.js

const hold = (values: Values): ClipHold => (word(values, "hold") === "inside-clip" ? "inside-clip" : "outside-clip");
const floatFormula = (values: Values): string => `clip-float-${hold(values) === "inside-clip" ? "inside" : "outside"}`;
const measured = (values: Values, id: string, uncertainty: string): MeasuredLength => ({
  value: num(values, id),
  uncertainty: num(values, uncertainty),
});

function float(values: Values, kit: Kit): Finding {
  const other = maybe(values, "other");
  const found = kit.take(
    clipFloat({
      hold: hold(values),
      yoke: measured(values, "yoke", "within"),
      joint: measured(values, "joint", "within"),
      clip: measured(values, "clip", "clipwithin"),
      other: other === undefined ? null : measured(values, "other", "clipwithin"),
    }),
  );
  const lines = [
    kit.line("float", say.float, "length", found.float, floatFormula(values), 3),
    kit.line("float-uncertainty", say.uncertainty, "length", found.uncertainty, "float-uncertainty", 3),
    kit.line("binds", say.binds, "share", found.bindProbability, "float-uncertainty", 0),
  ];
  if (Math.abs(found.offCentre) > 1e-7)
    lines.push(kit.line("off-centre", say.offCentre, "length", found.offCentre, floatFormula(values), 3));
  return {
    lines,
    says: [say.state(found.state, kit.words("length", found.least, 3), kit.words("length", found.most, 3))],
    limits: kit.limits(say.float, "length", [{ of: "", base: found.float }], found.limits, 3),
  };
}

function choose(values: Values, kit: Kit): Finding {
  const found = kit.take(
    clipFor({
      hold: hold(values),
      yoke: measured(values, "yoke", "within"),
      joint: measured(values, "joint", "within"),
      float: num(values, "float"),
    }),
  );
  const lines: Omit<Line, "part">[] = [
    kit.line("thickness", say.thickness, "length", found.thickness, floatFormula(values), 3),
    {
      ...kit.line(
        "thickness-uncertainty",
        say.thicknessUncertainty,
        "length",
        found.uncertainty,
        floatFormula(values),
        3,
      ),
    },
  ];
  for (const set of found.sets) {
    const label = say.fromSet(kit.words("length", set.least, 3), kit.words("length", set.most, 3));
    const source = [groundOf(set)];
    if (set.choice !== null && set.float !== null)
      lines.push({
        ...kit.line(`set-${set.id}`, label, "length", set.choice, "", 3),
        formula: say.leaves(kit.words("length", set.float, 3)),
        source,
      });
    else
      lines.push({
        id: `set-${set.id}`,
        label,
        value: set.thicknesses.length === 0 ? say.rangeOnly : say.noneOfSet,
        unit: "",
        formula: "",
        source,
      });
  }
  return { lines, says: [say.bothSides] };
}

function bores(values: Values, kit: Kit): Finding {
  const list = ["bore1", "bore2"].filter((id) => values[id] !== undefined);
  const found = kit.take(
    capInBore({
      cap: measured(values, "cap", "capwithin"),
      bores: list.map((id) => measured(values, id, "capwithin")),
    }),
  );
  return {
    lines: found.bores.flatMap((bore, n) => [
      kit.line(`clearance-${n + 1}`, say.clearance(n + 1), "length", bore.clearance, "fit", 3),
      kit.line(`tight-${n + 1}`, say.tight(n + 1), "share", bore.tightProbability, "fit", 0),
    ]),
    limits: kit.limits(
      say.clearanceTitle,
      "length",
      found.bores.map((bore, n) => ({ of: say.bore(n + 1), base: bore.clearance })),
      found.limits,
      3,
    ),
    says: [say.press],
  };
}

function iso(values: Values, kit: Kit): Finding {
  const size = num(values, "size");
  const found = kit.take(isoFit({ size, cap: word(values, "class") as CapClass, bore: "H7" }));
  const between = (id: string, label: string, [least, most]: [number, number]): Omit<Line, "part"> => ({
    ...kit.line(id, label, "length", most, "fit", 3),
    value: say.between(kit.figure("length", least, 3).value, kit.figure("length", most, 3).value),
    also: say.between(kit.figure("length", least, 3).also ?? "", kit.figure("length", most, 3).also ?? ""),
    source: [groundOf(found.ground)],
  });
  return {
    lines: [
      between("iso-cap", say.isoCap, found.cap),
      between("iso-bore", say.isoBore, found.bore),
      between("iso-clearance", say.isoClearance, found.clearance),
    ],
    says: [say.isoUse(kit.ground(found.use))],
  };
}

const across = inputs("across");
const fit = inputs("fit");
const lengths = ["mm", "in"];

CapspanDriveline.add({
  name: "clips",
  words,
  example: "hold=inside-clip&yoke=41.35mm&joint=37.617mm&clip=1.5mm&cap=27.00mm&bore1=26.92mm&bore2=26.80mm&size=27mm",
  places: {
    yoke: "yoke",
    joint: "joint",
    clip: "clip",
    other: "other",
    cap: "cap",
    bores: "bore1",
    size: "size",
    float: "float",
  },
  inputs: [
    across.choice("hold", ["outside-clip", "inside-clip"]),
    across.number("yoke", "length", ranges.acrossYoke, lengths),
    across.number("joint", "length", ranges.acrossYoke, lengths),
    across.number("within", "length", ranges.uncertainty, lengths, { preset: "0.05" }),
    across.number("clip", "length", ranges.clip, lengths),
    across.number("other", "length", ranges.clip, lengths, { optional: true }),
    across.number("clipwithin", "length", ranges.uncertainty, lengths, { preset: "0.01" }),
    across.number("float", "length", ranges.float, lengths, { preset: "0.02" }),
    fit.number("cap", "length", ranges.cap, lengths),
    fit.number("bore1", "length", ranges.cap, lengths),
    fit.number("bore2", "length", ranges.cap, lengths, { optional: true }),
    fit.number("capwithin", "length", ranges.uncertainty, lengths, { preset: "0.02" }),
    fit.number("size", "length", ranges.fitSize, lengths, { optional: true }),
    fit.choice("class", ["h6", "h7"]),
  ],
  parts: [
    { id: "float", needs: ["yoke", "joint", "within", "clip", "clipwithin"], reckon: float },
    { id: "choose", needs: ["yoke", "joint", "within", "float"], reckon: choose },
    { id: "bores", needs: ["cap", "bore1", "capwithin"], reckon: bores },
    { id: "iso", needs: ["size"], reckon: iso },
  ],
});
