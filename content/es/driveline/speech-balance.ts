// Lo que se dice del desequilibrio.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

export const balance: CalculationWords = {
  title: "Equilibrado del cardán",
  inputs: {
    mass: { label: "Masa del cardán", why: "Entre 10 g y 2 t." },
    speed: { label: "Velocidad máxima", why: "Por encima de 20 000 rev/min no gira ningún cardán así." },
    grade: { label: "Grado de equilibrado G", why: "Los grados van de 0,4 a 4000." },
    unbalance: {
      label: "Desequilibrio que se midió",
      why: "Mire su unidad: g·mm, g·cm y oz·in difieren en cientos.",
    },
  },
  parts: { permissible: "Lo que se permite", measured: "A qué equivale el desequilibrio medido" },
  cautions: turning,
  unchecked: [
    "Si el cardán se mantiene rígido: cerca de su velocidad crítica ningún equilibrado de esta clase se sostiene.",
    "El descentrado, las crucetas gastadas y los estriados flojos, que ningún peso corrige.",
    "Cómo sujeta el cardán la máquina del taller, y cuál es su propio error.",
  ],
};

export const say = {
  unbalance: "Desequilibrio permitido, cardán entero",
  plane: "En cada uno de dos planos, extremos iguales",
  eccentricity: "Centro de masa fuera del eje, a lo más",
  grade: (grade: number, says: string): string => `Grado ${grade}, ${says}`,
  slow: (speed: string): string =>
    `Por debajo de ${speed} normalmente no hace falta equilibrar, según imprime un fabricante.`,
  amounts: "Grado al que equivale",
  gradeTitle: "Grado de equilibrado",
};
