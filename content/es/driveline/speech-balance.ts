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
  grounds: {
    "drive shafts": "cardanes",
    "limit of a check in the field, one maker": "límite de una comprobación en el terreno, un fabricante",
    "drive shafts with special demands": "cardanes con exigencias especiales",
    "below this speed balancing is normally not needed":
      "por debajo de esta velocidad normalmente no hace falta equilibrar",
    "U = G M / w; in g mm: 9549 G M / n with G in mm/s, M in kg, n in rev/min":
      "U = G M / w; en g mm: 9549 G M / n con G en mm/s, M en kg, n en rev/min",
    "A rotor that stays rigid: well below its bending critical speed. Of the whole shaft; half in each of two planes when both ends are alike.":
      "Un rotor que se mantiene rígido: muy por debajo de su velocidad crítica de flexión. Del cardán entero; la mitad en cada uno de dos planos cuando los dos extremos son iguales.",
  },
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
