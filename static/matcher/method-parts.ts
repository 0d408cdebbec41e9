// What the constants of identifying in tables without joints rest on.
import type * as given from "./given-parts";
import type { Prose } from "./method";

export const parts: Record<keyof typeof given, Prose> = {
  madePart: {
    id: "made-part",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  coarsePart: {
    id: "coarse-part",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  wornPart: {
    id: "worn-part",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
};
