// Lo que se dice de unir dos extremos; al lado están las oraciones de la identificación.
import { holdWords } from "../matcher/speech-words";
import type { Hold, Verdict } from "../matcher/types";
import type { CalculationWords } from "./description";
import { fitting } from "./speech-cautions";

const holds = Object.fromEntries(
  (Object.keys(holdWords) as Hold[]).map((hold) => [hold, hold === "unknown" ? "no se sabe" : holdWords[hold]]),
);
const taken = { joint: "en una cruceta", yoke: "en una horquilla sola" };

export const ends: CalculationWords = {
  title: "Unir dos extremos",
  inputs: {
    hold1: { label: "Primer extremo, sujeto por", options: holds },
    taken1: { label: "Primer extremo, medido", options: taken },
    cap1: { label: "Primer extremo, dado (o alojamiento)" },
    across1: { label: "Primer extremo, largo" },
    hold2: { label: "Segundo extremo, sujeto por", options: holds },
    taken2: { label: "Segundo extremo, medido", options: taken },
    cap2: { label: "Segundo extremo, dado (o alojamiento)" },
    across2: { label: "Segundo extremo, largo" },
    unit: { label: "Las lecturas sin unidad están en", options: { mm: "milímetros", in: "pulgadas" } },
    tool: {
      label: "Leído con",
      options: {
        "digital-caliper": "calibrador digital",
        "dial-caliper": "calibrador de carátula",
        "vernier-caliper": "calibrador con nonio, 0,02 mm",
        "vernier-caliper-coarse": "calibrador con nonio, 0,05 mm",
        micrometer: "micrómetro",
        "steel-rule": "regla de acero",
        tape: "cinta métrica",
      },
    },
    condition: { label: "Estado", options: { used: "usada", new: "nueva", worn: "gastada", rusted: "oxidada" } },
  },
  parts: {
    each: "Los dos extremos",
    joints: "Crucetas que van con los dos",
    chains: "Una cruceta y una horquilla cambiada",
  },
  cautions: fitting,
  unchecked: [
    "Si la cruceta aguanta el par, a ese ángulo y velocidad: hay una página para cada cosa.",
    "Si se fabrica una horquilla de esa medida para la brida, el estriado o el tubo donde tiene que ir.",
    "Otras caras que las que van con la sujeción: la página de identificar las tiene todas.",
  ],
};

export const say = {
  noChart: "El cuadro todavía no está aquí. El resultado sale cuando haya llegado.",
  end: (n: number): string => (n === 0 ? "Primer extremo" : "Segundo extremo"),
  none: "en ninguna fila",
  joint: (verdict: Verdict): string =>
    verdict === "identified" ? "Cruceta que va con los dos" : "Cruceta que puede ir con los dos",
  noJoint: "Ninguna cruceta del cuadro tiene los dos extremos.",
  way: (n: number): string => `Manera ${n}`,
  noWay: (fits: boolean): string =>
    fits
      ? "No hace falta ninguna: una cruceta va con los dos extremos."
      : "No se conoce ninguna. Mida otra vez, o tienen que cambiar las dos horquillas.",
  shop: "Van primero las que dejan más en su sitio. Soldar una horquilla y equilibrar el cardán es trabajo de un taller de cardanes.",
};
