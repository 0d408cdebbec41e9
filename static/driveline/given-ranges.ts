// Plausible ranges of what a person types, both ends allowed. All are our judgement: wide
// enough for a model steam engine and a mine truck, narrow enough to find an inch typed
// for a millimetre in most places.
import type { Range } from "./types";
import { degree, hour, revPerMinute } from "./units";

const range = (least: number, most: number, unit: Range["unit"]): Range => ({ least, most, unit });

// ---- angles and turning
export const jointAngle = range(0, 60 * degree, "rad");
export const bentAngle = range(0.1 * degree, 60 * degree, "rad"); // where a straight joint has no answer
export const inclination = range(-80 * degree, 80 * degree, "rad");
export const plan = range(-80 * degree, 80 * degree, "rad");
export const yokeTurn = range(-180 * degree, 180 * degree, "rad");
export const rotation = range(-1000, 1000, "rad");
export const speed = range(0, 20000 * revPerMinute, "rad/s");
export const turning = range(1 * revPerMinute, 20000 * revPerMinute, "rad/s"); // where standing still has no answer
export const inertia = range(0, 1000, "kg.m2");
export const fluctuation = range(0, 1.5, "");
export const rise = range(-20, 20, "m");
export const run = range(0.01, 20, "m");

// ---- sizes of parts
export const length = range(0.05, 12, "m");
export const lengthOrNone = range(0, 12, "m");
export const outside = range(0.005, 0.4, "m");
export const wall = range(0.0003, 0.2, "m");
export const acrossYoke = range(0.01, 0.4, "m");
export const clip = range(0.0005, 0.006, "m");
export const uncertainty = range(0, 0.005, "m");
export const float = range(0, 0.002, "m");
export const cap = range(0.005, 0.12, "m");
export const fitSize = range(0.0180001, 0.08, "m"); // as far as the printed limits reach: over 18 mm up to 80 mm
export const armRadius = range(0.005, 0.3, "m");
export const base = range(0.02, 5, "m");
export const height = range(-3, 3, "m");
export const slip = range(0, 2, "m");
export const yokeLength = range(0, 1, "m");
export const gap = range(0, 0.02, "m");

// ---- what the vehicle does
export const torque = range(0, 1e6, "N.m");
export const torqueAbove = range(0.01, 1e6, "N.m");
export const power = range(0, 1e7, "W");
export const ratio = range(0.2, 30, "");
export const stall = range(1, 5, "");
export const axleLoad = range(10, 1e6, "N");
export const tyre = range(0.05, 2.5, "m");
export const road = range(0, 140, "m/s");
export const friction = range(0.05, 2, "");
export const efficiency = range(0.3, 1, "");
export const shock = range(1, 10, "");
export const life = range(1 * hour, 1e6 * hour, "s");

// ---- materials, mass
export const modulus = range(1e9, 500e9, "Pa");
export const strength = range(10e6, 3000e6, "Pa");
export const stress = range(0, 3000e6, "Pa");
export const mass = range(0.01, 2000, "kg");
export const grade = range(0.1, 4000, "");
export const unbalance = range(0, 10, "kg.m");

// ---- counts
export const points = range(2, 720, "");
