// What is said of the angles of a shaft.
import { list } from "../matcher/speech-words";
import type { Change } from "./correct";
import type { CalculationWords, Kit } from "./description";
import { turning } from "./speech-cautions";

const member: Record<string, string> = {
  gearbox: "driving end",
  shaft: "shaft",
  rear: "second shaft",
  axle: "driven end",
};

const steep = "More than 80° is no driveline: look whether rise and run are the right way round.";

export const angles: CalculationWords = {
  title: "Angles of the shaft",
  inputs: {
    joints: {
      label: "Joints",
      options: { "1": "one", "2": "two", "3": "three" },
    },
    gearbox: { label: "Driving end, side", why: steep },
    shaft: { label: "Shaft, side", why: steep },
    rear: { label: "Second shaft, side", why: steep },
    axle: { label: "Driven end, side", why: steep },
    speed: {
      label: "Speed of the shaft",
      why: "Below 1 rev/min there is nothing to work out; above 20,000 no such shaft runs.",
    },
    read: {
      label: "How the angles were read",
      options: { level: "inclinometer on the part", projected: "side view and plan, or offsets" },
    },
    gearboxplan: { label: "Driving end, plan", why: steep },
    shaftplan: { label: "Shaft, plan", why: steep },
    rearplan: { label: "Second shaft, plan", why: steep },
    axleplan: { label: "Driven end, plan", why: steep },
    turn: {
      label: "Yokes of the shaft turned by",
      why: "A whole turn is 360°, so −180 to 180 says it all.",
    },
    turn2: {
      label: "Yokes of the second shaft turned by",
      why: "A whole turn is 360°, so −180 to 180 says it all.",
    },
    inertia: {
      label: "Inertia of what is driven",
    },
    aim: {
      label: "Residual angle to come down to",
    },
    gearboxbase: { label: "Between the driving end’s mounts" },
    axlebase: { label: "Length of the axle’s spring seat" },
    shaftlength: {
      label: "Length of the shaft",
    },
    rearlength: { label: "Length of the second shaft" },
  },
  parts: {
    angles: "Angles",
    turn: "Over one turn",
    acceleration: "Acceleration",
    speed: "Angle at this speed, by the charts in print",
    change: "What to change",
  },
  cautions: turning,
  unchecked: [
    "The angles were taken as they stand. What suspension travel, load and torque wind-up make of them was not.",
    "Whether the joint itself can reach its angle without touching was not checked: its maker says.",
    "Play, worn joints and bent tube were not looked at.",
  ],
};

export const say = {
  member,
  joint: (n: number, of: number): string => (of === 1 ? "Angle of the joint" : `Angle of joint ${n}`),
  jointAngle: "Angle of a joint",
  short: (n: number): string => `joint ${n}`,
  shaft: (n: number): string => `shaft ${n}`,
  phase: "Yokes out of where they cancel",
  equality: "Difference of the joint angles",
  residual: "Residual angle",
  residualShop: "Residual angle, shop form",
  fluctuation: "Driven end, fastest to slowest",
  ratio: "First joint’s far side at its fastest, to the driving end",
  shopForms: (n: number, forms: readonly string[]): string =>
    `Joint ${n} by the forms in use, from side S and plan T: ${list(forms)}. The exact angle is the one above.`,
  plane: (n: number, turn: string): string =>
    `The planes of the two joints of shaft ${n} stand ${turn} apart: its yokes cancel best when turned by that, if the joint angles are equal.`,
  torsional: "Torsional acceleration, driven end",
  small: "The same by the small-angle form",
  drive: (n: number, of: number): string => `Inertia acceleration${of > 1 ? ` of shaft ${n}` : ""}, driving`,
  coast: (n: number, of: number): string => `Inertia acceleration${of > 1 ? ` of shaft ${n}` : ""}, coasting`,
  inertiaTorque: "Torque that shakes what is driven",
  inertiaFormula: "T = I × acceleration",
  beyond: "beyond the chart",
  greatest: "Greatest angle of a joint at this speed",
  atMost: (text: string): string => `at most ${text}`,
  series: (list_: readonly (readonly [string, string | null])[], ground: string): string =>
    `One maker’s series for a shaft of about 1.5 m at this speed: ${list_.map(([id, angle]) => `${id} ${angle ?? "not so fast"}`).join(", ")} (${ground}).`,
  chartRule:
    "Between two printed speeds the lower angle is taken. The charts disagree; which holds is for the joint’s maker to say.",
  nothingToChange: (residual: string): string =>
    `The residual angle of ${residual} is no more than what was asked for: nothing to change.`,
  oneOf: "One of these does it, or comes as near as a single change can:",
  afterwards: "Joint centres are taken to stay where they are. Set the change, then measure all angles again.",
  noChange: "No single change within 20° lowers it. Two ends have to change, or the yokes.",
  drawing: {
    title: "The shaft to the angles entered, from the side and from above. Lengths are not to scale.",
    side: "from the side",
    above: "from above",
  },
  turn: {
    title: (names: readonly string[]): string =>
      `Speed over one turn of the driving end, in per cent above and below its own: ${list(names)}. The full line is the driven end.`,
    x: "Turn of the driving end, °",
    y: "Speed, % off",
  },
  change: (change: Change, ids: readonly string[], words: Kit["words"]): string => {
    const left = `Residual angle then: ${words("angle", change.residual)}, with ${list(change.angles.map((a) => words("angle", a)))} at the joints.`;
    const who = member[ids[change.at] ?? ""] ?? "";
    if (change.kind === "yokes")
      return `Turn the yokes of shaft ${change.at + 1} against each other by ${words("angle", change.change)}, to ${words("angle", change.to)}. ${left}`;
    if (change.kind === "bearing")
      return `Move the hanger bearing ${change.change > 0 ? "down" : "up"} by ${words("length", Math.abs(change.change), 1)}. ${left}`;
    const way =
      change.kind === "side"
        ? `in side view from ${words("angle", change.from)}`
        : `in plan from ${words("angle", change.from)}`;
    const shim =
      change.shim === null ? "" : ` A shim of ${words("length", Math.abs(change.shim), 1)} over its base does that.`;
    return `Tilt the ${who} ${way} to ${words("angle", change.to)}, by ${words("angle", change.change)}.${shim} ${left}`;
  },
};
