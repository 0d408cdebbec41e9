// What the constants of reading a bare yoke rest on.
import type * as given from "./given-yokes";
import type { Prose } from "./method";

export const yokes: Record<keyof typeof given, Prose> = {
  leastClip: {
    id: "least-clip",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "No clip of a driveline joint is thinner.",
  },
  greatestClip: {
    id: "greatest-clip",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "No clip of a driveline joint is thicker.",
  },
  thinnestClip: {
    id: "thinnest-clip",
    unit: "mm",
    basis: "published",
    source: "mazda-81",
    says: "The thinnest clip in the ranges makers print. A clip that was not measured is taken to be at least this thick.",
  },
  thickestClip: {
    id: "thickest-clip",
    unit: "mm",
    basis: "published",
    source: "toyota",
    says: "The thickest clip in those ranges. A clip that was not measured is taken to be at most this thick.",
  },
  newBoreLarger: {
    id: "new-bore-larger",
    unit: "mm",
    basis: "common-practice",
    source: "iso286",
    says: "A new bore is at most this much larger than its cap: H7 over h6 at 30 to 50 mm. The limits are published, that makers use this fit is not.",
  },
  usedBoreLarger: {
    id: "used-bore-larger",
    unit: "mm",
    basis: "judgement",
    source: "toyota",
    says: "A used bore: by the play one maker still allows after fitting.",
  },
  wornBoreLarger: {
    id: "worn-bore-larger",
    unit: "mm",
    basis: "judgement",
    source: "dana-dssm",
    says: "A worn bore: a little above the play at which a maker says to renew, 0.006 in.",
  },
  boreSmaller: {
    id: "bore-smaller",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "A bore may read this much smaller than its cap: jaws off the middle of a hole, or an ear that is nipped a little.",
  },
  rustedBoreSmaller: {
    id: "rusted-bore-smaller",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "A rusted bore reads smaller still, and rust on the faces moves the distance between the ears as far.",
  },
  tightBore: {
    id: "tight-bore",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "A cap is said not to go into a bore that is smaller by more than this. An owner's cap of 27.00 mm belonged in bores of 26.92 and 26.80 mm, and would not go into the second.",
  },
  newPlay: {
    id: "new-play",
    unit: "mm",
    basis: "published",
    source: "datsun-521",
    says: "A joint fitted anew has at most this much play between its clips.",
  },
  wornPlay: {
    id: "worn-play",
    unit: "mm",
    basis: "judgement",
    source: "",
    says: "A worn joint has at most twice the play at which a maker says to renew.",
  },
  mostWays: {
    id: "most-ways",
    unit: "",
    basis: "judgement",
    source: "",
    says: "For each end whose yoke stays, at most this many ways to join it to the other are told.",
  },
};
