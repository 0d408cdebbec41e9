// Every word the card says by itself; labels that never change are in templates/card.html.
import type { Quantity, Unit } from "../../matcher/types";

export const unitWords: Record<Unit, string> = { in: "pulgadas", mm: "milímetros" };

const endWords = (end: number, ends: number): string =>
  ends < 2 ? "" : end === 0 ? ", primer extremo" : ", el otro extremo";

export const words = {
  progress: (step: number, steps: number) => `Paso ${step} de ${steps}`,
  asks: (from: string) => (from ? `${from} le pide que mida una cruceta` : "Le piden que mida una cruceta"),
  asked: (quantity: Quantity, end: number, ends: number) =>
    `${quantity === "cap" ? "el diámetro de dos dados" : "el largo, dos veces"}${endWords(end, ends)}`,
  askedHold: (end: number, ends: number) => `cómo va sujeta la cruceta, por los dibujos${endWords(end, ends)}`,
  tool: "¿Con qué mide?",
  hold: (end: number, ends: number) =>
    ends < 2
      ? "¿Cómo va sujeta la cruceta?"
      : `¿Cómo va sujeto ${end === 0 ? "el primer extremo" : "el otro extremo"}?`,
  reading: (quantity: Quantity, turn: number, end: number, ends: number) =>
    `${
      quantity === "cap"
        ? turn === 0
          ? "Un dado: su diámetro"
          : "El dado opuesto: su diámetro"
        : turn === 0
          ? "El largo"
          : "El largo, otra vez"
    }${endWords(end, ends)}`,
  readingLabel: (unit: Unit) => `Lectura en ${unitWords[unit]}`,
  hint: (quantity: Quantity, turn: number, unit: Unit) => {
    const example = quantity === "cap" ? (unit === "in" ? "1,062" : "27,00") : unit === "in" ? "3,219" : "81,75";
    const again =
      turn === 0
        ? ""
        : quantity === "cap"
          ? "Dos dados pueden diferir: eso importa. "
          : "Primero retire el calibrador. ";
    return `${again}Escríbala como la lee, por ejemplo ${example}. También vale una fracción.`;
  },
  missing: "Aquí aún no hay nada escrito. Si no puede medir esto, pulse Siguiente otra vez para dejarlo fuera.",
  start: "Empezar",
  next: "Siguiente",
  end: "Listo. Devolverlo",
  nothing: "Lo ha dejado todo fuera, así que no hay nada que enviar. Vuelva atrás y mida al menos una cosa.",
  summary: (quantity: Quantity, end: number, ends: number, readings: string[]) =>
    `${quantity === "cap" ? "Diámetro del dado" : "Largo"}${endWords(end, ends)}: ${readings.length ? readings.join("; ") : "dejado fuera"}`,
  check: "Mírelo una vez más:",
  subject: "Lecturas de una cruceta",
  message: "Aquí están las lecturas. El enlace las abre:\n",
  whatNow: {
    empty: "Esta página necesita un enlace",
    broken: "Este enlace no está entero",
    unreadable: "Este enlace no dice qué hay que medir",
  },
  noCore: "Una parte de esta página no llegó. Cárguela otra vez donde haya señal.",
  noCoreTitle: "Esta página no está completa",
} as const;
