// The words a query may use, what is measured, and which faces go with which hold.
import type { Condition, Faces, Hold, Quantity, Tool, Unit } from "./types";

export const holds: readonly Hold[] = [
  "outside-clip",
  "inside-clip",
  "plate",
  "strap",
  "wing",
  "injected",
  "staked",
  "unknown",
];
export const allFaces: readonly Faces[] = [
  "over-caps",
  "groove-inner",
  "groove-outer",
  "under-plates",
  "hole-centres",
  "wing-outer",
  "unknown",
];
export const tools: readonly Tool[] = [
  "digital-caliper",
  "dial-caliper",
  "vernier-caliper",
  "vernier-caliper-coarse",
  "micrometer",
  "steel-rule",
  "tape",
];
export const conditions: readonly Condition[] = ["new", "used", "worn", "rusted"];
export const unitWords: readonly Unit[] = ["in", "mm"];
export const quantities: readonly Quantity[] = ["cap", "across"];

const goWith: Record<Hold, readonly Faces[]> = {
  "outside-clip": ["over-caps"],
  "inside-clip": ["groove-inner", "groove-outer"],
  plate: ["under-plates"],
  strap: ["over-caps"],
  wing: ["wing-outer", "hole-centres"],
  injected: ["over-caps", "groove-inner"], // the service joint usually has inside clips
  staked: ["over-caps"],
  unknown: ["unknown", "over-caps", "groove-inner", "groove-outer", "under-plates", "wing-outer", "hole-centres"],
};

/** facesFor lists the faces that go with a hold, the usual ones first. */
export function facesFor(hold: Hold): Faces[] {
  return [...goWith[hold]];
}
