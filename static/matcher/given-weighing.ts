// Constants of comparing: what a figure of the chart is worth, and what a size must show
// to be named. Lengths are millimetres.

// ---- the chart's own figures: half-widths beside half the last printed digit

export const commonPractice = 0.05;
export const memoryCap = 0.2;
export const memoryAcross = 0.4;
export const madeCap = 0.01;
export const madeAcross = 0.08;

// ---- weighing

export const agreeLevel = 0.997;
export const rivalReach = 1.5;
export const tailDof = 8;
export const priorCommon = 0.8;
export const priorMemory = 0.3;
export const priorOpen = 0.5;
export const priorOther = 0.1;
export const wholeDigits = 0.25;
export const priorAbsent = 0.05;
export const sharedCap = 0.5;
export const spreadCap = 3;
export const spreadAcross = 10;
export const otherLeftAt = 0.2;
export const claimAt = 0.95;
export const coarseCap = 0.15;
export const coarseAcross = 0.3;
