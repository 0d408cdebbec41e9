// What a shaft has to carry, and what that does to its tube, its joints and its bearings.
import { angleFactor, secondaryCouple, splineThrust } from "./couple";
import type { Finding, Kit, Values } from "./description";
import type * as frame from "./frame";
import { inputs, maybe, num, word } from "./given";
import * as ranges from "./given-ranges";
import { groundOf } from "./print";
import { say, torque as words } from "./speech-torque";
import { lowGearTorque, wheelSlipTorque } from "./torque";
import { torsion } from "./torsion";

declare const CapspanDriveline: typeof frame; // left by driveline.js

type By = "low-gear" | "slip" | "smaller" | "given";

const by = (values: Values) => word(values, "by") as By;
const given = (values: Values) => by(values) === "given";
const machine = (values: Values) => word(values, "machine") !== "no";

function lowGearOf(values: Values, kit: Kit) {
  return kit.take(
    lowGearTorque({
      engine: num(values, "engine"),
      rated: word(values, "rated") === "gross" ? "gross" : "net",
      gearbox: word(values, "gearbox") === "automatic" ? "automatic" : "manual",
      gear: num(values, "gear"),
      stall: maybe(values, "stall") ?? 1,
      transfer: maybe(values, "transfer") ?? null,
    }),
  ).by;
}

function slipOf(values: Values, kit: Kit) {
  const [load, tyre, axle] = [num(values, "load"), num(values, "tyre"), num(values, "axle")];
  return kit.take(
    wheelSlipTorque({ load, tyre, axle, friction: num(values, "friction"), efficiency: num(values, "efficiency") }),
  );
}

/** The torque the parts after it reckon with, N·m: by several sources' factors it is the greatest. */
function carried(values: Values, kit: Kit): number {
  const lowGear = () => Math.max(...lowGearOf(values, kit).map((one) => one.torque));
  switch (by(values)) {
    case "low-gear":
      return lowGear();
    case "slip":
      return slipOf(values, kit).torque;
    case "smaller":
      return Math.min(lowGear(), slipOf(values, kit).torque);
    default:
      return num(values, "torque");
  }
}

const lowGearNeeds = ["engine", "gear"];
const slipNeeds = ["load", "tyre", "axle", "friction", "efficiency"];

/** What the torque needs, by where it comes from. */
const needs =
  (...more: string[]) =>
  (values: Values): string[] => {
    const way = by(values);
    return [
      ...(way === "given" ? ["torque"] : []),
      ...(way === "low-gear" || way === "smaller" ? lowGearNeeds : []),
      ...(way === "slip" || way === "smaller" ? slipNeeds : []),
      ...more,
    ];
  };

function lowGear(values: Values, kit: Kit): Finding {
  const list = lowGearOf(values, kit);
  return {
    lines: list.map((one) => ({
      ...kit.line(`low-gear-${one.id}`, say.lowGear(one.id), "torque", one.torque, "low-gear-torque", 0),
      source: [groundOf(one)],
    })),
    says: [...list.map((one) => say.factors(one.id, kit.says(one.says))), say.differ],
  };
}

function slip(values: Values, kit: Kit): Finding {
  const found = slipOf(values, kit);
  return {
    lines: [
      kit.line("slip", say.slip, "torque", found.torque, "wheel-slip-torque", 0),
      kit.line("slip-published", say.slipPublished, "torque", found.published, "wheel-slip-torque", 0),
    ],
    says: [say.choose],
  };
}

function rating(values: Values, kit: Kit): Finding {
  const torque = carried(values, kit);
  const row = word(values, "row").trim();
  const lines = [kit.line("carried", say.carried, "torque", torque, "", 0)];
  const says: string[] = [];
  const own = maybe(values, "rating");
  if (own !== undefined) {
    lines.push({ ...kit.line("share", say.share, "share", torque / own, "", 1), formula: say.shareFormula });
    says.push(say.ownRating);
  }
  const { rows, ratings = [] } = kit.chart;
  const known = rows === undefined || row === "" || rows.some((name) => name.toLowerCase() === row.toLowerCase());
  const published = ratings.filter((r) => r.row.toLowerCase() === row.toLowerCase());
  for (const r of published) says.push(say.published(row, kit.words("torque", r.torque, 0)));
  if (!known) says.push(say.noRow(row));
  else if (published.length === 0) says.push(say.noRating(row));
  return { lines, says };
}

function tube(values: Values, kit: Kit): Finding {
  const torque = carried(values, kit);
  const length = maybe(values, "length");
  const found = kit.take(
    torsion({
      outside: num(values, "outside"),
      wall: num(values, "wall"),
      length: length ?? 1,
      torque,
      shearModulus: num(values, "shear"),
      yield: num(values, "yield"),
    }),
  );
  return {
    lines: [
      kit.line("stress", say.stress, "stress", found.stress, "tube-torsion"),
      kit.line("stress-thin", say.stressThin, "stress", found.stressThin, "tube-thin"),
      kit.line("torque-mises", say.torqueMises, "torque", found.torqueMises, "shear-yield", 0),
      kit.line("torque-tresca", say.torqueTresca, "torque", found.torqueTresca, "shear-yield", 0),
      kit.line("share-mises", say.shareMises, "share", found.shareMises, "shear-yield", 1),
      kit.line("share-tresca", say.shareTresca, "share", found.shareTresca, "shear-yield", 1),
      ...(length === undefined ? [] : [kit.line("twist", say.twist, "angle", found.twist, "tube-torsion")]),
    ],
    says: [say.steady],
  };
}

