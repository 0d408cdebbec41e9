// Qué hacer después, un paso en cada oración.
import type { Quantity, Unit } from "./types";
import type { MeasuredEnd, RowFit } from "./agree";
import type { Measured } from "./estimate";
import * as given from "./given";
import type { Doubt } from "./claim";
import { both, called, facesWords, holdWords, list } from "./speech-words";
import {
  askService,
  checkYoke,
  cleanYoke,
  onYoke,
  otherYoke,
  readOnYoke,
  tryByHand,
  yokes as yokesBy,
} from "./speech-yokes";

export const beforePressing = (yokes: number): string =>
  yokes > 0
    ? tryByHand()
    : "Antes de meterla a presión, ponga la cruceta nueva al lado de la vieja: dados, largo y anillos tienen que verse iguales.";
export const takeBoth = (): string => "Mida las dos cosas, el dado y el largo.";
export const firstReading = (): string => "Mida un dado, después el largo, y escriba cada lectura.";
export const putRight = (): string => "Cambie o quite lo que está marcado, y mire otra vez.";
export const otherPair = (yokes: number): string =>
  yokes > 0
    ? otherYoke()
    : "Mida también el otro par de dados: algunas crucetas de conversión tienen un extremo como este.";
export const eachPair = (): string =>
  "Marque qué dados están uno frente al otro, y escriba cada par como un extremo aparte.";
export const lookAtHold = (): string => "Mire cómo va sujeta, y elija eso.";
export const cleanAndRepeat = (yokes: number): string =>
  yokes > 0 ? cleanYoke() : "Limpie los dados, empújelos a fondo y tome cada lectura otra vez, dos o tres veces.";
export function checkFaces(end: MeasuredEnd): string {
  const across = end.yoke === undefined ? null : yokesBy[end.yoke.hold].across;
  if (across !== null) return checkYoke(across);
  return end.hold === "unknown"
    ? "Mire cómo va sujeta: eso dice entre qué caras se mide."
    : `Compruebe que midió ${facesWords[end.faces]}.`;
}
export const measureOtherFaces = (faces: string): string => `Tome el largo otra vez, ${faces}.`;
export const whichEnd = (): string =>
  "Pregunte por una cruceta que una estos dos extremos: cada extremo es conocido, el par no está en el cuadro.";

// Aquello de lo que son las lecturas de las que hay algo que decir, cada cosa una vez. En una horquilla se llama de otra manera.
function wordsOf(asked: readonly MeasuredEnd[], which: (m: Measured) => boolean): Noun[] {
  const measured = asked.flatMap((e) => [e.cap, e.across]).filter((m) => m !== undefined);
  const word = (m: Measured): Noun => (asked[m.end]?.yoke === undefined ? onJoint : onYokes)[m.quantity];
  return [...new Set(measured.filter(which).map(word))];
}

// Con artículo, solo y detrás de "de".
interface Noun {
  the: string;
  of: string;
}
const onJoint: Record<Quantity, Noun> = {
  cap: { the: "el dado", of: "del dado" },
  across: { the: "el largo", of: "del largo" },
};
const onYokes: Record<Quantity, Noun> = {
  cap: { the: `el ${readOnYoke.cap}`, of: `del ${readOnYoke.cap}` },
  across: { the: `la ${readOnYoke.across}`, of: `de la ${readOnYoke.across}` },
};
const ofAll = (nouns: readonly Noun[]): string => list(nouns.map((n) => n.of));

/** Una sola lectura puede esconder un descuido. */
export function secondReading(asked: readonly MeasuredEnd[]): string | undefined {
  const once = wordsOf(asked, (m) => m.readings === 1);
  return once.length === 0
    ? undefined
    : `Tome una segunda lectura ${ofAll(once)}: una sola puede esconder un descuido.`;
}

/** Las lecturas que se dispersan más de lo que explica el instrumento tienen una causa que se puede encontrar. */
export function steadier(asked: readonly MeasuredEnd[]): string | undefined {
  const wide = wordsOf(asked, (m) => m.wide);
  return wide.length === 0
    ? undefined
    : `Las lecturas ${ofAll(wide)} se dispersan más de lo que explica el instrumento: limpie la pieza y tómelas otra vez.`;
}

