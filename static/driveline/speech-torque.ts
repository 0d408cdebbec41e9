// What is said of the torque a shaft carries.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const ratio = "Ratios lie between 0.2 and 30.";
const unit = "Look whether the unit beside it is the one it was read in.";

export const torque: CalculationWords = {
  title: "Torque in the shaft",
  inputs: {
    by: {
      label: "The shaft carries",
      options: {
        "low-gear": "what the engine gives in the lowest gear",
        slip: "what the tyres hold before they slip",
        smaller: "the smaller of the two",
        given: "a torque that is known",
      },
    },
    torque: { label: "Torque in the shaft", why: unit },
    row: { label: "Row of the chart" },
    rating: { label: "The joint maker’s rating", why: unit },
    engine: { label: "Greatest torque of the engine", why: unit },
    rated: { label: "That torque is", options: { net: "net, as installed", gross: "gross, without accessories" } },
    gearbox: { label: "Gearbox", options: { manual: "manual", automatic: "automatic, with a converter" } },
    gear: { label: "Ratio of the lowest gear", why: ratio },
    stall: { label: "Torque ratio of the converter at stall", why: "A converter multiplies by 1 to 5." },
    transfer: { label: "Ratio of the transfer case, low", why: ratio },
    load: { label: "Load on the driven axle", why: unit },
    tyre: { label: "Rolling radius of the tyre", why: "A radius, not a diameter." },
    axle: { label: "Ratio of the axle", why: ratio },
    friction: { label: "Friction of tyre on road", why: "Ice has about 0.1, a racing tyre 1.5." },
    efficiency: { label: "Efficiency of the axle", why: "It is below 1." },
    outside: { label: "Tube, outside diameter", why: unit },
    wall: { label: "Tube, wall thickness", why: unit },
    yield: {
      label: "Yield strength of the tube",
      why: "From its certificate; structural steel has 235 MPa (34 ksi) and more.",
    },
    shear: { label: "Shear modulus", why: "Steel has about 80 GPa, aluminium 26." },
    length: { label: "Length of the tube", why: unit },
    angle: { label: "Angle of the joint", why: "No cross joint runs at more than 60°." },
    radius: { label: "Middle of the cross to middle of a cap’s needles", why: unit },
    spline: { label: "Pitch radius of the slip spline", why: unit },
    machine: {
      label: "Machine joint (DIN 808)",
      options: { no: "no", needle: "yes, needle bearings", plain: "yes, plain bearings" },
    },
  },
  parts: {
    "low-gear": "What the engine gives in the lowest gear",
    slip: "What the tyres hold",
    rating: "Beside a rating",
    tube: "The tube in torsion",
    couple: "What the joint’s angle does",
    machine: "Factor of a machine joint",
  },
  cautions: turning,
  unchecked: [
    "Shock: a clutch that is dropped, a wheel that grips after slipping, a shunt. It can be several times the steady torque.",
    "Fatigue, welds, seams, dents and splines. First yield of sound metal is not a limit to work at.",
    "The joint itself: its rating is its maker’s to give.",
  ],
};

const bySource: Record<string, string> = { "dana-j3311": "factors of Dana", "cat-rehs2891": "factors of Caterpillar" };

export const say = {
  lowGear: (id: string): string => `Lowest gear, ${bySource[id] ?? id}`,
  factors: (id: string, says: string): string => `The ${bySource[id] ?? id}: ${says}.`,
  differ:
    "The two sources differ by what they take for the gearbox. Where a part below goes on with this torque, it takes the greater.",
  slip: "Wheels slip at",
  slipPublished: "The same with the printed friction and efficiency, 0.71 and 0.95",
  choose:
    "For road use the printed rule takes the smaller of the two, but no more than one series of that maker below the one for the lowest gear; off the road it takes the lowest gear.",
  carried: "Torque the parts below go on with",
  share: "Share of the rating you gave",
  shareFormula: "torque / rating",
  ownRating:
    "The rating is the one you typed. Whether it is a lasting or a short-time one, and at what angle, its maker says.",
  published: (row: string, torque_: string): string => `The chart has a published rating for ${row}: ${torque_}.`,
  noRating: (row: string): string =>
    row === ""
      ? "No published rating in the chart: no row of it has one. Ask the joint’s maker."
      : `No published rating in the chart for ${row}. Ask the joint’s maker.`,
  noRow: (row: string): string => `“${row}” is no row of the chart. Look it up there, or leave it out.`,
  stress: "Shear stress at the outer wall",
  stressThin: "The same by the thin-wall form",
  torqueMises: "Torque at first yield, von Mises",
  torqueTresca: "Torque at first yield, Tresca",
  shareMises: "Share of yield, von Mises",
  shareTresca: "Share of yield, Tresca",
  twist: "Twist over the length",
  steady:
    "Tresca is the stricter of the two. Both say where sound metal begins to give under a steady torque, and nothing more.",
  onDriving: "Bending couple on the driving shaft, at most",
  onDriven: "Bending couple on the driven shaft, at most",
  torqueMost: "Torque in the driven shaft, at most",
  trunnion: "Load on one trunnion, at most",
  thrust: (id: string): string =>
    id === "greased" ? "Push of the slip spline, greased steel" : "Push of the slip spline, plastic-coated",
  factor: (at: string): string => `Factor, as printed for ${at}`,
  rated: "The joint must be rated for",
  beyond: "The printed factors do not reach this angle.",
};