function couple(values: Values, kit: Kit): Finding {
  const torque = carried(values, kit);
  const angle = num(values, "angle");
  const found = kit.take(secondaryCouple({ torque, angle, radius: num(values, "radius") }));
  const lines = [
    kit.line("on-driving", say.onDriving, "torque", found.onDriving, "secondary-couple"),
    kit.line("on-driven", say.onDriven, "torque", found.onDriven, "secondary-couple"),
    kit.line("torque-most", say.torqueMost, "torque", found.torqueMost, "secondary-couple"),
    kit.line("trunnion", say.trunnion, "force", found.trunnion, "trunnion-load", 0),
  ];
  const spline = maybe(values, "spline");
  if (spline !== undefined)
    for (const one of kit.take(splineThrust({ torque, angle, radius: spline })).by)
      lines.push({
        ...kit.line(`thrust-${one.id}`, say.thrust(one.id), "force", one.thrust, "spline-thrust", 0),
        source: [groundOf(one)],
      });
  return { lines };
}

function machineJoint(values: Values, kit: Kit): Finding {
  const bearing = word(values, "machine") === "plain" ? "plain" : "needle";
  const angle = num(values, "angle");
  const found = kit.take(angleFactor({ torque: carried(values, kit), angle, bearing }));
  if (found.factor === null || found.torque === null || found.at === null) return { lines: [], says: [say.beyond] };
  return {
    lines: [
      kit.line(
        "factor",
        say.factor(kit.words("angle", found.at, 0)),
        "number",
        found.factor,
        "machine-joint-factor",
        2,
      ),
      kit.line("rated", say.rated, "torque", found.torque, "machine-joint-factor"),
    ],
  };
}

const carry = inputs("carry");
const engine = inputs("engine");
const wheels = inputs("wheels");
const shaft = inputs("shaft");
const joint = inputs("joint");
const torques = ["N.m", "lbf.ft", "lbf.in", "kgf.m"];
const lengths = ["mm", "in"];

CapspanDriveline.add({
  name: "torque",
  words,
  example:
    "by=smaller&engine=150N.m&gear=3.6&load=1200kg&tyre=320mm&axle=4.1&outside=76.2mm&wall=2.1mm&yield=250MPa&length=1450mm&angle=5.5deg&radius=30mm&row=1310",
  places: { engine: "engine", gear: "gear", wall: "wall", outside: "outside", angle: "angle", load: "load" },
  inputs: [
    carry.choice("by", ["low-gear", "slip", "smaller", "given"]),
    carry.number("torque", "torque", ranges.torqueAbove, torques, { when: given }),
    carry.text("row", 40, { optional: true }),
    carry.number("rating", "torque", ranges.torqueAbove, torques, { optional: true }),
    engine.number("engine", "torque", ranges.torque, torques),
    engine.choice("rated", ["net", "gross"]),
    engine.choice("gearbox", ["manual", "automatic"]),
    engine.number("gear", "number", ranges.ratio, [""]),
    engine.number("stall", "number", ranges.stall, [""], {
      preset: "1",
      when: (v) => word(v, "gearbox") === "automatic",
    }),
    engine.number("transfer", "number", ranges.ratio, [""], { optional: true }),
    wheels.number("load", "force", ranges.axleLoad, ["kg", "N", "kN", "lbf"]),
    wheels.number("tyre", "length", ranges.tyre, lengths),
    wheels.number("axle", "number", ranges.ratio, [""]),
    wheels.number("friction", "number", ranges.friction, [""], { preset: "0.71" }),
    wheels.number("efficiency", "number", ranges.efficiency, [""], { preset: "0.95" }),
    shaft.number("outside", "length", ranges.outside, lengths),
    shaft.number("wall", "length", ranges.wall, lengths),
    shaft.number("yield", "stress", ranges.strength, ["MPa", "ksi"]),
    shaft.number("shear", "stress", ranges.modulus, ["GPa", "MPa"], { preset: "80" }),
    shaft.number("length", "length", ranges.length, lengths, { optional: true }),
    joint.number("angle", "angle", ranges.jointAngle, ["deg"]),
    joint.number("radius", "length", ranges.armRadius, lengths),
    joint.number("spline", "length", ranges.armRadius, lengths, { optional: true }),
    joint.choice("machine", ["no", "needle", "plain"]),
  ],
  parts: [
    { id: "low-gear", needs: lowGearNeeds, reckon: lowGear },
    { id: "slip", needs: slipNeeds, reckon: slip },
    { id: "rating", needs: needs(), reckon: rating },
    { id: "tube", needs: needs("outside", "wall", "yield", "shear"), reckon: tube },
    { id: "couple", needs: needs("angle", "radius"), reckon: couple },
    { id: "machine", needs: needs("angle"), when: machine, reckon: machineJoint },
  ],
});
