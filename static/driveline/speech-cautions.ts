// The cautions every calculation carries: what to see to before work on a shaft, and whose word comes first.

const defer =
  "The maker’s manual, local codes and a qualified driveline shop come before anything on this page. It gives figures and what they were held against; it does not say that a shaft is fit for use.";
const stands =
  "Vehicle on level ground, wheels chocked, on rated stands, gearbox in neutral. Support the shaft before unbolting: it can exceed 100 lb (46 kg).";
const phase =
  "Mark the phase before taking apart: refitting out of phase is a hazard. No heat, sledge or floor jack on a joint.";
const guarded =
  "Exposed shafts stay guarded: power take-off (OSHA 29 CFR 1928.57, ISO 5674), buses (49 CFR 393.89). Nobody near a turning shaft.";
const shop =
  "A bent or cut tube is scrapped. Balance and welding are for a driveline shop. Straps and lock bolts are used once.";
const press = "Eye protection when pressing or driving caps and when clips go in. Never stand in line with the press.";

/** For everything about a shaft that turns. */
export const turning: string[] = [defer, stands, phase, guarded, shop];

/** For everything about caps, clips and bolts. */
export const fitting: string[] = [defer, press, stands, phase, shop];
