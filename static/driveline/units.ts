// The units people use, as exact multiples of SI. Each factor is a definition, or is
// worked out here from definitions, never a rounded constant of a handbook.
//
//   inch             0.0254 m                         (international yard and pound agreement, 1959)
//   pound            0.453 592 37 kg                  (the same)
//   standard gravity 9.806 65 m/s²                    (3rd CGPM, 1901)
//   horsepower       550 ft·lbf/s;  metric: 75 kgf·m/s
//   mile             5280 ft;  kilometre per hour 1/3.6 m/s
import type { Si } from "./types";

export const inch = 0.0254;
export const foot = 12 * inch;
export const pound = 0.45359237;
export const gravity = 9.80665;
export const poundForce = pound * gravity;
export const degree = Math.PI / 180;
export const turn = 2 * Math.PI;
export const revPerMinute = turn / 60;
export const hour = 3600;
export const psi = poundForce / (inch * inch);
const kilogramForce = gravity;

/** Units by the SI unit they are a multiple of; the first of each is shown first. */
export const units = {
  m: { mm: 0.001, m: 1, in: inch, ft: foot },
  rad: { deg: degree, rad: 1, arcmin: degree / 60 },
  "rad/s": { "rev/min": revPerMinute, "rad/s": 1, Hz: turn },
  "rad/s2": { "rad/s²": 1 },
  "m/s": { "km/h": 1 / 3.6, "m/s": 1, "mile/h": (5280 * foot) / 3600, "mm/s": 0.001 },
  N: { N: 1, kN: 1000, lbf: poundForce },
  "N.m": {
    N·m: 1,
    lbf·ft: poundForce * foot,
    lbf·in: poundForce * inch,
    kgf·m: kilogramForce,
    kgf·cm: kilogramForce / 100,
    kN·m: 1000,
  },
  kg: { kg: 1, lb: pound, g: 0.001 },
  "kg.m": { g·mm: 1e-6, g·cm: 1e-5, oz·in: (pound / 16) * inch, kg·m: 1 },
  "kg.m2": { "kg·m²": 1, "lb·ft²": pound * foot * foot },
  "kg/m3": { "kg/m³": 1, "lb/in³": pound / inch ** 3 },
  Pa: { MPa: 1e6, GPa: 1e9, Pa: 1, psi, ksi: 1000 * psi },
  W: { kW: 1000, W: 1, hp: 550 * foot * poundForce, PS: 75 * kilogramForce },
  s: { h: hour, s: 1, min: 60 },
  "": { "": 1, "%": 0.01 },
} as const satisfies Record<Si, Record<string, number>>;

/** A number in the unit, turned into SI. The unit must be one of `units[si]`; null if it is not. */
export function toSi(x: number, unit: string, si: Si): number | null {
  const factor = factorOf(unit, si);
  return factor === undefined ? null : x * factor;
}

/** A number in SI, turned into the unit; null for a unit that is not of `units[si]`. */
export function fromSi(x: number, unit: string, si: Si): number | null {
  const factor = factorOf(unit, si);
  return factor === undefined ? null : x / factor;
}

function factorOf(unit: string, si: Si): number | undefined {
  const table: Record<string, unknown> = units[si] ?? {};
  const factor = table[unit];
  return typeof factor === "number" ? factor : undefined;
}
