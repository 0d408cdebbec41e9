// What the page on length explains.
import type { PageWords } from "./description";

const path =
  "How far the axle’s joint moves away from the gearbox as it goes there; back towards it is negative. It depends on the links and springs.";

export const page: PageWords = {
  about: "Where to cut the tube, where the slip stands, and how much the shaft slides as the axle moves.",
  purpose: [
    "A shaft that is too long drives into its gearbox; one that is too short falls out of its slip. The tube is cut so that the slip stands where it belongs with the vehicle on its wheels.",
    "As the axle rises and falls the shaft gets shorter and longer. The slip has to have room for that both ways.",
  ],
  groups: {
    shaft: "The shaft as it stands",
    axle: "The axle’s travel",
    pto: "Sliding halves of a power take-off shaft",
  },
  hints: {
    between:
      "Vehicle on its wheels at ride height, face to face. From joint centre to joint centre if the two below stay 0.",
    drivingface: "From the flange’s face to the middle of its cross.",
    drivenface: "The same at the other end.",
    drivingyoke: "Along the weld yoke, to where the tube butts.",
    drivenyoke: "Along slip yoke and spline stub pushed home, to where the tube butts.",
    slip: "From home to the end of the spline; 0 without a slip.",
    out: "How far it is drawn out of home with the vehicle standing.",
    root: "Ask whoever welds it.",
    run: "As it stands, measured level.",
    offset: "Seen from above.",
    stands: "Height of the driving joint less that of the driven one.",
    bump: "With the axle up against its stops.",
    droop: "With the axle hanging.",
    bumpahead: path,
    droopahead: path,
    tube: "For shafts of two tubes that slide in each other, as on farm machines.",
    working: "Where it works most.",
    least: "At the longest it gets.",
    left: "At the shortest it gets.",
  },
  example: "An invented rail inspection trolley between a car gearbox and a sprung tractor axle.",
};
