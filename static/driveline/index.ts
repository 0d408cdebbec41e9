// The front door of the driveline calculations: pure functions over plain data. A page
// imports the file of its subject alone; the program and the tests run all of them.
//
//   types.ts        what goes in and comes out; everything is in SI
//   check.ts        looks at all inputs first: a complaint, never a NaN, never a throw
//   given-*.ts      constants, limits and formulas, each with what it rests on; where sources
//                   disagree, all of them
//   hooke.ts, shaft-chain.ts, vector.ts
//                   the exact kinematics, which joint, shaft and correct share
//   units.ts        people's units, exactly
//
//   goal      numbers with the limits and sources that stand beside them
//   non-goal  saying that a part is fit for use: that is for the maker's manual and a
//             qualified driveline shop
export { angleAtLength, angleAtSpeed } from "./angle-speed";
export { gradeOfUnbalance, permissibleUnbalance } from "./balance";
export { clipFloat, clipFor } from "./clips";
export { compoundAngle } from "./compound";
export { corrections } from "./correct";
export { angleFactor, secondaryCouple, splineThrust, supportForces } from "./couple";
export { criticalCurve, criticalSpeed, longestShaft, tubeFor } from "./critical";
export { tightening } from "./fasteners";
export { capInBore, isoFit } from "./fits";
export { direction, inclinationFromRise } from "./inclination";
export { angleForFluctuation, jointAt, singleJoint } from "./joint";
export { lengthOverTravel, overlapRules, shaftLength } from "./length";
export { lifeByCapacity, lifeByRating, ratingForLife } from "./life";
export { shaftAngles, shaftCurve } from "./shaft";
export { roadSpeedFromEngine, shaftSpeedFromEngine, shaftSpeedFromRoad } from "./shaft-speed";
export { lowGearTorque, powerFromTorque, torqueFromPower, wheelSlipTorque } from "./torque";
export { torqueAtStress, torqueAtTwist, torsion } from "./torsion";
export { sources } from "./sources";
export { fromSi, toSi, units } from "./units";
