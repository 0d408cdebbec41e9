// Limits of joint angles and of what unevenness may be left, by source. They disagree; all
// are shown. Angles are rad, accelerations rad/s².
import { derived, formula, limits, memory, published } from "./ground";
import type { Limit } from "./types";
import { degree } from "./units";

const j3311 = (at: string) => published("dana-j3311", at);

// ---- of each joint

export const jointAngleLeast: Limit[] = limits("angle", "least", "rad", [
  ["dana-j3311", 1 * degree, j3311("p. 5"), "each joint of a shaft"],
  ["dana-j3311-last", 0.5 * degree, j3311("p. 17"), "last shaft of a set of several"],
  ["chrysler", 0.5 * degree, published("chrysler"), "each joint"],
  ["hyundai-bb", 0.5 * degree, published("hyundai-bb", "p. 95"), "each joint"],
  ["fuso", 1 * degree, published("fuso", "p. 100"), "each joint"],
]);

export const jointAngleMost: Limit[] = limits("angle", "most", "rad", [
  ["dana-j3311", 3 * degree, published("dana-j3311"), "smooth running"],
  ["chrysler", 3 * degree, published("chrysler"), "smooth running"],
  ["hyundai-bb", 3 * degree, published("hyundai-bb", "p. 95"), "smooth running"],
  ["army-tm", 3 * degree, published("army-tm"), "early wear above"],
  ["gm-camaro99", 4 * degree, published("gm-camaro99"), "smooth running"],
  ["hummer-h3-06", 4 * degree, published("hummer-h3-06"), "smooth running"],
  ["meritor-96147", 5 * degree, published("meritor-96147"), "smooth running"],
  ["fuso", 6 * degree, published("fuso", "p. 100"), "smooth running"],
  ["mb-actros", 6 * degree, published("mb-actros", "p. 120"), "smooth running"],
  ["engedge", 6 * degree, published("engedge"), "smooth running"],
  ["renault-bb", 7.5 * degree, published("renault-bb"), "power take-off with a flange"],
]);

/** A shaft with a joint at one end only. */
export const singleShaftMost: Limit[] = limits("angle", "most", "rad", [
  ["chrysler-single", 1.5 * degree, published("chrysler"), "shaft with a single joint"],
  ["dana-j3311-intermediate", 1.5 * degree, j3311("p. 17"), "each shaft of a set but the last"],
  ["isuzu-hombre99", 0.5 * degree, published("isuzu-hombre99"), "odd joint of a two-piece shaft"],
]);

// ---- of the two joints of a shaft: greatest minus least

export const equality: Limit[] = limits("equality", "most", "rad", [
  [
    "dana-j3311-special",
    0.5 * degree,
    published("dana-j3311"),
    "motor homes, and shafts ahead of a transfer case or auxiliary gearbox",
  ],
  ["gm-camaro99", 0.5 * degree, published("gm-camaro99"), "two joints of a shaft"],
  ["hummer-h3-06", 0.5 * degree, published("hummer-h3-06"), "two joints of a shaft"],
  ["dana-j3311", 1 * degree, published("dana-j3311"), "two joints of a shaft"],
  ["chrysler", 1 * degree, published("chrysler"), "two joints of a shaft"],
  ["dana-gwb-high", 1 * degree, published("dana-gwb"), "high torque or speed, 1 to 1.5 degrees: the stricter"],
  ["dana-gwb-high-upper", 1.5 * degree, published("dana-gwb"), "high torque or speed, 1 to 1.5 degrees: the wider"],
  ["meritor-96147", 1.5 * degree, published("meritor-96147"), "two joints of a shaft"],
  ["engedge", 1.5 * degree, published("engedge"), "two joints of a shaft"],
  ["army-tm", 3 * degree, published("army-tm"), "two joints of a shaft"],
  ["dana-gwb-low", 3 * degree, published("dana-gwb"), "low speed, 3 to 5 degrees tolerated: the stricter"],
  ["dana-gwb-low-upper", 5 * degree, published("dana-gwb"), "low speed, 3 to 5 degrees tolerated: the wider"],
]);

/** How far the yokes of a shaft may be out of where they belong. */
export const yokePhase: Limit[] = limits("phase", "most", "rad", [
  ["gm-camaro99", 3 * degree, published("gm-camaro99"), "phase of the yokes"],
  ["army-tm", 1 * degree, published("army-tm"), "yokes parallel"],
]);

// ---- of what is left

export const residualFluctuation: Limit[] = limits("fluctuation", "most", "", [
  ["elbe", 0.0027, published("elbe"), "that of a joint at 3 degrees"],
]);

export const residualAcceleration: Limit[] = limits("acceleration", "most", "rad/s2", [
  ["mem-300", 300, memory, "a guide of SAE as recalled"],
  ["engedge", 400, published("engedge"), "about; implied by its table of angles"],
  ["mem-400", 400, memory, "the same guide, sometimes"],
]);

export const driveInertia: Limit[] = limits("inertia.drive", "most", "rad/s2", [
  ["mem", 500, memory, "inertia of the shaft, driving"],
]);

export const coastInertia: Limit[] = limits("inertia.coast", "most", "rad/s2", [
  ["mem", 1000, memory, "inertia of the shaft, coasting"],
]);

// ---- formulas

const oneJoint =
  "Driving side turns steadily; rigid shafts, no play; rotation counted from the driving yoke in the plane of the shafts.";

export const ratioFormula = formula(
  "joint-ratio",
  "w2/w1 = cos b / (1 - sin^2 b cos^2 t); from cos b to 1/cos b",
  published("medh"),
  oneJoint,
);
export const fluctuationFormula = formula(
  "joint-fluctuation",
  "U = 1/cos b - cos b = tan b sin b",
  published("dana-gwb"),
  oneJoint,
);
export const inverseFormula = formula(
  "joint-angle-of-fluctuation",
  "cos b = (-U + sqrt(U^2 + 4)) / 2",
  derived,
  oneJoint,
);
export const accelerationFormula = formula(
  "joint-acceleration",
  "a2 = -w1^2 cos b sin 2t sin^2 b / (1 - sin^2 b cos^2 t)^2; greatest where s^2 x^2 + (2 - s^2) x = 2 s^2, x = cos 2t, s = sin b",
  derived,
  oneJoint,
);
export const smallAngleFormula = formula(
  "joint-acceleration-small",
  "a = w^2 b^2",
  derived,
  "Small angles: 0.5 % low at 10 degrees, 2.5 % at 20.",
);
export const compoundFormula = formula(
  "compound-exact",
  "angle between the unit vectors of the two shafts",
  derived,
  "Exact for any two directions, as far as their inclinations were read.",
);
export const chainFormula = formula(
  "chain-exact",
  "cos r = s2/s1 of the product of joint and phase matrices; coplanar: cos b1 / cos b2 x cos b3 ..., inverted if above 1",
  derived,
  "Exact for rigid shafts without play, in one plane or not. Masses do not bend or twist anything.",
);
export const residualShopFormula = formula(
  "chain-shop",
  "r = sqrt(|+-b1^2 +-b2^2 +-b3^2|), each turned by twice the angle of plane and yokes",
  memory,
  "Small angles: 0.1 % at 5 degrees, 0.3 % at 10. Poor where nearly nothing is left.",
);
