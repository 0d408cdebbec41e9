// Lo que se dice de una fila al lado de las lecturas.
import type { Basis, Hold, Quantity, Tool } from "./types";
import type { Fit, RowFit } from "./agree";
import type { How } from "./estimate";
import type { Figure } from "./prepared";
import { local } from "./speech-number";
import {
  basisWords,
  both,
  called,
  capital,
  holdWords,
  isNothing,
  jointIs,
  list,
  ofEnd,
  offBy,
  some,
  toolWords,
} from "./speech-words";

/** Por qué queda una fila que queda. */
export function fits(fit: RowFit): string {
  const quantities = [...new Set(fit.ends.flatMap((e) => e.fits.map((f) => f.quantity)))];
  const others = fit.ends.flatMap((e) => e.fits.filter((f) => f.other));
  const words = list(quantities.map((q) => called[q]));
  const says = [`${capital(words)} ${quantities.length > 1 ? "concuerdan" : "concuerda"}.`];
  for (const f of others)
    says.push(`El ${called[f.quantity]} concuerda solo con ${local(f.figure.text)}, otro valor que se da para ella.`);
  if (fit.ends.some((e) => e.end.hold === "unknown")) says.push("El cuadro no sabe cómo va sujeta.");
  says.push(`Los valores son ${basisWords[fit.row.basis]}.`);
  return says.join(" ");
}

/** En cuánto falla una fila: "Dado 1,03 mm (0,040 in) menor que el suyo; el largo concuerda." */
export function misses(fit: RowFit): string {
  const says = fit.ends.map(
    (end, n) =>
      `${fit.ends.length > 1 ? `extremo ${n + 1}: ` : ""}${end.fits.map((f) => miss(f, fit.agrees)).join(", ")}`,
  );
  const held = fit.held ? "" : ` Va sujeta por ${list([...new Set(fit.ends.map((e) => holdWords[e.end.hold]))])}.`;
  const doubted = fit.agrees && fit.held && !fit.ends.some((e) => e.fits.some((f) => f.other));
  const open = doubted ? " Sus valores lo permiten, pero es mucho menos probable que lo que queda." : "";
  const recalled = fit.row.basis === "memory" ? " De memoria, no publicada." : "";
  return `${capital(says.join("; "))}.${open}${held}${recalled}`;
}

function miss(f: Fit, exact: boolean): string {
  const word = called[f.quantity];
  if (f.other) return `${word} que concuerda solo con ${local(f.figure.text)}, otro valor que se da para ella`;
  if (isNothing(f.difference)) return `${word} igual`;
  if (f.agrees && !exact) return `${word} que concuerda`;
  return `${word} ${offBy(-f.difference, f.quantity, f.measured.how.lead)} que el suyo`;
}

export function otherHold(fit: RowFit): string {
  return `Los mismos valores, pero sujeta por ${holdWords[fit.ends[0]?.end.hold ?? "unknown"]}.`;
}

export function endIs(n: number, names: readonly string[], closest: RowFit | undefined): string {
  const which = n === 0 ? "El primer extremo" : "El segundo extremo";
  if (names.length > 0) return `${which} concuerda con ${some(names, 4, "o")}.`;
  if (closest === undefined) return `${which} no se puede comparar con nada del cuadro.`;
  return `${which} no concuerda con nada del cuadro. La más cercana es ${closest.row.row.name}: ${misses(closest)}`;
}

/** Lo que daría una medida: las cifras y la unidad del cuadro, y la otra unidad. */
export function printed(figure: Figure): string {
  const [first, second] = [both(figure.mm, "in"), both(figure.mm, "mm")].map((t) => t.replace(/^.*\(|\)$/g, ""));
  return `${local(figure.text)} (${(figure.text.endsWith(" in") ? first : second) ?? ""})`;
}

interface Option {
  name: string;
  reads: string;
}

export function tellHolds(end: number | undefined, options: readonly Option[]): string {
  const which = end === undefined ? "" : end === 0 ? " el primer extremo" : " el segundo extremo";
  return `Mire cómo va ${end === undefined ? "sujeta" : `sujeto${which}`}. ${would(options, (o) => `${o.name}: ${o.reads}`)}`;
}

