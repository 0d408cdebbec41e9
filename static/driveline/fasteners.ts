// How tight: what is printed for the very bolt first, then the general formula.
//
//   T = K d F,   F = share of proof x proof strength x stress area
import type { Ground, Outcome } from "./types";
import { unwritten } from "./unwritten";

export type Grade = "SAE-5" | "SAE-8" | "8.8" | "10.9" | "12.9";
export type ThreadCondition = "dry" | "oiled";

/** A row of the chart's table of fasteners. */
export interface PublishedTorque {
  id: string;
  item: string;
  series: string;
  thread: string; // as printed: "5/16-24", "M10"
  least: number; // N·m
  most: number; // N·m; the same as least where one figure is printed
  ground: { basis: string; source: string[] };
}

export interface TighteningInput {
  thread: string; // "5/16-24", "M10x1.5", ".375-24"
  grade: Grade;
  condition: ThreadCondition;
  series: string; // joint series the bolt holds, empty: any
  published: PublishedTorque[]; // all rows of the chart
}

export interface Thread {
  diameter: number; // m
  pitch: number; // m
  area: number; // tensile stress area, m²
}

export interface Tightening {
  published: PublishedTorque[]; // rows of the same thread, those of the series first. They come before the formula
  torque: number; // by the formula, N·m
  preload: number; // N
  thread: Thread;
  proof: number; // proof strength, Pa
  proofGround: Ground;
  factor: number; // K
  share: number; // of proof
  reuse: (Ground & { id: string; says: string })[];
}

export function tightening(input: TighteningInput): Outcome<Tightening> {
  return unwritten(input);
}
