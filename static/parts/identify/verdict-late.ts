// What of the verdict comes with the first reading and not with the page (late.ts): the picture of the neighbourhood,
// and the ways on to the shaft.
export { neighbourhood } from "../neighbourhood/neighbourhood";
export { driveline } from "./verdict-driveline";
