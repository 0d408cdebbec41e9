// How much unbalance a shaft may have, and which grade an unbalance amounts to.
import { gradeOfUnbalance, permissibleUnbalance } from "./balance";
import type { Finding, Kit, Values } from "./description";
import type * as frame from "./frame";
import { inputs, num } from "./given";
import * as ranges from "./given-ranges";
import { groundOf } from "./print";
import { balance as words, say } from "./speech-balance";

declare const CapspanDriveline: typeof frame; // left by driveline.js

function permissible(values: Values, kit: Kit): Finding {
  const speed = num(values, "speed");
  const found = kit.take(permissibleUnbalance({ grade: num(values, "grade"), mass: num(values, "mass"), speed }));
  const formula = "permissible-unbalance";
  return {
    lines: [
      kit.line("unbalance", say.unbalance, "unbalance", found.unbalance, formula),
      kit.line("plane", say.plane, "unbalance", found.plane, formula),
      kit.line("eccentricity", say.eccentricity, "length", found.eccentricity, formula, 4),
      ...found.grades.map((g) => ({
        ...kit.line(g.id, say.grade(g.grade, kit.says(g.says)), "unbalance", g.unbalance, ""),
        source: [groundOf(g)],
      })),
    ],
    says: speed < found.speedBelow.value ? [say.slow(kit.words("speed", found.speedBelow.value))] : [],
  };
}

function measured(values: Values, kit: Kit): Finding {
  const [unbalance, mass, speed] = [num(values, "unbalance"), num(values, "mass"), num(values, "speed")];
  const found = kit.take(gradeOfUnbalance({ unbalance, mass, speed }));
  const { grades } = kit.take(permissibleUnbalance({ grade: num(values, "grade"), mass, speed }));
  const limits = grades.map((g) => ({
    id: g.id,
    of: "grade",
    bound: "most" as const,
    unit: "" as const,
    value: g.grade,
    ...groundOf(g),
    says: g.says,
  }));
  return {
    lines: [kit.line("grade", say.amounts, "number", found.grade, "permissible-unbalance", 1)],
    limits: kit.limits(say.gradeTitle, "number", [{ of: "", base: found.grade }], limits, 1),
  };
}

const shaft = inputs("shaft");

CapspanDriveline.add({
  name: "balance",
  words,
  example: "grade=16&mass=6kg&speed=3600rpm&unbalance=300g.mm",
  places: { grade: "grade", mass: "mass", speed: "speed", unbalance: "unbalance" },
  inputs: [
    shaft.number("mass", "mass", ranges.mass, ["kg", "lb"]),
    shaft.number("speed", "speed", ranges.turning, ["rpm", "Hz"]),
    shaft.number("grade", "number", ranges.grade, [""], { preset: "16" }),
    shaft.number("unbalance", "unbalance", ranges.unbalance, ["g.mm", "g.cm", "oz.in"], { optional: true }),
  ],
  parts: [
    { id: "permissible", needs: ["mass", "speed", "grade"], reckon: permissible },
    { id: "measured", needs: ["mass", "speed", "unbalance"], reckon: measured },
  ],
});
