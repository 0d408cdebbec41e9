// How long the needles of a joint last, by the two forms in use. Their ratings mean different things, so each is a part
// with an input of its own.
import { local } from "../matcher/speech-number";
import type { Finding, Kit, Line, Values } from "./description";
import type * as frame from "./frame";
import { inputs, num } from "./given";
import * as ranges from "./given-ranges";
import { type Life, lifeByCapacity, lifeByRating, ratingForLife } from "./life";
import { life as words, say } from "./speech-life";

declare const CapspanDriveline: typeof frame; // left by driveline.js

const load = (values: Values) => ({
  torque: num(values, "torque"),
  angle: num(values, "angle"),
  speed: num(values, "speed"),
  shock: num(values, "shock"),
});

function linesOf(found: Life, id: string, formula: string, kit: Kit): Omit<Line, "part">[] {
  const times = { halfAngle: say.halfAngle, halfTorque: say.halfTorque, halfSpeed: say.halfSpeed };
  return [
    kit.line(id, say.life, "time", found.life, formula),
    kit.line(`${id}-mean`, say.mean, "time", found.mean, formula),
    kit.line(`${id}-cubic`, say.cubic, "time", found.cubic, formula),
    ...(["halfAngle", "halfTorque", "halfSpeed"] as const).map((key) =>
      kit.line(`${id}-${key}`, times[key], "number", found.sensitivity[key], formula, 2),
    ),
  ];
}

function rated(values: Values, kit: Kit): Finding {
  const found = kit.take(lifeByRating({ ...load(values), rating: num(values, "rating") }));
  const counted = found.angle > num(values, "angle") ? [say.counts(kit.words("angle", found.angle, 0))] : [];
  return {
    lines: linesOf(found, "rated", "life-by-rating", kit),
    says: [
      ...counted,
      say.ratedBasis,
      say.shocks(found.shocks.map((s) => `${kit.says(s.says)} ${local(String(s.value))} (${kit.ground(s)})`)),
    ],
  };
}

function capacity(values: Values, kit: Kit): Finding {
  const found = kit.take(lifeByCapacity({ ...load(values), capacity: num(values, "capacity") }));
  return { lines: linesOf(found, "capacity", "life-by-capacity", kit), says: [say.capacityBasis] };
}

function wanted(values: Values, kit: Kit): Finding {
  const found = kit.take(ratingForLife({ ...load(values), life: num(values, "life") }));
  return {
    lines: [
      kit.line("rating-for", say.ratingFor, "torque", found.rating, "life-by-rating", 0),
      kit.line("capacity-for", say.capacityFor, "torque", found.capacity, "life-by-capacity", 0),
    ],
    says: [say.notComparable],
  };
}

const work = inputs("work");
const joint = inputs("joint");
const torques = ["N.m", "lbf.ft", "lbf.in", "kgf.m"];
const needs = ["torque", "angle", "speed", "shock"];

CapspanDriveline.add({
  name: "life",
  words,
  example: "torque=220N.m&angle=5.5deg&speed=1500rpm&shock=1.25&rating=600N.m&life=2000h",
  places: {
    torque: "torque",
    angle: "angle",
    speed: "speed",
    shock: "shock",
    rating: "rating",
    capacity: "capacity",
    life: "life",
  },
  inputs: [
    work.number("torque", "torque", ranges.torqueAbove, torques),
    work.number("angle", "angle", ranges.bentAngle, ["deg"]),
    work.number("speed", "speed", ranges.turning, ["rpm", "Hz"]),
    work.number("shock", "number", ranges.shock, [""], { preset: "1" }),
    joint.number("rating", "torque", ranges.torqueAbove, torques, { optional: true }),
    joint.number("capacity", "torque", ranges.torqueAbove, torques, { optional: true }),
    joint.number("life", "time", ranges.life, ["h"], { optional: true }),
  ],
  parts: [
    { id: "rated", needs: [...needs, "rating"], reckon: rated },
    { id: "capacity", needs: [...needs, "capacity"], reckon: capacity },
    { id: "wanted", needs: [...needs, "life"], reckon: wanted },
  ],
});
