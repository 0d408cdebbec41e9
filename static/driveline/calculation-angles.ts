// The angles of a shaft of one, two or three joints: what each joint runs at, what unevenness is left at the driven end,
// what others allow, and what to change.
import { angleAtSpeed } from "./angle-speed";
import { compoundAngle } from "./compound";
import { corrections } from "./correct";
import type { Finding, Kit, LimitLine, Values } from "./description";
import * as ranges from "./given-ranges";
import type * as frame from "./frame";
import { inputs, maybe, num, word } from "./given";
import type { Attitude } from "./inclination";
import { plot } from "./plot";
import { groundOf, pretty } from "./print";
import { shaftAngles, shaftCurve, type ShaftInput } from "./shaft";
import { shaftDrawing } from "./shaft-drawing";
import { angles as words, say } from "./speech-angles";
import type { Ground } from "./types";

declare const CapspanDriveline: typeof frame; // left by driveline.js

const joints = (values: Values): number => Number(word(values, "joints"));
const several = (values: Values): boolean => joints(values) > 1;
const three = (values: Values): boolean => joints(values) > 2;

const shaft = inputs("shaft");
const plan = inputs("plan");
const turn = inputs("turn");
const change = inputs("change");
const slope = ["deg", "mm/m", "in/ft"];

/** The members from the driving end, by the ids of their inputs. */
function members(values: Values): string[] {
  return ["gearbox", ...(several(values) ? ["shaft"] : []), ...(three(values) ? ["rear"] : []), "axle"];
}

function chainOf(values: Values): Pick<ShaftInput, "members" | "yokes"> {
  const read = word(values, "read") === "projected" ? "projected" : "level";
  const list = members(values);
  return {
    members: list.map((id): Attitude => ({ side: num(values, id), plan: num(values, `${id}plan`), read })),
    yokes: ["turn", "turn2"].slice(0, list.length - 2).map((id) => num(values, id)),
  };
}

function shaftOf(values: Values): ShaftInput {
  return { ...chainOf(values), speed: maybe(values, "speed") ?? 0, inertia: maybe(values, "inertia") ?? 0 };
}

function angles(values: Values, kit: Kit): Finding {
  const input = shaftOf(values);
  const found = kit.take(shaftAngles(input));
  const of = found.joints.length;
  const lines = found.joints.map((joint, n) =>
    kit.line(`joint-${n + 1}`, say.joint(n + 1, of), "angle", joint.angle, "compound-exact"),
  );
  if (of > 1) {
    lines.push(kit.line("equality", say.equality, "angle", found.equality, ""));
    lines.push({ ...kit.line("residual", say.residual, "angle", found.residual.angle, "chain-exact", 3), lead: true });
    lines.push(kit.line("residual-shop", say.residualShop, "angle", found.residualShop, "chain-shop", 3));
  }
  lines.push(kit.line("fluctuation", say.fluctuation, "share", found.residual.fluctuation, "joint-fluctuation", 4));
  const own = (id: string) => found.limits.filter((limit) => limit.of === id);
  const one = (base: number) => [{ of: "", base }];
  const each = found.joints.map((joint, n) => ({ of: of === 1 ? "" : say.short(n + 1), base: joint.angle }));
  const phases = found.phase.flatMap((p, n) =>
    p === null ? [] : [{ of: of > 2 ? say.shaft(n + 1) : "", base: Math.abs(p) }],
  );
  const limits = [
    ...kit.limits(say.jointAngle, "angle", each, own("angle"), 2),
    ...kit.limits(say.equality, "angle", one(found.equality), own("equality"), 2),
    ...kit.limits(say.phase, "angle", phases, own("phase"), 2),
    ...kit.limits(say.fluctuation, "share", one(found.residual.fluctuation), own("fluctuation"), 4),
  ];
  const drawn = members(values).map((id) => ({
    name: say.member[id] ?? id,
    side: num(values, id),
    plan: num(values, `${id}plan`),
  }));
  const drawing = { ...say.drawing, angle: (radians: number) => kit.words("angle", radians, 1) };
  return {
    lines,
    limits,
    says: [...shopForms(values, kit), ...planes(found.planes, kit)],
    pictures: [shaftDrawing(drawn, drawing)],
  };
}

