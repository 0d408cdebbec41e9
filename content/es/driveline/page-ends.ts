// Lo que explica la página de unir dos extremos.
import type { PageWords } from "./description";

const cap =
  "Diámetro exterior de un dado; en una horquilla sola, el alojamiento. Si son varias lecturas, con ; entre ellas.";
const across =
  "Entre las caras que van con la sujeción; la guía las muestra. Si son varias lecturas, con ; entre ellas.";

export const page: PageWords = {
  about:
    "Qué cruceta va con dos extremos de distinta medida, y donde no hay ninguna, qué horquilla cambiar para que una vaya.",
  purpose: [
    "Una cruceta de conversión tiene otra medida en cada par de dados. Donde el cuadro tiene una que va con los dos extremos, no hay que cambiar nada más.",
    "Donde no la tiene, una horquilla se queda y la otra se cambia por una que lleve una cruceta del cuadro. Las maneras van en orden: primero las que dejan más en su sitio.",
  ],
  groups: { one: "Primer extremo", two: "Segundo extremo", bench: "Cómo se midió" },
  hints: {
    hold1: "Lo que sujeta los dados.",
    taken1: "Una cruceta ya sacada, o la horquilla donde iba.",
    cap1: cap,
    across1: across,
    hold2: "Lo que sujeta los dados.",
    taken2: "Una cruceta ya sacada, o la horquilla donde iba.",
    cap2: cap,
    across2: across,
    unit: "Una lectura que trae su unidad la conserva.",
    tool: "Lo que puede prometer un instrumento decide cuánto es bastante cerca.",
    condition: "El desgaste y el óxido amplían lo que puede fallar una lectura.",
  },
  example:
    "Una vagoneta de inspección inventada: la brida de la caja de cambios tiene una medida, el eje de tractor otra.",
};