/** Un dado gastado ha trabajado en su alojamiento. */
export const lookAtBores = (renew: boolean): string =>
  `${renew ? "Cambie esta cruceta: su dado está por debajo de su medida en más que cualquier juego publicado. " : ""}Mire también los alojamientos de la horquilla: el dado puede haber trabajado en ellos.`;

/** La medida más cercana concordaría si el dado estuviera gastado. */
export const tryWorn = (name: string, mm: number, lead: Unit): string =>
  `Si el dado está gastado, dígalo y mire otra vez: está ${both(mm, lead)} por debajo del de ${name}, y todo lo demás concuerda.`;

/** Medio milímetro se pierde por dejar cifras fuera. */
export function everyDigit(asked: readonly MeasuredEnd[]): string | undefined {
  const coarse = wordsOf(asked, (m) => m.step >= given.coarseStep);
  return coarse.length === 0
    ? undefined
    : `Mida ${list(coarse.map((n) => n.the))} con un calibrador y escriba todas las cifras que muestra, también los ceros.`;
}

/** En el mostrador se pregunta por los números cuando no se conoce ningún nombre. */
export function orderByFigures(asked: readonly MeasuredEnd[]): string {
  const ends = asked.map((e) => {
    const parts: string[] = [];
    if (e.cap) parts.push(`dado ${both(e.cap.mm, e.cap.how.lead)}`);
    if (e.across)
      parts.push(
        `largo ${both(e.across.mm, e.across.how.lead)}${e.faces === "unknown" ? "" : ` ${facesWords[e.faces]}`}`,
      );
    if (e.hold !== "unknown") parts.push(`sujeta por ${holdWords[e.hold]}`);
    return parts.join(", ");
  });
  return `Si las lecturas salen iguales, pídala por sus números: ${ends.join("; y ")}.`;
}

/** El paso que resuelve una duda. */
export function settle(doubt: Doubt, fit: RowFit, yokes: number): string | undefined {
  switch (doubt.kind) {
    case "one-quantity":
      return doubt.yoke === undefined ? `Mida también el ${called[doubt.missing]}.` : onYoke(doubt.yoke, doubt.missing);
    case "second-size":
      return doubt.says;
    case "hold-not-asked":
      return doubt.hold === "unknown"
        ? lookAtHold()
        : `Mire cómo va sujeta la suya: esta medida va sujeta por ${holdWords[doubt.hold]}.`;
    case "faces-not-asked":
      return "Diga entre qué caras midió el largo.";
    case "clips-unmeasured":
      return doubt.says;
    case "service-joint":
      return askService();
    case "coarse":
      return undefined; // lo dice el paso de las cifras, o el cuadro mismo es grueso
    case "chart-digits":
      return "Pida al vendedor las medidas con sus decimales, y compárelas con sus lecturas antes de encargar.";
    case "memory":
      return "De memoria, no publicado: compare cada medida con la cruceta vieja antes de encargar.";
    case "chart-hold":
      return "Pregunte cómo va sujeta antes de encargar, y compárelo con la suya.";
    case "chart-faces":
      return "Pregunte entre qué caras se mide su largo antes de encargar.";
    case "other-figure":
      return "Tome la lectura otra vez: las fuentes no coinciden en esta medida.";
    case "no-figure":
      return `Pregunte el ${called[doubt.quantity]} de ${fit.row.row.name} antes de encargar.`;
    case "not-likely":
      return cleanAndRepeat(yokes);
  }
}

/** Una sujeción que solo se sabe de memoria se puede ver en la cruceta misma. */
export function checkHold(fit: RowFit): string | undefined {
  const holds = [
    ...new Set(
      fit.ends
        .filter((e) => e.end.holdBasis === "memory" && e.end.hold !== "unknown")
        .map((e) => holdWords[e.end.hold]),
    ),
  ];
  return holds.length === 0
    ? undefined
    : `Compruebe en la cruceta nueva que va sujeta por ${list(holds)}: el cuadro solo lo sabe de memoria.`;
}
