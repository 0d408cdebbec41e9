// Constants of joint life. The two forms have ratings of different meaning.
import { formula, memory, published } from "./ground";
import type { Sourced } from "./types";
import { degree, hour, revPerMinute } from "./units";

// ---- rated at 5000 h, 3 degrees, 100 rev/min: 1.5e6 h·deg·rev/min
export const ratedProduct: Sourced<number> = {
  value: 5000 * hour * 3 * degree * 100 * revPerMinute,
  ...published("aisco"),
  says: "5000 h at 3 degrees and 100 rev/min with the rated torque",
};
export const leastAngle: Sourced<number> = {
  value: 3 * degree,
  ...published("aisco"),
  says: "smaller angles count as 3 degrees",
};

// ---- by capacity: 1.5e7 h·deg·rev/min
export const capacityProduct: Sourced<number> = {
  value: 1.5e7 * hour * degree * revPerMinute,
  ...memory,
  says: "bearing capacity times arm, 90 % survive",
};

// ---- both
export const exponent: Sourced<number> = { value: 10 / 3, ...published("aisco"), says: "of torque" };
export const cubicExponent: Sourced<number> = {
  value: 3,
  ...published("schmelz", "section 4.7"),
  says: "of torque, about",
};
export const meanFactor: Sourced<number> = { value: 5, ...published("aisco"), says: "mean life over B10, about" };

export const shocks: readonly (Sourced<number> & { id: string })[] = [
  { id: "electric", value: 1, ...published("ims"), says: "electric motor" },
  { id: "petrol", value: 1.25, ...published("ims"), says: "petrol engine, four cylinders or more" },
  { id: "diesel", value: 1.3, ...published("ims"), says: "diesel engine, four cylinders or more" },
];

const common =
  "Needles well greased and clean, steady load; a wear-out of the bearings only. Not yokes, splines or seals.";

export const ratedFormula = formula(
  "life-by-rating",
  "L = 1.5e6 / (A N) x (Tc / (K T))^(10/3) hours, A in degrees, N in rev/min",
  published("aisco"),
  `Tc is the torque that gives 5000 h at 3 degrees and 100 rev/min, and nothing else. ${common}`,
);
export const capacityFormula = formula(
  "life-by-capacity",
  "L = 1.5e7 / (n b) x (CR / (K M))^(10/3) hours, b in degrees, n in rev/min",
  memory,
  `CR is a bearing capacity times its arm. The form is from memory: confirm with the maker of the joint. ${common}`,
);
