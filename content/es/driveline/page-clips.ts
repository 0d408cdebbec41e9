// Lo que explica la página de los anillos y el ajuste.
import type { PageWords } from "./description";

export const page: PageWords = {
  about:
    "Si una cruceta tiene juego o aprieta entre sus anillos, qué anillos irían, y cómo queda un dado en su alojamiento.",
  purpose: [
    "Lo que sobra entre horquilla, cruceta y dos anillos es el juego. Por debajo de cero la cruceta aprieta; con demasiado golpea. Los fabricantes admiten de nada a un cuarto de milímetro, y no coinciden.",
    "Las lecturas nunca son exactas, así que el resultado dice con qué seguridad se sabe. Los anillos de una serie se eligen de modo que no aprieten, iguales a los dos lados.",
  ],
  groups: { across: "A lo largo de la horquilla", fit: "Dado y alojamiento" },
  hints: {
    hold: "Por fuera de las orejas: anillos en ranuras de los alojamientos. Por dentro: anillos en C en ranuras de los dados.",
    yoke: "Anillos por fuera: entre las caras interiores de las dos ranuras. Anillos por dentro: de oreja a oreja, sobre las caras interiores maquinadas.",
    joint:
      "Anillos por fuera: sobre los dados, empujados a fondo. Anillos por dentro: entre las caras interiores de las ranuras de los dados.",
    within: "Un calibrador es bueno hasta unos 0,03 mm; una lectura dentro de una ranura, hasta 0,05.",
    clip: "Con un micrómetro, plano, en tres lugares.",
    other: "Solo si es distinto.",
    clipwithin: "Un micrómetro es bueno hasta 0,01 mm.",
    float: "Lo que quiere que sobre.",
    cap: "Limpio, en dos lugares.",
    bore1: "Dos veces, a un cuarto de vuelta: tome la menor.",
    bore2: "Las orejas pueden ser distintas.",
    capwithin:
      "Un calibrador dentro de un alojamiento es bueno hasta unos 0,04 mm; un micrómetro de interiores, hasta 0,01.",
    size: "Lo que debería medir el dado, como 27 mm.",
    class: "h6 es la más ajustada.",
  },
  example:
    "Una reparación inventada con números del caso de un dueño: 41,35 mm entre las orejas, una cruceta que figura con 37,617 mm, anillos de 1,5 mm; y un dado de 27,00 mm ante alojamientos de 26,92 y 26,80 mm.",
};
