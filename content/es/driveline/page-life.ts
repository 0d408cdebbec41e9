// Lo que explica la página de la vida.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "Cuántas horas duran las agujas con un par, un ángulo y una velocidad, y qué es lo que más lo cambia.",
  purpose: [
    "Las agujas de una junta van y vienen dos veces por vuelta. Lo pronto que se cansan depende del ángulo, de la velocidad y, sobre todo, del par: la mitad del ángulo dobla la vida, la mitad del par la hace diez veces más larga.",
    "Los fabricantes dan la capacidad de una cruceta de dos maneras que no se deben mezclar. Mire en el catálogo cuál de ellas es el número, y póngalo en su propio campo.",
  ],
  groups: { work: "Lo que hace la junta", joint: "Qué capacidad tiene" },
  hints: {
    torque: "Durante la mayor parte de su trabajo, no el máximo.",
    angle: "Como trabaja.",
    speed: "Durante la mayor parte de su trabajo.",
    shock: "Motor eléctrico 1, de gasolina 1,25, diésel 1,3, como los imprime un catálogo.",
    rating: "Solo si el fabricante la da así.",
    capacity: "Solo si el fabricante la da así.",
    life: "Calcula hacia atrás: ¿qué tiene que decir el catálogo?",
  },
  example: "Una vagoneta de inspección inventada, con una capacidad que no es real.",
};
