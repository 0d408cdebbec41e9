// Lo que dice un resultado: primero el resultado, después los números al lado de los del cuadro y al final qué hacer.
// Palabras cortas, para quien tiene las manos sucias. Cada oración se hace aquí o en un speech-*.ts de al lado.
//
// Nunca un tanto por ciento, y nunca que una cruceta va a aguantar: solo lo que se comparó.
import type { Faces, Hold, Quantity, Size, Unit } from "./types";
import type { EndFit, MeasuredEnd, RowFit } from "./agree";
import * as given from "./given";
import type { Doubt } from "./claim";
import { putRight } from "./speech-estimate";
import type { Worn } from "./wear";
import { inch } from "./reading";
import { checkedYokes, clipsNotMeasured, readOnYoke, serviceOnly } from "./speech-yokes";
import { local } from "./speech-number";
import {
  basisWords,
  both,
  called,
  capital,
  facesWords,
  holdWords,
  isNothing,
  list,
  ofEnd,
  offBy,
  sizeCalled,
  some,
} from "./speech-words";

// ---- encabezados

// Lo que se midió, según en cuántas horquillas se leyó; en ninguna: la cruceta misma.
const is = ["Es", "Esta horquilla lleva", "Estas horquillas llevan"];
const mayBe = ["Puede ser", "Esta horquilla puede llevar", "Estas horquillas pueden llevar"];

export function identified(names: readonly string[], conversion: boolean, yokes: number): string {
  return `${is[yokes] ?? ""} ${sizeCalled(names, conversion)}.`;
}

export function possible(
  names: readonly string[],
  conversion: boolean,
  yokes: number,
  doubt: Doubt | undefined,
): string {
  return `${mayBe[yokes] ?? ""} ${sizeCalled(names, conversion)}, pero ${doubt === undefined ? "estas lecturas no lo deciden" : but(doubt)}.`;
}

function but(doubt: Doubt): string {
  switch (doubt.kind) {
    case "one-quantity":
      return `solo se midió ${doubt.yoke === undefined ? `el ${called[doubt.measured]}` : onYokes[doubt.measured]}`;
    case "second-size":
      return "una lectura no va con ella";
    case "hold-not-asked":
      return "todavía no se sabe cómo va sujeta la suya";
    case "faces-not-asked":
      return "no se sabe entre qué caras midió";
    case "clips-unmeasured":
      return clipsNotMeasured();
    case "service-joint":
      return serviceOnly();
    case "coarse":
      return "estas lecturas y el cuadro juntos son demasiado gruesos para nombrarla sin más";
    case "chart-digits":
      return `el cuadro trae ${local(doubt.text)} sin más cifras`;
    case "memory":
      return "las medidas del cuadro para ella son de memoria, no publicadas";
    case "chart-hold":
      return "el cuadro no sabe cómo va sujeta esa cruceta";
    case "chart-faces":
      return "el cuadro no sabe con qué caras va su largo";
    case "other-figure":
      return `el ${called[doubt.quantity]} concuerda solo con otro valor que se da para ella`;
    case "no-figure":
      return `el cuadro no tiene su ${called[doubt.quantity]}`;
    case "not-likely":
      return "estas lecturas no lo deciden";
  }
}

const onYokes: Record<Quantity, string> = { cap: `el ${readOnYoke.cap}`, across: `la ${readOnYoke.across}` };

export const between = (names: readonly string[]): string =>
  `Estas lecturas van con ${names.length} medidas: ${some(names, 4)}.`;
export const notInChart = (ends: number, yokes: number): string =>
  yokes === 1
    ? "Ninguna fila del cuadro va con esta horquilla."
    : ends === 2
      ? "Ninguna fila del cuadro tiene estos dos extremos."
      : "Esta cruceta no está en ninguna fila del cuadro.";
export const cannotRead = (n: number): string =>
  n === 1 ? "Primero hay que corregir una cosa." : `Primero hay que corregir ${n} cosas.`;
