// Every word the form says by itself. What the verdict says is the core's own text, so that the page and the
// command speak alike; labels in the markup are in words/identify.yaml.
import type { Measurand, SlipFound } from "../../matcher/types";
import type { Target } from "../../parts/identify/field";
import type { State } from "../../parts/identify/state";
import { endTitle, quantityWords } from "./terms";

const next: Record<"joint" | "yoke", Record<Measurand, string>> = {
  joint: { cap: "Otra lectura del dado", across: "Otra lectura del largo", clip: "Otra lectura del anillo" },
  yoke: {
    cap: "Otra lectura del alojamiento",
    across: "Otra lectura del ancho de la horquilla",
    clip: "Otra lectura del anillo",
  },
};

export const words = {
  partMissing:
    "Una parte de esta página no se cargó: nadie ha buscado descuidos conocidos de medición, y falta el dibujo. Se intenta otra vez con la siguiente lectura.",
  enquiry: "Escribir una hoja de consulta",
  waiting: "En espera de lecturas",
  start: "Elija lo que ve y después ponga un diámetro de dado y el largo.",
  startMore: "Dos o tres lecturas de cada uno dicen más que una: un descuido salta a la vista.",
  addReading: (state: State, { end, quantity }: Target) =>
    `${next[state.ends[end]?.taken ?? "joint"][quantity]}${state.ends.length > 1 ? `, ${endTitle(end).toLowerCase()}` : ""}`,
  onwardHold: "Ahora: mire cómo va sujeta",
  holdFirst: "Elija arriba cómo va sujeta, para ver entre qué se mide.",
  noDrawing: "No se pudo traer el dibujo; las palabras de abajo dicen lo mismo.",
  again: (quantities: string[]) =>
    `Mida otra vez el ${quantities.join(" y el ")}. Las lecturas anteriores se pueden volver a poner.`,
  lookAtHold: "Mírela otra vez y elija el dibujo que se le parece.",
  takenOut: "Retiradas, para medir otra vez:",
  putBack: "Volver a poner",
  areBack: (readings: string) => `${readings}: puestas otra vez.`,
  remove: (reading: string) => `quitar ${reading}`,
  added: (reading: string) => `${reading}: añadida.`,
  removed: (reading: string) => `${reading}: quitada.`,
  setAside: "apartada",
  misread: "mire otra vez",
  because: "Porque",
  compare: "Sus lecturas junto al cuadro",
  measure: "Medida",
  yours: "La suya",
  chart: "Cuadro",
  difference: "Difiere en",
  within: "Concuerda dentro de",
  tooFar: "demasiado",
  sizeLeft: "La medida",
  sizesLeft: "Medidas que quedan",
  sizesLeftAbout: "Estas lecturas no pueden separarlas.",
  share: (p: number) =>
    `${p >= 0.995 ? "más de 99" : p < 0.01 ? "menos de 1" : Math.round(p * 100)} de cada 100 según estas lecturas`,
  sameNames: "Un calibrador no puede distinguir estos nombres; son una sola medida.",
  near: "Las filas más cercanas, ninguna coincide",
  nearMatched: "Otras filas cercanas, que no coinciden",
  doesNotMatch: "No coincide.",
  sameFigures: "Mismos datos, otra sujeción",
  sameFiguresAbout: "El dado y el largo coinciden, la sujeción no. Estas no se intercambian.",
  conversions: "Crucetas de conversión con este extremo",
  ends: "Cada extremo por separado",
  readings: "Qué fue de las lecturas",
  used: "se usó",
  slips: "Un descuido que buscar",
  slipsAbout: "Nada se corrigió por sí solo. Mírelo y mida otra vez.",
  startAgain: (look: SlipFound["look"]) =>
    look === "hold"
      ? "Elegir otra vez la sujeción"
      : look === "unit"
        ? "Quitar las lecturas y elegir la unidad"
        : `Quitar las lecturas del ${quantityWords[look]} y medir otra vez`,
  showHow: "Mostrar cómo",
  ways: "Maneras de unir estos extremos",
  waysAbout: "Ninguna cruceta del cuadro los une tal como están. Primero van las que más conservan.",
  wayJoint: "Cruceta",
  wayTo: (end: number) => `${endTitle(end)}: una horquilla para una de estas`,
  next: "Qué hacer ahora",
  cautionTitle: "Antes de pedir:",
  caution:
    "compare la cruceta nueva con la vieja, dados, sujeción y largo, antes de prensar nada. Solo se comprobó la medida: no el desgaste, el par, el ángulo ni la velocidad.",
  cautionMemory: "El cuadro tiene esta fila de memoria, sin fuente. Haga confirmar la medida antes de pedir.",
  cautionFit:
    "Use protección para los ojos cuando se prensen o se golpeen los dados y no se ponga en la línea de la prensa. Vehículo nivelado, ruedas calzadas, sobre caballetes con carga nominal; marque la fase antes de desarmar nada. El manual del fabricante y un taller de cardanes tienen la última palabra.",
  toDetails: "ver por qué",
  copied: "La dirección de estas lecturas está en el portapapeles.",
  copyByHand: "Aquí no se permite copiar. Seleccione la dirección de abajo y cópiela.",
  shared: "Enviado.",
  shareTitle: "Lecturas de una cruceta",
  restored: "Lecturas tomadas de la dirección.",
  otherChart: (then: string, now: string) =>
    `La dirección se hizo con el cuadro ${then}; esta página tiene el cuadro ${now}. El resultado de abajo es según el cuadro de esta página.`,
  badAddress: "Una parte de la dirección no se pudo leer:",
  startedOver: "Todas las lecturas quitadas.",
  noChart: "No se pudo traer el cuadro, así que aquí aún no se puede identificar nada. Abajo está el método a mano.",
  noCore: "No llegó la parte de esta página que compara las lecturas.",
  badChart: "El cuadro tiene un formato que esta página no conoce. Cargue la página otra vez.",
  retry: "Intentar otra vez",
} as const;
