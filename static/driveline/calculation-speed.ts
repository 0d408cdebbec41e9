// The speed at which a shaft begins to whirl, the speed it runs at, the longest shaft of a tube and the tube for a length.
import { criticalCurve, criticalSpeed, longestShaft, type Material, tubeFor } from "./critical";
import type { Finding, Kit, Values } from "./description";
import type * as frame from "./frame";
import { inputs, num, word } from "./given";
import * as ranges from "./given-ranges";
import { plot } from "./plot";
import { groundOf } from "./print";
import { roadSpeedFromEngine, shaftSpeedFromEngine, shaftSpeedFromRoad } from "./shaft-speed";
import { say, speed as words } from "./speech-speed";
import { revPerMinute } from "./units";

declare const CapspanDriveline: typeof frame; // left by driveline.js

const from = (way: string) => (values: Values) => word(values, "from") === way;
const material = (values: Values): Material => (word(values, "material") === "aluminium" ? "aluminium" : "steel");

/** The speed the shaft runs at, rad/s. */
function running(values: Values, kit: Kit): number {
  switch (word(values, "from")) {
    case "engine":
      return kit.take(shaftSpeedFromEngine(engineOf(values))).speed;
    case "road":
      return kit.take(
        shaftSpeedFromRoad({ road: num(values, "road"), tyre: num(values, "tyre"), axle: num(values, "axle") }),
      ).speed;
    default:
      return num(values, "speed");
  }
}

function engineOf(values: Values) {
  return { engine: num(values, "engine"), gear: num(values, "gear"), transfer: num(values, "transfer") };
}

function runs(values: Values, kit: Kit): Finding {
  const way = word(values, "from");
  const speed = running(values, kit);
  const lines = [
    kit.line("speed", say.speed, "speed", speed, way === "engine" ? "shaft-speed-engine" : "shaft-speed-road"),
  ];
  if (way === "engine" && values["tyre"] !== undefined && values["axle"] !== undefined) {
    const road = kit.take(
      roadSpeedFromEngine({ ...engineOf(values), tyre: num(values, "tyre"), axle: num(values, "axle") }),
    );
    lines.push(kit.line("road", say.road, "velocity", road.road, "shaft-speed-road"));
  }
  return { lines };
}

function tubeOf(values: Values) {
  return { outside: num(values, "outside"), wall: num(values, "wall"), material: material(values) };
}

function critical(values: Values, kit: Kit): Finding {
  const found = kit.take(criticalSpeed({ ...tubeOf(values), length: num(values, "length"), speed: 0 }));
  return {
    lines: [
      kit.line("critical", say.critical, "speed", found.speed, "critical-speed"),
      kit.line("half", say.half, "speed", found.half, "half-critical"),
      kit.line("mass", say.mass, "mass", found.mass, "tube-mass"),
      ...found.constants.map((c) => ({
        ...kit.line(`by-${c.id}`, say.constant(kit.says(c.says)), "speed", c.speed, ""),
        source: [groundOf(c)],
      })),
    ],
  };
}

function working(values: Values, kit: Kit): Finding {
  const speed = running(values, kit);
  const length = num(values, "length");
  const found = kit.take(criticalSpeed({ ...tubeOf(values), length, speed }));
  const lines = [kit.line("fraction", say.fraction, "number", found.fraction, "", 3)];
  const allowed = found.allowed.map((a) => ({
    ...a,
    value: a.speed,
    unit: "rad/s" as const,
    says: say.share(a.value, kit.says(a.says)),
  }));
  const limits = kit.limits(say.speed, "speed", [{ of: "", base: speed }], allowed);
  const near = Math.abs(speed / found.half - 1) < nearHalf;
  return {
    lines,
    limits,
    says: near ? [say.nearHalf] : [],
    pictures: [curve(values, kit, speed, found.speed)],
  };
}

/** Steady running is told to be near half the critical speed within this share of it: our judgement. */
const nearHalf = 0.1;

