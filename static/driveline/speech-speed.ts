// What is said of the speed of a shaft.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const tube = "Look whether outside and wall are in the unit beside them.";
const ratio = "Ratios of gears lie between 0.2 and 30.";

export const speed: CalculationWords = {
  title: "Speed of the shaft",
  inputs: {
    outside: { label: "Tube, outside diameter", why: tube },
    wall: { label: "Tube, wall thickness", why: tube },
    material: { label: "Material", options: { steel: "steel", aluminium: "aluminium" } },
    length: { label: "Length between joint centres", why: "A drive shaft is 50 mm to 12 m long." },
    from: {
      label: "The speed is known from",
      options: { given: "the shaft itself", engine: "engine speed and gears", road: "road speed, tyre and axle" },
    },
    speed: { label: "Speed of the shaft", why: "Above 20,000 rev/min no such shaft runs." },
    engine: { label: "Engine speed", why: "Above 20,000 rev/min no such engine runs." },
    gear: { label: "Ratio of the highest gear", why: ratio },
    transfer: { label: "Ratio of the transfer case", why: ratio },
    road: { label: "Road speed", why: "Above 500 km/h this is no road." },
    tyre: { label: "Rolling radius of the tyre", why: "A radius, not a diameter." },
    axle: { label: "Ratio of the axle", why: ratio },
  },
  parts: {
    running: "Speed it runs at",
    critical: "Critical speed",
    working: "Working speed beside it",
    longest: "Longest shaft of this tube at this speed",
    tube: "Least outside diameter for this length and speed",
  },
  cautions: turning,
  unchecked: [
    "Weight of the yokes, give of joints, hangers and mounts, dents and welds: each makes the real critical speed lower.",
    "Whether the shaft is straight and balanced, and whether its joints and splines allow the speed.",
    "Overspeed downhill or with wheels off the ground.",
  ],
};

const share = (fraction: number, says: string): string =>
  `${fraction.toFixed(3).replace(/0+$/, "")} of critical, ${says}`;

export const say = {
  speed: "Speed of the shaft",
  road: "Road speed at that engine speed",
  critical: "First bending critical speed",
  half: "Half of it",
  mass: "Weight of the tube alone",
  constant: (says: string): string => `The same with the constant ${says}`,
  fraction: "Working speed as a share of the critical",
  share,
  nearHalf:
    "The working speed lies within a tenth of half the critical speed, where the two beats of a joint in each turn shake the shaft: avoid steady running there.",
  longest: "Longest, at the critical speed itself",
  longestAt: (fraction: number, says: string): string => `Longest at ${share(fraction, says)}`,
  tube: "Least diameter, at the critical speed itself",
  tubeAt: (fraction: number, says: string): string => `Least diameter at ${share(fraction, says)}`,
  plot: {
    title: "Critical speed over length, and half of it as a broken line; the ring is this shaft at its working speed",
    x: (unit: string): string => `Length, ${unit}`,
    y: "Speed, rev/min",
    here: "this shaft",
  },
};
