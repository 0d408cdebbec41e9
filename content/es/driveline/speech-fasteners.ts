// Lo que se dice de apretar tornillos.
import { capital } from "../matcher/speech-words";
import type { CalculationWords } from "./description";
import { fitting } from "./speech-cautions";

export const fasteners: CalculationWords = {
  title: "Cuánto apretar",
  inputs: {
    thread: { label: "Rosca" },
    grade: {
      label: "Grado del tornillo",
      options: {
        "SAE-8": "SAE grado 8, seis marcas",
        "SAE-5": "SAE grado 5, tres marcas",
        "8.8": "8.8",
        "10.9": "10.9",
        "12.9": "12.9",
      },
    },
    condition: { label: "Rosca y asiento", options: { dry: "limpios y secos", oiled: "aceitados" } },
    series: { label: "Serie de la cruceta" },
  },
  parts: {
    published: "Publicado para esta rosca",
    formula: "Por la fórmula general",
    reuse: "Qué se puede usar otra vez",
  },
  cautions: fitting,
  unchecked: [
    "Recubrimientos, fijador de roscas y arandelas: cada cosa cambia cuánto del par se vuelve tracción.",
    "Si la tuerca o el agujero roscado aguanta tanto como el tornillo.",
    "El par del propio fabricante, que va por encima de todo esto.",
  ],
  grounds: {
    "SAE J429 grade 5, up to 1 in": "SAE J429 grado 5, hasta 1 in",
    "SAE J429 grade 8": "SAE J429 grado 8",
    "ISO 898-1 class 8.8 up to 16 mm": "ISO 898-1 clase 8.8 hasta 16 mm",
    "ISO 898-1 class 10.9": "ISO 898-1 clase 10.9",
    "ISO 898-1 class 12.9": "ISO 898-1 clase 12.9",
    "where class 8.8 changes": "donde cambia la clase 8.8",
    "ISO 898-1 class 8.8 above 16 mm": "ISO 898-1 clase 8.8 por encima de 16 mm",
    "clean and dry": "limpio y seco",
    "of proof load": "de la carga de prueba",
    "a decimal this near is meant for a sixteenth": "un decimal así de cercano quiere decir un dieciseisavo",
    "straps, lock straps and self-locking plate bolts are used once: fit new ones":
      "las abrazaderas, las placas de seguridad y los tornillos autofrenados de placa se usan una sola vez: ponga nuevos",
    "the same: straps and self-locking bolts are used once":
      "lo mismo: las abrazaderas y los tornillos autofrenados se usan una sola vez",
    "the same: straps and their bolts are used once": "lo mismo: las abrazaderas y sus tornillos se usan una sola vez",
    "never a bolt of a lower grade, and never one that was used before":
      "nunca un tornillo de grado menor, y nunca uno ya usado",
    "a U-bolt that is too tight crushes the cap": "un perno en U demasiado apretado aplasta el dado",
    "T = K d F, F = 0.75 x proof x stress area": "T = K d F, F = 0,75 x carga de prueba x sección resistente",
    "A general bolt of that grade. K varies widely with coating and oil. The torque of the joint's or vehicle's maker always comes first.":
      "Un tornillo general de ese grado. K varía mucho con el recubrimiento y el aceite. El par del fabricante de la cruceta o del vehículo va siempre primero.",
    "A = pi/4 (d - 0.9743/n)^2, n threads per inch": "A = pi/4 (d - 0,9743/n)^2, n hilos por pulgada",
    "Unified threads.": "Roscas unificadas.",
    "A = pi/4 (d - 0.9382 p)^2": "A = pi/4 (d - 0,9382 p)^2",
    "Metric ISO threads.": "Roscas métricas ISO.",
    oiled: "aceitado",
  },
};

export const say = {
  row: (item: string, series: string): string => capital(series === "" ? item : `${item}, ${series}`),
  span: (least: string, most: string): string => `${least} a ${most}`,
  noRow:
    "El cuadro no tiene ningún par publicado para esta rosca. Pregunte al fabricante antes de guiarse por la fórmula.",
  first:
    "Estos van antes que la fórmula; el valor del propio fabricante de la pieza o del vehículo va antes que los dos.",
  torque: "Par por la fórmula",
  preload: "Tracción en el tornillo",
  area: "Sección resistente de la rosca",
  proof: "Carga de prueba del grado",
  factor: "Factor de tuerca K",
  general: "Un valor general para un tornillo general. Solo el aceite le quita una cuarta parte.",
  rule: (says: string, ground: string): string => `${capital(says)} (${ground}).`,
};