function curve(values: Values, kit: Kit, speed: number, at: number) {
  const length = num(values, "length");
  const range = { from: Math.max(ranges.length.least, length * 0.6), to: Math.min(ranges.length.most, length * 1.6) };
  const { length: lengths, speed: speeds } = kit.take(criticalCurve({ ...tubeOf(values), ...range, points: 61 }));
  const [unit] = kit.units("length");
  const rpm = (x: number) => x / revPerMinute;
  const top = Math.max(speed, at) * 1.6;
  return plot({
    id: "critical",
    title: say.plot.title,
    x: { label: say.plot.x(unit.sign), from: unit.fromBase(range.from), to: unit.fromBase(range.to) },
    y: { label: say.plot.y, from: 0, to: rpm(top) },
    curves: [
      { label: say.critical, points: lengths.map((l, n): [number, number] => [unit.fromBase(l), rpm(speeds[n] ?? 0)]) },
      {
        label: say.half,
        dashed: true,
        points: lengths.map((l, n): [number, number] => [unit.fromBase(l), rpm((speeds[n] ?? 0) / 2)]),
      },
    ],
    mark: { x: unit.fromBase(length), y: rpm(speed), label: say.plot.here },
    head: [say.plot.x(unit.sign), say.critical, say.half],
    digits: [unit.name === "in" ? 1 : 0, 0],
    every: 5,
  });
}

function longest(values: Values, kit: Kit): Finding {
  const found = kit.take(longestShaft({ ...tubeOf(values), speed: running(values, kit) }));
  return {
    lines: [
      kit.line("longest", say.longest, "length", found.atCritical, "critical-speed", 0),
      ...found.allowed.map((a) => ({
        ...kit.line(`longest-${a.id}`, say.longestAt(a.value, kit.says(a.says)), "length", a.length, "", 0),
        source: [groundOf(a)],
      })),
    ],
  };
}

function tube(values: Values, kit: Kit): Finding {
  const found = kit.take(
    tubeFor({
      length: num(values, "length"),
      wall: num(values, "wall"),
      material: material(values),
      speed: running(values, kit),
    }),
  );
  return {
    lines: [
      kit.line("tube", say.tube, "length", found.atCritical, "tube-for-length", 1),
      ...found.allowed.map((a) => ({
        ...kit.line(`tube-${a.id}`, say.tubeAt(a.value, kit.says(a.says)), "length", a.outside, "", 1),
        source: [groundOf(a)],
      })),
    ],
  };
}

const shaft = inputs("shaft");
const runningAt = inputs("running");
const lengths = ["mm", "in"];

/** What the running speed needs: with the engine, tyre and axle only tell the road speed besides. */
const needsSpeed =
  (...more: string[]) =>
  (values: Values) => [
    ...more,
    ...(from("engine")(values) ? ["engine", "gear", "transfer"] : ["speed", "road", "tyre", "axle"]),
  ];

CapspanDriveline.add({
  name: "speed",
  words,
  example: "outside=76.2mm&wall=2.1mm&length=1450mm&from=engine&engine=4500rpm&gear=0.8&tyre=320mm&axle=4.1",
  places: { outside: "outside", wall: "wall", length: "length", speed: "speed", to: "length" },
  inputs: [
    shaft.number("outside", "length", ranges.outside, lengths),
    shaft.number("wall", "length", ranges.wall, lengths),
    shaft.choice("material", ["steel", "aluminium"]),
    shaft.number("length", "length", ranges.length, ["mm", "in", "m", "ft"]),
    runningAt.choice("from", ["given", "engine", "road"]),
    runningAt.number("speed", "speed", ranges.turning, ["rpm", "Hz"], { when: from("given") }),
    runningAt.number("engine", "speed", ranges.turning, ["rpm"], { when: from("engine") }),
    runningAt.number("gear", "number", ranges.ratio, [""], { when: from("engine") }),
    runningAt.number("transfer", "number", ranges.ratio, [""], { preset: "1", when: from("engine") }),
    runningAt.number("road", "velocity", ranges.road, ["km/h", "mph"], { when: from("road") }),
    runningAt.number("tyre", "length", ranges.tyre, lengths, { when: (v) => !from("given")(v) }),
    runningAt.number("axle", "number", ranges.ratio, [""], { when: (v) => !from("given")(v) }),
  ],
  parts: [
    { id: "running", needs: needsSpeed(), when: (v) => !from("given")(v), reckon: runs },
    { id: "critical", needs: ["outside", "wall", "length"], reckon: critical },
    { id: "working", needs: needsSpeed("outside", "wall", "length"), reckon: working },
    { id: "longest", needs: needsSpeed("outside", "wall"), reckon: longest },
    { id: "tube", needs: needsSpeed("wall", "length"), reckon: tube },
  ],
});
