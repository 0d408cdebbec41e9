// Lo que se dice de una consulta, o de un cuadro, que no se puede usar como está: qué está mal, y qué hacer.
import type { Faces, Hold, Measurand } from "./types";
import { inch, type Reading } from "./reading";
import { local } from "./speech-number";
import { both, called, facesWords, holdWords, list } from "./speech-words";

export const otherChart = (): string => "Esta página y su cuadro no van juntos. Cargue la página otra vez.";
export const notQuery = (): string =>
  "Aquí no hay ninguna consulta. Tiene que ser un objeto con una lista de extremos.";
export const notEnd = (): string => "Un extremo tiene que ser un objeto con una sujeción y lecturas.";
export const notText = (): string => "Una lectura tiene que ser texto, como 27.00 mm.";
export const notReadings = (quantity: Measurand): string =>
  `El ${called[quantity]} tiene que ser una lista de lecturas, como 27.00 mm.`;
export const howManyEnds = (n: number): string =>
  `Una cruceta tiene extremos de una clase, o de dos: dé uno o dos extremos${n > 2 ? `, no ${n}` : ""}.`;
export const emptyEnd = (n: number): string =>
  `El ${n === 0 ? "primer" : "segundo"} extremo no tiene lecturas. Mídalo, o quite ese extremo.`;
export const tooMany = (n: number, most: number): string =>
  `Hay ${n} lecturas; solo se miran ${most}. Con seis buenas sobra.`;
export const unknownWord = (name: string, text: string, words: readonly string[]): string =>
  `«${text}» no es un valor conocido de «${name}». Use ${list(words, "o")}.`;
export const yokeFaces = (hold: Hold, right: readonly Faces[]): string =>
  `Una horquilla para ${holdWords[hold]} vale por una cruceta medida ${list(
    right.map((f) => facesWords[f]),
    "o",
  )}. Quite las caras.`;
export const capWiderThanAcross = (): string =>
  "El dado es por lo menos tan ancho como toda la cruceta. Mire si dado y largo están cambiados de lugar, o en otra unidad.";

export function facesDoNotGo(hold: Hold, faces: Faces, right: readonly Faces[]): string {
  return `Una cruceta sujeta por ${holdWords[hold]} no se mide ${facesWords[faces]}. Mídala ${list(
    right.map((f) => facesWords[f]),
    "o",
  )}.`;
}

export function noSuchLength(quantity: Measurand, r: Reading): string {
  const seen: Record<Measurand, string> = {
    cap: `Ninguna cruceta de transmisión tiene un dado de ${both(r.mm, r.unit)}`,
    across: `Ninguna cruceta de transmisión tiene un largo de ${both(r.mm, r.unit)}`,
    clip: `Ningún anillo tiene un grueso de ${both(r.mm, r.unit)}`,
  };
  return `${seen[quantity]}. Mire la unidad y la coma decimal${otherUnit(quantity, r)}.`;
}

// Un calibrador que quedó en la otra unidad es la razón más probable.
function otherUnit(quantity: Measurand, r: Reading): string {
  const mm = r.unit === "mm" ? r.mm * inch : r.mm / inch;
  const [least, most] = likely[quantity];
  const fits = mm >= least && mm <= most;
  return fits ? `: ${local(r.text.replace(/ \w+$/, r.unit === "mm" ? " in" : " mm"))} sí puede ser` : "";
}

const likely: Record<Measurand, readonly [number, number]> = { cap: [12, 100], across: [30, 250], clip: [1, 3] };
