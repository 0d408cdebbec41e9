// Directions in (ahead, right, down).
import type { Attitude, Direction } from "./inclination";

/** The direction of an attitude. */
export function directionOf(a: Attitude): Direction {
  if (a.read === "projected") return unit([1, Math.tan(a.plan), Math.tan(a.side)]);
  const level = Math.cos(a.side);
  return [level * Math.cos(a.plan), level * Math.sin(a.plan), Math.sin(a.side)];
}

export function unit(v: Direction): Direction {
  const n = norm(v);
  return [v[0] / n, v[1] / n, v[2] / n];
}

export function dot(u: Direction, v: Direction): number {
  return u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
}

export function cross(u: Direction, v: Direction): Direction {
  return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
}

/** By the root: Math.hypot is ten times slower, and nothing here is near the ends of the numbers. */
export function norm(v: Direction): number {
  return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/** The angle between two directions, good for small and large ones alike. */
export function angleBetween(u: Direction, v: Direction): number {
  return Math.atan2(norm(cross(u, v)), dot(u, v));
}
