// Quantities and the units they can be given in. Every factor is exact by definition or follows from exact ones.
//
// Base units: mm, degrees, rev/min, km/h, N.m, N, kg, kW, MPa, h, g.mm, and 1 for a plain number.

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
  | "hours"
  | "number";

export interface Unit {
  name: string; // as it stands in addresses and on the command line
  sign: string; // as it is printed
  quantity: Quantity;
  toBase: (value: number) => number;
  fromBase: (base: number) => number;
  digits: number; // decimals that are printed
}

// International inch of 1959; pound of 1959; standard gravity, CGPM 1901.
const inch = 25.4;
const pound = 0.45359237;
const gravity = 9.80665;
const poundForce = pound * gravity; // N
const horsepower = (550 * poundForce * inch * 12) / 1e6; // kW, of 550 ft.lbf/s
const degrees = 180 / Math.PI;

const times = (name: string, sign: string, quantity: Quantity, factor: number, digits: number): Unit => ({
  name,
  sign,
  quantity,
  toBase: (value) => value * factor,
  fromBase: (base) => base / factor,
  digits,
});

const rise = (name: string, sign: string, run: number): Unit => ({
  name,
  sign,
  quantity: "slope",
  toBase: (value) => Math.atan(value / run) * degrees,
  fromBase: (base) => Math.tan(base / degrees) * run,
  digits: 2,
});

const all: Unit[] = [
  times("mm", "mm", "length", 1, 2),
  times("in", "in", "length", inch, 3),
  times("m", "m", "length", 1000, 4),
  times("ft", "ft", "length", 12 * inch, 3),
  times("deg", "°", "angle", 1, 2),
  times("rad", "rad", "angle", degrees, 4),
  times("deg", "°", "slope", 1, 2),
  rise("mm/m", "mm/m", 1000),
  rise("in/ft", "in/ft", 12),
  times("rpm", "rev/min", "speed", 1, 0),
  times("Hz", "rev/s", "speed", 60, 2),
  times("km/h", "km/h", "velocity", 1, 1),
  times("mph", "mph", "velocity", (5280 * 12 * inch) / 1e6, 1),
  times("N.m", "N·m", "torque", 1, 1),
  times("lbf.ft", "lbf·ft", "torque", (poundForce * 12 * inch) / 1000, 1),
  times("lbf.in", "lbf·in", "torque", (poundForce * inch) / 1000, 0),
  times("N", "N", "force", 1, 0),
  times("kN", "kN", "force", 1000, 3),
  times("lbf", "lbf", "force", poundForce, 0),
  times("kgf", "kgf", "force", gravity, 1),
  times("kg", "kg", "mass", 1, 2),
  times("lb", "lb", "mass", pound, 2),
  times("kW", "kW", "power", 1, 1),
  times("hp", "hp", "power", horsepower, 1),
  times("MPa", "MPa", "stress", 1, 1),
  times("GPa", "GPa", "stress", 1000, 2),
  times("ksi", "ksi", "stress", (1000 * poundForce) / (inch * inch), 2),
  times("g.mm", "g·mm", "unbalance", 1, 1),
  times("oz.in", "oz·in", "unbalance", (pound * 1000 * inch) / 16, 4),
  times("h", "h", "hours", 1, 0),
  times("", "", "number", 1, 3),
];

/** The units of a quantity by name. */
export function unitOf(quantity: Quantity, name: string): Unit | undefined {
  return all.find((unit) => unit.quantity === quantity && unit.name === name);
}

/** The names of all units of a quantity. */
export function unitsOf(quantity: Quantity): string[] {
  return all.filter((unit) => unit.quantity === quantity).map((unit) => unit.name);
}