export const nothingMeasured = (): string => "Todavía no hay ninguna lectura.";
export const doNotBelong = (): string => "Mida otra vez: estas lecturas no son de una misma pieza.";
export const otherFaces = (right: readonly Faces[]): string =>
  `Mida otra vez, ${list(
    right.map((f) => facesWords[f]),
    "o",
  )}.`;

// ---- por qué

/** La unidad que se dice primero. */
export function leadOf(asked: readonly MeasuredEnd[]): Unit {
  return asked.flatMap((e) => [e.cap, e.across]).find((m) => m !== undefined)?.how.lead ?? "mm";
}

/** Las lecturas al lado de los valores del cuadro, una oración para cada una. */
export function beside(fit: RowFit): string[] {
  return fit.ends.flatMap((end, n) =>
    end.fits.map((f) => {
      const what = `${fit.ends.length > 1 ? `extremo ${n + 1}, ` : ""}${called[f.quantity]}`;
      const yours = isNothing(f.difference)
        ? "el suyo es igual"
        : `el suyo es ${offBy(f.difference, f.quantity, f.measured.how.lead)}`;
      return `${capital(what)}: ${both(f.measured.mm, f.measured.how.lead)}. El cuadro tiene ${local(f.figure.text)}: ${yours}.`;
    }),
  );
}

/** Lo que se descontó de las lecturas por el estado de la pieza. */
export function condition(asked: readonly MeasuredEnd[]): string[] {
  const all = asked.flatMap((e) => [e.cap, e.across]).filter((m) => m !== undefined);
  const put = [...new Set(all.flatMap((m) => putRight(m.quantity, m.how, m.shift, m.estimate.uncertainty)))];
  return put.length === 0 ? [] : [`${capital(list(put))}: eso ya está corregido en estos números.`];
}

/** Cuánto pueden fallar juntos las lecturas y el cuadro. */
export function within(bounds: readonly { quantity: string; mm: number }[], lead: Unit): string {
  const each = bounds.map((b) => `±${both(b.mm, lead)} en el ${called[b.quantity as Quantity]}`);
  return `Las lecturas y el cuadro juntos pueden fallar en ${list(each)}, así que ${bounds.length > 1 ? "concuerdan" : "concuerda"}.`;
}

/** Valores gruesos del cuadro, que concuerdan con mucho. */
export function wholeDigits(fit: RowFit): string[] {
  const coarse = fit.ends.flatMap((e) => e.fits.filter((f) => f.figure.half >= given.wholeDigits));
  const widest = Math.max(...coarse.map((f) => f.figure.half));
  const lead = coarse[0]?.measured.how.lead ?? "mm";
  return coarse.length === 0
    ? []
    : [
        `El cuadro trae ${list([...new Set(coarse.map((f) => local(f.figure.text)))])} sin más cifras: una cruceta con ${both(widest, lead)} de diferencia también concordaría.`,
      ];
}

/** A qué distancia queda todo lo demás, en lugar de cuán probable es esto; el valor va redondeado hacia abajo. */
export function nothingWithin(mm: number, holds: readonly Hold[], lead: Unit): string[] {
  if (!Number.isFinite(mm) || mm < 0.01) return [];
  const step = mm < 0.1 ? 100 : 10;
  const millimetres = local(`${Math.floor(mm * step) / step} mm`);
  const inches = local(`${(Math.floor((mm / inch) * 1000) / 1000).toFixed(3)} in`);
  const [hold = "unknown"] = holds;
  const alike = holds.every((h) => h === hold);
  const held = !alike
    ? " que vaya sujeta como la suya"
    : hold === "unknown"
      ? ""
      : ` que vaya sujeta por ${holdWords[hold]}`;
  return [
    `Ninguna otra del cuadro${held} queda a menos de ${lead === "in" ? `${inches} (${millimetres})` : `${millimetres} (${inches})`} de la suya en dado y largo a la vez.`,
  ];
}

