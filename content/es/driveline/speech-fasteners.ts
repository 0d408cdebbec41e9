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
