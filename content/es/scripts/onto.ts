// Ways from a size that is known on to the shaft.
export const words = {
  driveline: "Seguir con el cardán",
  onTo: {
    ends: "Unir estos dos extremos",
    torque: "¿Aguantará el par?",
    angles: "Ángulos del cardán",
    clips: "Anillos y ajuste",
    fasteners: "Con qué apriete",
  },
} as const;