/** Una medición que ha de distinguir medidas. */
export interface Told {
  quantity: Quantity;
  end: number | undefined; // se nombra solo cuando hay dos
  how: How;
  options: readonly Option[];
  closest: readonly [string, string];
  apart: number; // entre esas dos, mm
  measured: boolean; // eso ya se midió
  able: boolean; // el instrumento en mano separa esas dos
  vague: boolean; // los valores del cuadro por sí solos no las separan, con ningún instrumento
  better?: { tool: Tool; closest: boolean }; // el instrumento más sencillo que separa esas dos, o por lo menos más de las otras
}

export function tellLengths(told: Told): string {
  const { quantity, how, better } = told;
  const what = `el ${called[quantity]}${ofEnd(told.end)}`;
  const two = told.options.length === 2;
  const reads = would(told.options, (o) => `${o.reads} si es ${o.name}`, "Debería dar ");
  if (told.able)
    return `Mida ${what}${told.measured ? " otra vez, tres veces y con las piezas limpias" : ""}. ${reads}`;
  const gap = both(told.apart, how.lead);
  const measure = `Mida ${what}${told.measured ? " otra vez" : ""}. ${reads}`;
  const lie = `${two ? "Las dos" : capital(list(told.closest))} difieren en ${gap}`;
  const joint = `una cruceta ${jointIs[how.condition]}`;
  const hand = `${toolWords[how.tool]} no separa eso en ${joint}`;
  if (better?.closest === true) return `${measure} ${lie}: tome ${toolWords[better.tool]}, porque ${hand}.`;
  const why = told.vague
    ? "los propios valores del cuadro no bastan para separar eso"
    : `ningún calibrador ni micrómetro separa eso en ${joint}`;
  return two && better === undefined
    ? `Donde más difieren es en ${what}, en ${gap}, y ${why}. ${reads} Ponga la cruceta nueva al lado de la vieja y compare todo lo demás.`
    : `${measure}${better === undefined ? "" : ` Tome ${toolWords[better.tool]}, que separa más de ellas.`} ${lie}, y ${why}.`;
}

function would(options: readonly Option[], one: (o: Option) => string, before = ""): string {
  const more = options.length > 6 ? `; y ${options.length - 6} más` : "";
  return `${before}${list(options.slice(0, 6).map(one), "o")}${more}.`;
}

/** Lo que el cuadro sabe de los nombres de una misma medida además de sus valores. */
export interface Twins {
  hold: Hold;
  rows: readonly { name: string; table: string; basis: Basis; openHold: boolean; recalledHold: boolean }[];
}

export function twins(of: Twins): string {
  const names = list(of.rows.map((r) => r.name));
  const says = [`${names} son una misma medida: ninguna medición más las separa.`];
  if (new Set(of.rows.map((r) => r.table)).size > 1)
    says.push(`${capital(list(of.rows.map((r) => `${r.name} está en «${r.table}»`)))}.`);
  if (new Set(of.rows.map((r) => r.basis)).size > 1)
    says.push(
      `${list(of.rows.map((r, i) => `${i === 0 ? "Los valores de" : "los de"} ${r.name} son ${basisWords[r.basis].replace(/,.*/, "")}`))}.`,
    );
  const open = of.rows.filter((r) => r.openHold).map((r) => r.name);
  if (open.length > 0)
    says.push(`El cuadro no sabe cómo ${open.length > 1 ? "van sujetas" : "va sujeta"} ${list(open)}.`);
  const recalled = of.rows.filter((r) => r.recalledHold).map((r) => r.name);
  if (recalled.length > 0 && recalled.length < of.rows.length)
    says.push(`Cómo ${recalled.length > 1 ? "van sujetas" : "va sujeta"} ${list(recalled)} solo se sabe de memoria.`);
  says.push(`Antes de encargar mire la cruceta misma: ${look[of.hold]}, si lleva engrasador o no, y para qué es.`);
  return says.join(" ");
}

const look: Record<Hold, string> = {
  "outside-clip": "dados cerrados con un anillo por fuera de cada uno, la clase y el grueso del anillo",
  "inside-clip": "el lugar y el ancho de la ranura, la clase y el grueso del anillo",
  plate: "los tornillos de las placas y cómo van asegurados",
  strap: "alojamientos de media caña, sus topes, y abrazaderas o pernos en U",
  wing: "los tornillos y la chaveta de las aletas",
  injected: "el plástico y la ranura donde está",
  staked: "el alojamiento y dónde está graneteado el metal",
  unknown: "cómo va sujeta, cerrada o de media caña",
};
