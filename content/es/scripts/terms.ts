// The words of the trade that several parts use. What pages made by Go call them is in words.
import type { Basis, Hold, Measurand, Verdict } from "../../matcher/types";

export const verdictWords: Record<Verdict, string> = {
  identified: "Identificada",
  possible: "Posible",
  between: "Entre varias",
  "not-in-chart": "No está en el cuadro",
  "measure-again": "Medir otra vez",
};

export const basisWords: Record<Basis, string> = {
  published: "publicado",
  measured: "medido",
  "common-practice": "uso común",
  memory: "de memoria",
};

export const holdWords: Record<Hold, string> = {
  "outside-clip": "anillo exterior",
  "inside-clip": "anillo interior",
  plate: "placa atornillada",
  strap: "abrazadera o perno en U",
  wing: "aletas atornilladas",
  injected: "plástico inyectado",
  staked: "remachada",
  unknown: "sujeción no conocida",
};

export const quantityWords: Record<Measurand, string> = { cap: "dado", across: "largo", clip: "anillo" };

export function endTitle(n: number): string {
  return n === 0 ? "Primer extremo" : "El otro extremo";
}
