// Charts of the greatest angle at a speed, each as printed. Speeds are rad/s, angles rad.
import { limits, memory, published } from "./ground";
import type { Ground, Limit } from "./types";
import { degree, inch, revPerMinute } from "./units";

/** A chart, from slow to fast. */
export interface Chart extends Ground {
  id: string;
  says: string;
  points: readonly (readonly [speed: number, angle: number])[];
}

const at = (rpm: number, deg: number, min = 0) => [rpm * revPerMinute, (deg + min / 60) * degree] as const;

export const charts: readonly Chart[] = [
  {
    id: "navedtra",
    says: "rounded down to whole degrees",
    ...published("navedtra", "fig. 8-40"),
    points: [at(1000, 12), at(1500, 11), at(2000, 8), at(2500, 7), at(3000, 5), at(3500, 5)],
  },
  {
    id: "parker",
    says: "power take-off shafts; its basis is printed as 100 rad/s² and fits 1000; flat at 11° 30' up to 1500 rev/min",
    ...published("parker", "p. 5"),
    points: [at(500, 11, 30), at(1000, 11, 30), at(1500, 11, 30), at(2000, 8, 40), at(2500, 7), at(3000, 5, 50)],
  },
  {
    id: "older-chart",
    says: "an older chart as recalled; confirm before use",
    ...memory,
    points: [
      at(1500, 11, 30),
      at(2000, 8, 40),
      at(2500, 7),
      at(3000, 5, 50),
      at(3500, 5),
      at(4000, 4, 15),
      at(4500, 3, 40),
      at(5000, 3, 15),
    ],
  },
];

/** One maker's series for shafts of about 1.5 m: greatest speed, greatest speed times angle (rad²/s). */
export const series: readonly { id: string; speedMost: number; product: number }[] = (
  [
    ["2015", 6000, 27000],
    ["2020", 6000, 26000],
    ["2025", 6000, 24000],
    ["2030", 6000, 22000],
    ["2035", 5600, 21000],
    ["2040", 5000, 20000],
    ["2045", 4700, 19000],
    ["2047", 4500, 19000],
    ["2050", 4500, 19000],
    ["2055", 4500, 18000],
    ["2060", 4100, 17000],
    ["2065", 3900, 17000],
  ] as const
).map(([id, rpm, product]) => ({ id, speedMost: rpm * revPerMinute, product: product * revPerMinute * degree }));

export const seriesGround: Ground = published("dana-cv");

export const solidShaftSpeed: Limit[] = limits("speed", "most", "rad/s", [
  ["parker", 1000 * revPerMinute, published("parker"), "solid-bar shaft, from time to time"],
  ["dana-j3311", 1200 * revPerMinute, published("dana-j3311", "p. 17"), "solid-bar shaft, little torque"],
  ["cat-rehs2891", 3000 * revPerMinute, published("cat-rehs2891"), "a shaft of 18 to 57 in: stay below"],
]);

// A trade rule: so many degrees for an inch of length.
export const parallelPerLength = {
  value: degree / (5 * inch),
  ...published("drivetrain"),
  says: "ends parallel: length in inches over 5",
};
export const intersectingPerLength = {
  value: degree / (10 * inch),
  ...published("drivetrain"),
  says: "ends meeting: length in inches over 10",
};
