// What the constants of reading a bare yoke rest on.
import type * as given from "./given-yokes";
import type { Prose } from "./method";

export const yokes: Record<keyof typeof given, Prose> = {
  leastClip: {
    id: "least-clip",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  greatestClip: {
    id: "greatest-clip",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  thinnestClip: {
    id: "thinnest-clip",
    unit: "mm",
    basis: "published",
    source: "mazda-81",
  },
  thickestClip: {
    id: "thickest-clip",
    unit: "mm",
    basis: "published",
    source: "toyota",
  },
  newBoreLarger: {
    id: "new-bore-larger",
    unit: "mm",
    basis: "common-practice",
    source: "iso286",
  },
  usedBoreLarger: {
    id: "used-bore-larger",
    unit: "mm",
    basis: "judgement",
    source: "toyota",
  },
  wornBoreLarger: {
    id: "worn-bore-larger",
    unit: "mm",
    basis: "judgement",
    source: "dana-dssm",
  },
  boreSmaller: {
    id: "bore-smaller",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  rustedBoreSmaller: {
    id: "rusted-bore-smaller",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  tightBore: {
    id: "tight-bore",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  newPlay: {
    id: "new-play",
    unit: "mm",
    basis: "published",
    source: "datsun-521",
  },
  wornPlay: {
    id: "worn-play",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  mostWays: {
    id: "most-ways",
    unit: "",
    basis: "judgement",
    source: "",
  },
};