/** Un dado por debajo de su medida, y lo que admiten dos fuentes. */
export function worn(w: Worn, lead: Unit): string {
  return `El dado${ofEnd(w.end)} da ${both(w.short, lead)} menos que su medida: desgaste, si la lectura no falla. Las fuentes no coinciden en cuánto juego puede tener una cruceta montada: hasta ${both(given.playAllowed, lead)} (Toyota, propeller-shaft assembly), o hasta ${both(given.playRenew, lead)}, y por encima de eso se cambia (Dana, driveshaft service manual).`;
}

export function nextNearest(size: Size): string {
  const miss = size.because.slice(0, 1).toLowerCase() + size.because.slice(1);
  return `La otra medida más cercana es ${size.names[0] ?? ""}: ${miss}`;
}

export function nearestMisses(size: Size): string {
  const miss = size.because.slice(0, 1).toLowerCase() + size.because.slice(1);
  return `La más cercana es ${size.names[0] ?? ""}, y no concuerda: ${miss}`;
}

/** En qué se fundan los valores del cuadro, la sujeción y las caras; las dos últimas solo donde se fundan en menos. */
export function basis(fit: RowFit): string[] {
  const says = [`Los valores del cuadro para ella son ${basisWords[fit.row.basis]}.`];
  const weak = (end: EndFit): string[] => {
    if (fit.row.basis === "memory" || end.end.hold === "unknown") return [];
    const parts: string[] = [];
    if (end.end.holdBasis === "memory") parts.push(`que va sujeta por ${holdWords[end.end.hold]}`);
    if (end.end.facesBasis === "memory" && end.end.faces !== "unknown")
      parts.push(`que se mide ${facesWords[end.end.faces]}`);
    return parts;
  };
  const parts = [...new Set(fit.ends.flatMap(weak))];
  if (parts.length > 0) says.push(`${capital(list(parts))} se sabe de memoria, no está publicado.`);
  return says;
}

export const otherHolds = (sizes: readonly Size[]): string[] =>
  sizes.map((s) => {
    const more = s.names.length > 1;
    return `${list(s.names)} ${more ? "tienen" : "tiene"} los mismos valores, pero ${more ? "van sujetas" : "va sujeta"} por ${holdWords[s.hold]}.`;
  });

/** Lo que se comparó y lo que no. */
export function checked(compared: readonly Quantity[], asked: readonly MeasuredEnd[]): string {
  const seen = asked.every((e) => e.hold !== "unknown") ? ", y cómo va sujeta" : "";
  const other = asked.length === 1 ? "el otro par de dados, " : "";
  const yokes = asked.filter((e) => e.yoke !== undefined).length;
  const words = list([...new Set(compared)].map((q) => called[q]));
  if (yokes > 0) return checkedYokes(words, seen, asked);
  return `Se comparó: ${words}${seen}. No se comparó: ${other}grueso de los anillos, desgaste dentro de los dados, las horquillas.`;
}

export const holdNotInChart = (hold: Hold): string =>
  `El cuadro no tiene ninguna fila sujeta por ${holdWords[hold]}.${hold === "injected" ? " La cruceta que se vende para reemplazarla suele llevar anillos interiores." : ""}`;
export const notComplete = (): string =>
  "El cuadro no está completo: una cruceta que no está en él puede ser, aun así, de las comunes.";
export const facesInChart = (hold: Hold, asked: Faces, right: readonly Faces[]): string =>
  `Su largo está tomado ${facesWords[asked]}. El cuadro tiene ${hold === "unknown" ? "largos" : `crucetas sujetas por ${holdWords[hold]}`} solo ${list(
    right.map((f) => facesWords[f]),
    "o",
  )}, y lo uno y lo otro difieren en más que el paso entre algunas medidas.`;
export const coarseReadings = (): string => "Lecturas y valores tan gruesos no pueden separar medidas tan cercanas.";
