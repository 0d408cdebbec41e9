// Constants of reading a bare yoke: what a bore tells of its cap, and what clips and play
// take from the distance between the ears. Lengths are millimetres.

// ---- clips

export const leastClip = 0.5;
export const greatestClip = 6;
export const thinnestClip = 1.22;
export const thickestClip = 2.57;

// ---- by how much a bore reads larger than its cap, at most; and smaller, at most

export const newBoreLarger = 0.04;
export const usedBoreLarger = 0.05;
export const wornBoreLarger = 0.2;
export const boreSmaller = 0.05;
export const rustedBoreSmaller = 0.3;
export const tightBore = 0.1;

// ---- play of a joint along its pair of caps, at most

export const newPlay = 0.02;
export const wornPlay = 0.3;

// ---- ways out when no joint has both ends

export const mostWays = 3;
