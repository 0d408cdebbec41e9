// Lo que explica la página del equilibrado.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "Cuánto desequilibrio puede tener un cardán de una masa y una velocidad, por grado de ISO 21940-11.",
  purpose: [
    "Un desequilibrio es una masa por lo lejos que está del eje. Lo que puede tener un cardán baja con su velocidad y crece con su masa; el grado G es la velocidad con la que puede dar vueltas su centro de masa, en mm/s.",
    "Equilibrar es trabajo de un taller de cardanes. Con esta página puede decir qué pedir, y leer lo que informa el taller.",
  ],
  groups: { shaft: "El cardán" },
  hints: {
    mass: "Tubo, horquillas y crucetas juntos, en una balanza.",
    speed: "La mayor a la que gira.",
    grade: "40 para cardanes, 16 con exigencias especiales.",
    unbalance: "Del informe del taller: ¿qué grado es?",
  },
  example: "Una vagoneta de inspección inventada con un cardán de 6 kg y un informe que no es real.",
};
