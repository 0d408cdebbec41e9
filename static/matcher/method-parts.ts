// What the constants of identifying in tables without joints rest on.
import type * as given from "./given-parts";
import type { Prose } from "./method";

export const parts: Record<keyof typeof given, Prose> = {
  madePart: {
    id: "made-part",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "Splines, flanges and other parts: how far one may be made from its figure, either way.",
  },
  coarsePart: {
    id: "coarse-part",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "Splines, flanges and other parts: where reading and figure together are known no better than this, no row is named outright.",
  },
  wornPart: {
    id: "worn-part",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "Splines, flanges and other parts: a reading short by up to this is told as possible wear. It still matches nothing.",
  },
};
