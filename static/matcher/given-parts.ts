// Constants of identifying in tables without joints. Lengths are millimetres.

// How far a part may be made from its figure, either way.
export const madePart = 0.1;
// A reading and a figure that together are no better than this name nothing outright.
export const coarsePart = 0.5;
// A worn spline or pilot may read so much short of its size.
export const wornPart = 0.5;
