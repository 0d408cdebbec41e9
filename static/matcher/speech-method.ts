// What the constants of the method are, in sentences, for the page on the method. Ids, bases and sources stand in
// method-*.ts, so that another language can say them and cannot change them. A constant without a sentence does not pass
// the type check.
import type * as measuringGiven from "./given-measuring";
import type * as partsGiven from "./given-parts";
import type * as slipsGiven from "./given-slips";
import type * as weighingGiven from "./given-weighing";
import type * as yokesGiven from "./given-yokes";

export const measuring: Record<keyof typeof measuringGiven, string> = {
  caliperLimit100: "A caliper reading to 0.01 or 0.02 mm may be wrong by this much up to 100 mm.",
  caliperLimit300: "The same caliper from 100 to 300 mm.",
  coarseVernierLimit: "A vernier caliper reading to 0.05 mm.",
  grooveReading: "Added for a reading between groove faces: it counts as an inside or depth reading.",
  micrometerLimit50: "A micrometer up to 50 mm.",
  micrometerLimit75: "A micrometer from 50 to 75 mm.",
  micrometerLimitAbove: "A micrometer above 75 mm, taken wider than the published trend.",
  ruleLimit: "A steel rule up to 500 mm.",
  tapeLimit: "A tape of class III up to 1 m; the class is not asked, so the widest is taken.",
  digitalStep: "Step of a digital caliper.",
  dialStep: "Step of a dial or fine vernier caliper.",
  coarseVernierStep: "Step of a coarse vernier caliper.",
  micrometerStep: "Step of a plain micrometer.",
  ruleStep: "Finest line of a steel rule; 1/64 in is 0.4 mm.",
  tapeStep: "Finest line of a tape.",
  coarseStep: "A last digit of this or more is asked to be written finer.",
  coarsestFraction:
    "A fraction with a denominator up to this is taken as read to 1/32 in; people leave out the halves.",
  capRepeat: "Repeating one cap diameter with a caliper.",
  acrossRepeat: "Repeating an across: caps must be pushed home and the jaws squared each time.",
  ruleRepeat: "Lining up a steel rule by eye at two edges.",
  tapeRepeat: "Lining up a tape by eye at two edges.",
  repeatDof: "How many degrees of freedom the four figures above are worth when pooled with the readings (4.2.4).",
  newEither:
    "A new part may read this much too small or too large: no more than the play one maker allows after fitting, 0 to 0.02 mm.",
  usedCapSmall: "A used cap may read this much small for wear, by the play another maker still allows, up to 0.05 mm.",
  usedCapLarge: "A used cap may read this much large for dirt and burrs.",
  usedAcrossNarrow:
    "A used joint may read this much narrow for wear; less than its play, which is taken up when the caps are pushed home.",
  usedAcrossWide: "A used joint may read this much wide: a cap not quite home, or dirt.",
  wornCapSmall: "A worn cap may read this much small, by the play at which a maker says to renew, 0.006 in.",
  wornCapLarge: "A worn cap may read this much large for dirt and burrs.",
  wornAcrossNarrow: "A worn joint may read this much narrow, by the same 0.006 in.",
  wornAcrossWide: "A worn joint may read this much wide: a cap not quite home, or dirt.",
  rustedSmall: "A rusted part may read this much too small: rust that has come off leaves a pit.",
  rustedLarge: "A rusted part may read this much too large: rust stands proud.",
  playAllowed: "Play along a fitted joint that one maker still allows.",
  playRenew: "Play at a joint's ends above which another maker says to renew it, 0.006 in rounded down.",
  spreadLevel:
    "Readings of one thing stay closer together than the spread at this level; wider ones are said to spread.",
  outlierMads: "A reading this many scaled median deviations off is looked at.",
  madScale: "Makes a median deviation comparable with a standard deviation (1 / 0.6745, the normal quartile).",
  capFloor: "No cap reading closer than this to the middle is set aside.",
  acrossFloor: "No across reading closer than this to the middle is set aside.",
  floorLimits:
    "Nor is one that is closer than this many standard uncertainties of what no repeating finds out: tool, step and condition.",
  apartFloors:
    "Two readings, or two groups of them, this many times the wider of those distances apart are not averaged.",
  spreadFloors: "Nor are more readings that spread over this many times that distance.",
  capOther: "A cap reading this far off may be a second cap diameter rather than dirt.",
  acrossOther: "An across this far off may be the other pair of caps rather than a cap not pushed home.",
  birgeLevel:
    "Measurements whose scatter chance exceeds more rarely than this do not agree among themselves (Cox, Metrologia 39, 589, procedure A).",
  leastCap: "No driveline cap is thinner.",
  greatestCap: "No driveline cap is thicker.",
  leastAcross: "No driveline joint is narrower.",
  greatestAcross: "No driveline joint is wider.",
};

