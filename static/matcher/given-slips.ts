// Constants of slips: how often each is made beside a reading taken as it should be, and
// how far it moves a reading. Lengths are millimetres.

// ---- how often: a slip of one set of readings

export const slipUnits = 0.01;
export const slipExchanged = 0.01;
export const slipPoint = 0.004;
export const slipDigits = 0.004;
export const slipFraction = 0.02;
export const slipOuterFaces = 0.05;
export const slipOverClips = 0.04;
export const slipOverCaps = 0.02;
export const slipOverPlates = 0.01;
export const slipOverEars = 0.004;
export const slipCentre = 0.004;
export const slipRadius = 0.002;
export const slipHold = 0.01;
export const slipOfPart = 0.25;

// ---- how far, where that is not certain

export const clipsLeast = 1.2;
export const clipsMost = 4.2;
export const capsLeast = 8;
export const capsMost = 40;
export const platesLeast = 6;
export const platesMost = 24;
export const earsLeast = 0.4;
export const earsMost = 1.2;
export const centreSpread = 0.5;

// ---- when to speak of it

export const slipReach = 4;
export const slipAt = 0.2;
export const slipStrongAt = 0.8;
