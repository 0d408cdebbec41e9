// Lo que explica la página de los tornillos.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "El par de apriete de un tornillo: lo publicado para la rosca, y lo que da la fórmula general.",
  purpose: [
    "Un tornillo sujeta porque se estira, y una llave mide eso mal: la mayor parte del par se va en rozamiento. Por eso va primero lo que un fabricante imprime para este mismo tornillo, y la fórmula solo donde no hay nada impreso.",
    "Las abrazaderas, las placas de seguridad y los tornillos autofrenados se usan una sola vez.",
  ],
  groups: { bolt: "El tornillo" },
  hints: {
    thread: "Como en la caja: 3/8-24, .375-24, M10 o M10x1.25.",
    grade: "Por las marcas de su cabeza.",
    condition: "Con aceite en la rosca cuenta como aceitado, y con grasa también.",
    series: "Como 1710: las filas de esa serie van primero.",
  },
  example: "Una vagoneta de inspección inventada con placas de una cruceta 1710.",
};
