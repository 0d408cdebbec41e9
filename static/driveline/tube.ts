// What a tube is, for whatever it is asked: its script brings no formula with it.
import { conflict } from "./check";
import type { Complaint } from "./types";

/** A wall is at most half of the outside; what is wrong is added to `found`. */
export function checkTube(input: { outside: number; wall: number }, found: Complaint[]): Complaint[] {
  if (found.some((c) => c.input === "outside" || c.input === "wall")) return found;
  const most = input.outside / 2;
  return input.wall > most * (1 + 1e-9) ? [...found, conflict("wall", "outside", { bound: most, unit: "m" })] : found;
}

/** Inside diameter of a tube, 0 of a solid bar, m. */
export function insideOf(outside: number, wall: number): number {
  return Math.max(0, outside - 2 * wall);
}
