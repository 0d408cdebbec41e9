// Quantities and the units they can be given in. Every factor is exact by definition or follows from exact ones.
//
// Base units are those of the calculations, SI: m, rad, rad/s, m/s, N.m, N, kg, W, Pa, kg.m, s, and 1 for a number.

import type { Si } from "./types";
import { fromSi, gravity, type units } from "./units";

export type Quantity =
  | "length"
  | "angle"
  | "slope" // an inclination: degrees, or so much rise over so much run
  | "speed"
  | "velocity"
  | "torque"
  | "force"
  | "mass"
  | "power"
  | "stress"
  | "unbalance"
  | "time"
  | "acceleration"
  | "inertia"
  | "number"
  | "share"; // a plain number, as per cent

export interface Unit {
  name: string; // as it stands in addresses and on the command line
  sign: string; // as it is printed
  quantity: Quantity;
  toBase: (value: number) => number;
  fromBase: (base: number) => number;
  digits: number; // decimals that are printed
}

type Labels<K extends Si> = keyof (typeof units)[K] & string;

/** A unit as exact multiple of SI; `label` is what units.ts calls it. */
function times<K extends Si>(
  name: string,
  quantity: Quantity,
  si: K,
  label: Labels<K>,
  digits: number,
  sign?: string,
): Unit {
  const factor = fromSi(1, label, si) ?? Number.NaN;
  return {
    name,
    sign: sign ?? label,
    quantity,
    toBase: (value) => value / factor,
    fromBase: (base) => base * factor,
    digits,
  };
}

const rise = (name: string, run: number): Unit => ({
  name,
  sign: name,
  quantity: "slope",
  toBase: (value) => Math.atan(value / run),
  fromBase: (base) => Math.tan(base) * run,
  digits: 2,
});

/** The weight of so many kilograms, as a weighbridge shows it. */
const weight: Unit = {
  name: "kg",
  sign: "kg",
  quantity: "force",
  toBase: (value) => value * gravity,
  fromBase: (base) => base / gravity,
  digits: 0,
};

const plain = times("", "number", "", "", 3);

const all: Unit[] = [
  times("mm", "length", "m", "mm", 2),
  times("in", "length", "m", "in", 3),
  times("m", "length", "m", "m", 4),
  times("ft", "length", "m", "ft", 3),
  times("deg", "angle", "rad", "deg", 2, "°"),
  times("deg", "slope", "rad", "deg", 2, "°"),
  rise("mm/m", 1000),
  rise("in/ft", 12),
  times("rpm", "speed", "rad/s", "rev/min", 0),
  times("Hz", "speed", "rad/s", "Hz", 2, "rev/s"),
  times("km/h", "velocity", "m/s", "km/h", 1),
  times("mph", "velocity", "m/s", "mile/h", 1, "mph"),
  times("rad/s2", "acceleration", "rad/s2", "rad/s²", 0),
  times("N.m", "torque", "N.m", "N·m", 1),
  times("lbf.ft", "torque", "N.m", "lbf·ft", 1),
  times("lbf.in", "torque", "N.m", "lbf·in", 0),
  times("kgf.m", "torque", "N.m", "kgf·m", 2),
  times("N", "force", "N", "N", 0),
  times("kN", "force", "N", "kN", 3),
  times("lbf", "force", "N", "lbf", 0),
  weight,
  times("kg", "mass", "kg", "kg", 2),
  times("lb", "mass", "kg", "lb", 2),
  times("kW", "power", "W", "kW", 1),
  times("hp", "power", "W", "hp", 1),
  times("PS", "power", "W", "PS", 1),
  times("MPa", "stress", "Pa", "MPa", 1),
  times("GPa", "stress", "Pa", "GPa", 1),
  times("ksi", "stress", "Pa", "ksi", 2),
  times("g.mm", "unbalance", "kg.m", "g·mm", 1),
  times("g.cm", "unbalance", "kg.m", "g·cm", 1),
  times("oz.in", "unbalance", "kg.m", "oz·in", 3),
  times("h", "time", "s", "h", 0),
  times("kg.m2", "inertia", "kg.m2", "kg·m²", 3),
  times("lb.ft2", "inertia", "kg.m2", "lb·ft²", 2),
  plain,
  times("%", "share", "", "%", 2),
];

/** The two units a quantity is printed in, metric first; one where both systems share it. */
const printed: Record<Quantity, [string, string?]> = {
  length: ["mm", "in"],
  angle: ["deg"],
  slope: ["deg"],
  speed: ["rpm"],
  velocity: ["km/h", "mph"],
  acceleration: ["rad/s2"],
  torque: ["N.m", "lbf.ft"],
  force: ["N", "lbf"],
  mass: ["kg", "lb"],
  power: ["kW", "hp"],
  stress: ["MPa", "ksi"],
  unbalance: ["g.mm", "oz.in"],
  time: ["h"],
  inertia: ["kg.m2", "lb.ft2"],
  number: [""],
  share: ["%"],
};

/** The system a unit belongs to; angles, revolutions and plain numbers to none. */
export function systemOf(unit: string): System | undefined {
  if (["in", "ft", "in/ft", "mph", "lbf.ft", "lbf.in", "lbf", "lb", "hp", "ksi", "oz.in", "lb.ft2"].includes(unit))
    return "inch";
  if (
    [
      "mm",
      "m",
      "mm/m",
      "km/h",
      "N.m",
      "kgf.m",
      "N",
      "kN",
      "kg",
      "kW",
      "PS",
      "MPa",
      "GPa",
      "g.mm",
      "g.cm",
      "kg.m2",
    ].includes(unit)
  )
    return "metric";
  return undefined;
}

export type System = "metric" | "inch";

/** The units a quantity is printed in, those of the leading system first. */
export function printedUnits(quantity: Quantity, lead: System): [Unit, Unit?] {
  const [metric, inch] = printed[quantity].map((name) => all.find((u) => u.quantity === quantity && u.name === name));
  const first = metric ?? plain;
  if (inch === undefined) return [first];
  return lead === "metric" ? [first, inch] : [inch, first];
}

/** The units of a quantity by name. */
export function unitOf(quantity: Quantity, name: string): Unit | undefined {
  return all.find((unit) => unit.quantity === quantity && unit.name === name);
}

/** The names of all units of a quantity. */
export function unitsOf(quantity: Quantity): string[] {
  return all.filter((unit) => unit.quantity === quantity).map((unit) => unit.name);
}