/** What the shop's forms make of each joint that is turned in both views. */
function shopForms(values: Values, kit: Kit): string[] {
  const { members: list } = chainOf(values);
  return list.slice(1).flatMap((driven, n) => {
    const driving = list[n];
    if (driving === undefined || driven.plan === driving.plan || driven.side === driving.side) return [];
    const { shop } = kit.take(compoundAngle({ driving, driven }));
    return [
      say.shopForms(
        n + 1,
        shop.map((s) => `${pretty(kit.says(s.says))}: ${kit.words("angle", s.angle, 3)} (${kit.ground(s)})`),
      ),
    ];
  });
}

function planes(list: readonly (number | null)[], kit: Kit): string[] {
  return list.flatMap((plane, n) =>
    plane === null || Math.abs(plane) < 1e-4 ? [] : [say.plane(n + 1, kit.words("angle", plane, 1))],
  );
}

function turnOver(values: Values, kit: Kit): Finding {
  const curve = kit.take(shaftCurve({ ...chainOf(values), points: 97 }));
  const degrees = curve.rotation.map((r) => (r * 180) / Math.PI);
  const swing = Math.max(0.01, ...curve.ratios.flat().map((r) => Math.abs(r - 1) * 100)) * 1.15;
  const names = members(values).slice(1);
  const picture = plot({
    id: "turn",
    title: say.turn.title(names.map((id) => say.member[id] ?? id)),
    x: { label: say.turn.x, from: 0, to: 360 },
    y: { label: say.turn.y, from: -swing, to: swing },
    curves: curve.ratios.map((ratios, n) => ({
      label: say.member[names[n] ?? ""] ?? "",
      dashed: n < curve.ratios.length - 1,
      points: ratios.map((ratio, i): [number, number] => [degrees[i] ?? 0, (ratio - 1) * 100]),
    })),
    head: [say.turn.x, ...names.map((id) => say.member[id] ?? id)],
    digits: [0, 3],
    every: 8,
  });
  const first = kit.line("joint-ratio", say.ratio, "number", Math.max(...(curve.ratios[0] ?? [])), "joint-ratio", 5);
  return { lines: [first], pictures: [picture] };
}

function accelerations(values: Values, kit: Kit): Finding {
  const found = kit.take(shaftAngles(shaftOf(values)));
  const of = found.inertia.length;
  const exact = "joint-acceleration";
  const lines = [
    { ...kit.line("torsional", say.torsional, "acceleration", found.residual.acceleration, exact, 1), lead: true },
    kit.line(
      "torsional-small",
      say.small,
      "acceleration",
      found.residual.accelerationSmall,
      "joint-acceleration-small",
      1,
    ),
  ];
  const own = (id: string) => found.limits.filter((limit) => limit.of === id);
  const limits = kit.limits(
    say.torsional,
    "acceleration",
    [{ of: "", base: found.residual.acceleration }],
    own("acceleration"),
    1,
  );
  for (const way of ["drive", "coast"] as const) {
    found.inertia.forEach((each, n) => {
      const value = each[way].acceleration;
      lines.push(kit.line(`${way}-${n + 1}`, say[way](n + 1, of), "acceleration", value, exact, 1));
    });
    const all = found.inertia.map((each, n) => ({
      of: of === 1 ? "" : say.shaft(n + 1),
      base: each[way].acceleration,
    }));
    limits.push(...kit.limits(say[way](0, 0), "acceleration", all, own(`inertia.${way}`), 1));
  }
  if (maybe(values, "inertia"))
    lines.push({
      ...kit.line("inertia-torque", say.inertiaTorque, "torque", found.inertiaTorque, ""),
      formula: say.inertiaFormula,
    });
  return { lines, limits };
}

/** The greatest angle each chart allows at this speed, beside the greatest of the shaft's joints. */
function atSpeed(values: Values, kit: Kit): Finding {
  const { charts, series } = kit.take(angleAtSpeed({ speed: num(values, "speed") }));
  const { joints: all } = kit.take(shaftAngles(shaftOf(values)));
  const most = Math.max(...all.map((joint) => joint.angle));
  const row = (says: string, angle: number | null, ground: Ground): Omit<LimitLine, "part"> => ({
    of: say.greatest,
    limit: angle === null ? say.beyond : say.atMost(kit.words("angle", angle)),
    says,
    stands: [
      {
        of: "",
        value: kit.words("angle", most),
        met: angle === null ? "not known" : most <= angle ? "within" : "above",
      },
    ],
    source: [groundOf(ground)],
  });
  return {
    lines: [],
    limits: charts.map((c) => row(kit.says(c.says), c.angle, c)),
    says: [
      say.chartRule,
      say.series(
        series.map((one) => [one.id, one.angle === null ? null : kit.words("angle", one.angle, 1)]),
        series[0] ? kit.ground(series[0].source) : "",
      ),
    ],
  };
}

