// Ways from a size that is known on to the shaft.
export const words = {
  driveline: "On to the shaft",
  onTo: {
    ends: "Join these two ends",
    torque: "Will it carry the torque?",
    angles: "Angles of the shaft",
    clips: "Clips and fit",
    fasteners: "How tight",
  },
} as const;
