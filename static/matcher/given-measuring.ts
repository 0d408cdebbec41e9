// Constants of measuring: what tools, hands and worn parts do to a reading. Lengths are millimetres.

// ---- instruments: limits of permissible error

export const caliperLimit100 = 0.02;
export const caliperLimit300 = 0.03;
export const coarseVernierLimit = 0.05;
export const grooveReading = 0.02;
export const micrometerLimit50 = 0.004;
export const micrometerLimit75 = 0.005;
export const micrometerLimitAbove = 0.01;
export const ruleLimit = 0.15;
export const tapeLimit = 1.0;

// ---- instruments: the smallest step that can be read

export const digitalStep = 0.01;
export const dialStep = 0.02;
export const coarseVernierStep = 0.05;
export const micrometerStep = 0.01;
export const ruleStep = 0.5;
export const tapeStep = 1.0;
export const coarseStep = 0.5;
export const coarsestFraction = 32;

// ---- method: standard deviation of one reading by one person

export const capRepeat = 0.01;
export const acrossRepeat = 0.05;
export const ruleRepeat = 0.4;
export const tapeRepeat = 0.8;
export const repeatDof = 4;

// ---- condition of the part: how far a reading may be off one way and the other

export const newEither = 0.02;
export const usedCapSmall = 0.05;
export const usedCapLarge = 0.03;
export const usedAcrossNarrow = 0.03;
export const usedAcrossWide = 0.07;
export const wornCapSmall = 0.15;
export const wornCapLarge = 0.03;
export const wornAcrossNarrow = 0.15;
export const wornAcrossWide = 0.07;
export const rustedSmall = 0.04;
export const rustedLarge = 0.3;

// ---- play of a fitted joint

export const playAllowed = 0.05;
export const playRenew = 0.15;

// ---- repeated readings

export const spreadLevel = 0.99;
export const outlierMads = 3.5;
export const madScale = 1.4826;
export const capFloor = 0.1;
export const acrossFloor = 0.2;
export const floorLimits = 4;
export const apartFloors = 1.5;
export const spreadFloors = 3;
export const capOther = 0.25;
export const acrossOther = 1.0;

// ---- several measurements of one thing

export const birgeLevel = 0.05;

// ---- what can be a joint at all

export const leastCap = 8;
export const greatestCap = 150;
export const leastAcross = 20;
export const greatestAcross = 500;