export const weighing: Record<keyof typeof weighingGiven, string> = {
  commonPractice: "A figure of common practice, at least this wide.",
  memoryCap: "A recalled cap diameter, at least this wide.",
  memoryAcross: "A recalled across, at least this wide: 1/64 in.",
  madeCap:
    "How much caps of one size differ: caps are commonly made to h6, 13 to 19 micrometres wide between 18 and 80 mm.",
  madeAcross:
    "How much joints of one size differ across: half of what one maker's selective clips span, 1.22 to 1.38 mm.",
  agreeLevel:
    "A row agrees when the difference stays inside this two-sided interval: of the printed figure's limits and the uncertainty of the readings together.",
  rivalReach: "A row that misses by less than this many intervals still counts against the claim.",
  tailDof: "Greatest degrees of freedom of the heavy-tailed likelihood.",
  priorCommon: "Weight of a row of common practice beside a published one.",
  priorMemory: "Weight of a recalled row beside a published one.",
  priorOpen: "Weight of a row for each of hold and faces the chart does not know.",
  priorOther: "Weight of agreeing with another figure given for a size beside agreeing with the leading one.",
  wholeDigits: "A chart figure with half a last digit of this or more is said to be coarse.",
  priorAbsent: "Chance, before measuring, that a joint is not in the chart.",
  sharedCap: "Share of unknown sizes that have a cap of the chart: makers have few caps and many widths.",
  spreadCap: "How wide unknown sizes scatter round known caps.",
  spreadAcross: "How wide unknown sizes scatter round known acrosses.",
  otherLeftAt:
    "A size that agrees only with another figure given for it must be this likely to be left beside one that agrees outright, unless the readings are coarse.",
  claimAt:
    "A size must be this likely to be named outright. One that misses by a hair stays left while it is likely enough to stand in the way of that.",
  coarseCap:
    "A cap known no better than this names no size outright: it could not tell a joint 0.3 mm off. The bench of truth measures what that is worth.",
  coarseAcross: "An across known no better than this names no size outright: it could not tell a joint 0.6 mm off.",
};

export const slips: Record<keyof typeof slipsGiven, string> = {
  slipUnits: "Chance that readings were entered in the other unit.",
  slipExchanged: "Chance that cap and across were entered in each other's place.",
  slipPoint: "Chance that the decimal point was put in one certain wrong place.",
  slipDigits: "Chance that two neighbouring digits of one quantity were exchanged.",
  slipFraction: "Chance that a line of an inch scale was missed, by 1/16 or 1/32 in.",
  slipOuterFaces:
    "Chance that an inside-clip joint was measured between the outer groove faces, or with its clips in: both are habits of the trade.",
  slipOverClips: "Chance that an outside-clip joint was measured over its clips.",
  slipOverCaps: "Chance that an inside-clip joint was measured over its caps.",
  slipOverPlates: "Chance that a joint with plates was measured over them.",
  slipOverEars: "Chance that the yoke ears were measured and not the joint.",
  slipCentre: "Chance that the across was taken only to the centre of the cross.",
  slipRadius: "Chance that a cap's radius was taken for its diameter.",
  slipHold: "Chance that another hold was chosen than the joint has.",
  slipOfPart: "Part of such chances that falls to one quantity or one end alone.",
  clipsLeast:
    "Least by which clips or outer groove faces lengthen a reading: one of the thinnest clips makers print, 1.22 mm, rounded down.",
  clipsMost:
    "Most by which clips or outer groove faces lengthen a reading: two of 2.12 mm, the thickest of this maker, rounded down; another maker has thicker ones.",
  capsLeast: "Least by which an inside-clip joint is longer over its caps than between its grooves.",
  capsMost: "Most by which an inside-clip joint is longer over its caps than between its grooves.",
  platesLeast: "Least by which a joint is longer over its plates than under them.",
  platesMost: "Most by which a joint is longer over its plates than under them.",
  earsLeast: "Least by which yoke ears are wider than the joint in them; one owner's ears were 0.8 mm wider.",
  earsMost: "Most by which yoke ears are wider than the joint in them; one owner's ears were 0.8 mm wider.",
  centreSpread: "How well the centre of a cross is found, either way.",
  slipReach: "A slip explains readings that come within so many standard uncertainties of a size.",
  slipAt: "A slip must be this likely to be spoken of.",
  slipStrongAt: "A slip this likely is the verdict: measure again.",
};

export const yokes: Record<keyof typeof yokesGiven, string> = {
  leastClip: "No clip of a driveline joint is thinner.",
  greatestClip: "No clip of a driveline joint is thicker.",
  thinnestClip:
    "The thinnest clip in the ranges makers print. A clip that was not measured is taken to be at least this thick.",
  thickestClip: "The thickest clip in those ranges. A clip that was not measured is taken to be at most this thick.",
  newBoreLarger:
    "A new bore is at most this much larger than its cap: H7 over h6 at 30 to 50 mm. The limits are published, that makers use this fit is not.",
  usedBoreLarger: "A used bore: by the play one maker still allows after fitting.",
  wornBoreLarger: "A worn bore: a little above the play at which a maker says to renew, 0.006 in.",
  boreSmaller:
    "A bore may read this much smaller than its cap: jaws off the middle of a hole, or an ear that is nipped a little.",
  rustedBoreSmaller:
    "A rusted bore reads smaller still, and rust on the faces moves the distance between the ears as far.",
  tightBore:
    "A cap is said not to go into a bore that is smaller by more than this. An owner's cap of 27.00 mm belonged in bores of 26.92 and 26.80 mm, and would not go into the second.",
  newPlay: "A joint fitted anew has at most this much play between its clips.",
  wornPlay: "A worn joint has at most twice the play at which a maker says to renew.",
  mostWays: "For each end whose yoke stays, at most this many ways to join it to the other are told.",
};

export const parts: Record<keyof typeof partsGiven, string> = {
  madePart: "Splines, flanges and other parts: how far one may be made from its figure, either way.",
  coarsePart:
    "Splines, flanges and other parts: where reading and figure together are known no better than this, no row is named outright.",
  wornPart:
    "Splines, flanges and other parts: a reading short by up to this is told as possible wear. It still matches nothing.",
};