function whatToChange(values: Values, kit: Kit): Finding {
  const ids = members(values);
  const found = kit.take(
    corrections({
      ...chainOf(values),
      most: num(values, "aim"),
      bases: ids.map((id) => maybe(values, `${id}base`) ?? null),
      lengths: ids.map((id) => maybe(values, `${id}length`) ?? null),
    }),
  );
  if (found.residual <= num(values, "aim"))
    return { lines: [], says: [say.nothingToChange(kit.words("angle", found.residual, 3))] };
  // With the joint centres where they are, a shaft cannot be tilted: only what it hangs on can.
  const changes = found.changes.filter(
    (c) => (c.kind !== "side" && c.kind !== "plan") || c.at === 0 || c.at === ids.length - 1,
  );
  const best = changes.filter((c) => c.reaches || changes.every((other) => !other.reaches));
  const says = best.slice(0, mostChanges).map((c) => say.change(c, ids, kit.words));
  return { lines: [], says: says.length > 0 ? [say.oneOf, ...says, say.afterwards] : [say.noChange] };
}

/** More ways than these help nobody to choose. */
const mostChanges = 6;

const slopeAt = (id: string, when?: (values: Values) => boolean) =>
  shaft.number(id, "slope", ranges.inclination, slope, when ? { when } : {});
const planAt = (id: string, when?: (values: Values) => boolean) =>
  plan.number(`${id}plan`, "slope", ranges.plan, slope, { preset: "0", ...(when ? { when } : {}) });

CapspanDriveline.add({
  name: "angles",
  words,
  example: "gearbox=3deg&shaft=7.5deg&axle=2deg&speed=1500rpm&aim=0.5deg&axlebase=120mm",
  places: { members: "gearbox", yokes: "turn", speed: "speed", inertia: "inertia", most: "aim", bases: "axlebase" },
  inputs: [
    shaft.choice("joints", ["2", "1", "3"]),
    slopeAt("gearbox"),
    slopeAt("shaft", several),
    slopeAt("rear", three),
    slopeAt("axle"),
    shaft.number("speed", "speed", ranges.turning, ["rpm", "Hz"], { optional: true }),
    plan.choice("read", ["level", "projected"]),
    planAt("gearbox"),
    planAt("shaft", several),
    planAt("rear", three),
    planAt("axle"),
    turn.number("turn", "angle", ranges.yokeTurn, ["deg"], { preset: "0", when: several }),
    turn.number("turn2", "angle", ranges.yokeTurn, ["deg"], { preset: "0", when: three }),
    turn.number("inertia", "inertia", ranges.inertia, ["kg.m2", "lb.ft2"], { optional: true }),
    change.number("aim", "angle", ranges.jointAngle, ["deg"], { preset: "0", when: several }),
    change.number("gearboxbase", "length", ranges.base, ["mm", "in"], { optional: true, when: several }),
    change.number("axlebase", "length", ranges.base, ["mm", "in"], { optional: true, when: several }),
    change.number("shaftlength", "length", ranges.length, ["mm", "in"], { optional: true, when: three }),
    change.number("rearlength", "length", ranges.length, ["mm", "in"], { optional: true, when: three }),
  ],
  parts: [
    { id: "angles", needs: ["gearbox", "shaft", "rear", "axle"], reckon: angles },
    { id: "turn", needs: ["gearbox", "shaft", "rear", "axle"], reckon: turnOver },
    { id: "acceleration", needs: ["gearbox", "shaft", "rear", "axle", "speed"], reckon: accelerations },
    { id: "speed", needs: ["gearbox", "shaft", "rear", "axle", "speed"], reckon: atSpeed },
    { id: "change", needs: ["gearbox", "shaft", "rear", "axle"], when: several, reckon: whatToChange },
  ],
});
