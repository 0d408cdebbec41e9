// Lo que dice el resultado de un estriado, una brida u otra pieza: primero el resultado, después los números al lado de
// los del cuadro y al final qué hacer. Nunca un tanto por ciento, y nunca que una pieza sirve: solo lo que se contó, se
// midió y se comparó.
import type { Unit } from "./types";
import type { PartFit, PartRowFit } from "./part-fit";
import type { Between, Edges, PartColumn, PartRow, PartTable } from "./part-types";
import { local } from "./speech-number";
import { both, list, some } from "./speech-words";

/** Como la llama el oficio; si no, su id. */
export const called = (row: PartRow): string => row.also[0] ?? row.name;

// ---- encabezados

const inTable = (table: PartTable): string => `en «${table.title}»`;

export const identified = (row: PartRow, table: PartTable): string => `Es ${called(row)} ${inTable(table)}.`;
export const possible = (row: PartRow, table: PartTable, doubt: PartDoubt): string =>
  `Puede ser ${called(row)} ${inTable(table)}, pero ${but(doubt)}.`;
export const between = (rows: readonly PartRow[], table: PartTable): string =>
  `Estas lecturas dejan ${rows.length} filas ${inTable(table)}: ${some(rows.map(called), 4)}.`;
export const notInChart = (table: PartTable): string => `Esto no está en ninguna fila de «${table.title}».`;
export const nothingYet = (): string => "Todavía no hay ninguna lectura.";
export const unreadable = (): string => "Estas lecturas no se pueden usar como están.";
export const cannotBelong = (): string => "Estas lecturas no pueden ser todas de una misma pieza.";

// ---- dudas

export type PartDoubt =
  | { kind: "one-column"; label: string }
  | { kind: "unmeasured"; labels: string[] }
  | { kind: "set-aside"; label: string }
  | { kind: "near-row"; names: string[] }
  | { kind: "edge"; label: string }
  | { kind: "coarse"; label: string }
  | { kind: "chart-digits"; label: string; text: string }
  | { kind: "no-figure"; labels: string[] }
  | { kind: "other-figure"; label: string }
  | { kind: "memory" };

// Los rótulos son de la tabla y pueden ser de uno u otro género: se dicen entre comillas, sin artículo.
function but(doubt: PartDoubt): string {
  switch (doubt.kind) {
    case "one-column":
      return `solo se comparó una cosa: ${lower(doubt.label)}`;
    case "unmeasured":
      return `todavía falta medir ${named(doubt.labels)}`;
    case "set-aside":
      return `una lectura de ${named([doubt.label])} no va con ella`;
    case "near-row":
      return `${some(doubt.names, 3)} ${doubt.names.length === 1 ? "falla" : "fallan"} solo por un pelo`;
    case "edge":
      return `${named([doubt.label])} concuerda solo porque la lectura no es más fina`;
    case "coarse":
      return `${named([doubt.label])} y el valor del cuadro juntos son demasiado gruesos para nombrarla sin más`;
    case "chart-digits":
      return `el cuadro trae ${named([doubt.label])} como ${local(doubt.text)}, sin más cifras`;
    case "no-figure":
      return `el cuadro no tiene ningún valor de ${named(doubt.labels)}`;
    case "other-figure":
      return `${named([doubt.label])} concuerda solo con otro valor que se da`;
    case "memory":
      return "los valores del cuadro para ella son de memoria, no publicados";
  }
}

/** Las dudas después de la primera, cada una como oración. */
export const furtherDoubt = (doubt: PartDoubt): string => `Además, ${but(doubt)}.`;

export function settle(doubt: PartDoubt): string | undefined {
  switch (doubt.kind) {
    case "unmeasured":
      return `Mida lo que falta: ${list(doubt.labels.map(lower))}.`;
    case "set-aside":
      return `Tome ${named([doubt.label])} otra vez, dos o tres veces.`;
    case "near-row":
    case "edge":
    case "coarse":
      return "Mida otra vez con un calibrador, sobre metal limpio, dos o tres veces.";
    case "memory":
      return "Haga que le confirmen la medida antes de encargar: el cuadro la tiene de memoria.";
    case "chart-digits":
    case "no-figure":
    case "other-figure":
    case "one-column":
      return "Compare la pieza vieja con la nueva antes de encargar.";
  }
}

// ---- lo que se comparó

export function because(fit: PartRowFit, lead: Unit): string {
  const parts = fit.fits.map((f) => beside(f, lead));
  for (const column of fit.without) parts.push(`${lower(column.label)}: esta pieza no tiene`);
  for (const column of fit.unknown) parts.push(`${lower(column.label)}: el cuadro no tiene valor`);
  const text = parts.join("; ");
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}

function beside(fit: PartFit, lead: Unit): string {
  const { compared, taken } = fit;
  const name = lower(compared.label);
  if (taken.column.match === "exact")
    return `${name}: usted contó ${compared.measured}, el cuadro tiene ${compared.chartText}`;
  const chart = `${taken.column.belowText === undefined ? "el cuadro tiene" : "su medida nominal es"} ${local(compared.chartText)}`;
  const read = `${name}: ${both(compared.measured, lead)}, ${chart}`;
  const off = compared.difference;
  const bound = `±${both(compared.uncertainty, lead)}`;
  if (off === 0) return `${read}${taken.column.belowText === undefined ? "" : ", y una pieza puede medir menos"}`;
  const way = `${both(Math.abs(off), lead)} por ${off > 0 ? "encima" : "debajo"}`;
  const from = taken.column.belowText === undefined || off > 0 ? "" : " de lo que todavía puede medir una pieza buena";
  return compared.agrees ? `${read}: ${way}${from}, dentro de ${bound}` : `${read}: ${way}${from}, más que ${bound}`;
}

export const nominal = (column: PartColumn): string =>
  `En esta tabla ${named([column.label])} es un nombre: se acepta hasta ${local(column.belowText ?? "")} menos, una regla de este cuadro.`;

export const short = (row: PartRow, label: string, by: number, lead: Unit): string =>
  `Al lado de ${called(row)} solo falla ${named([label])}: da ${both(by, lead)} de menos. Eso lo hace el desgaste, y también otra pieza.`;

export const miscounted = (row: PartRow, label: string, counted: number, chart: string): string =>
  `Al lado de ${called(row)} solo difiere ${named([label])}: ${counted} en la cuenta, ${chart} en el cuadro.`;

// ---- qué hacer después

export const putRight = (): string => "Cambie o quite lo que está marcado, y mire otra vez.";
export const measureAll = (labels: readonly string[]): string =>
  `Mida ${list(labels.map(lower))}, y escriba cada lectura.`;
export const spreadTooFar = (label: string, apart: number, lead: Unit): string =>
  `Las lecturas de ${named([label])} difieren en ${both(apart, lead)}, demasiado para tomar una media. Limpie y mida en dos direcciones.`;
export const countAgain = (): string => "Marque uno con tiza, dé una vuelta entera y cuente otra vez.";
export const unworn = (): string =>
  "Mida donde nada ha rozado, cerca de la punta. Si está gastada, dígalo en el estado: eso amplía lo que puede concordar.";
export const checkTable = (): string =>
  "Puede ser de otra clase, con una tabla propia, o no estar en ningún cuadro. Nada de aquí está tan cerca como para encargar por ello.";
export const lookAlike = (): string =>
  "Solo se comprobaron cuentas y medidas: no el desgaste, el ajuste, el material, el par ni la velocidad. Ponga la pieza nueva al lado de la vieja antes de encargar.";
export const secondReading = (labels: readonly string[]): string =>
  `Tome una segunda lectura de ${named(labels)}: una sola puede esconder un descuido.`;

/** Lo que distingue las filas que quedan: valores de una columna, u otras palabras de la tabla. */
export const tellApart = (label: string, expect: readonly (readonly [string, string])[], measured: boolean): string =>
  `${measured ? "Mida" : "Mire"} ${named([label])}: ${list(
    expect.map(([name, text]) => `${local(text)} para ${name}`),
    "o",
  )}.`;
export const nothingTells = (): string => "El cuadro no tiene nada que las distinga.";

// ---- a qué llegaron las lecturas

export function why(used: number, aside: number, uncertainty: number, largest: string, lead: Unit): string {
  const mean = used === 1 ? "Una lectura" : `Media de ${used} lecturas`;
  const out =
    aside === 0 ? "" : ` ${aside === 1 ? "Una se apartó" : `${aside} se apartaron`} por estar lejos de las demás.`;
  return `${mean}, buena hasta unos ±${both(uncertainty, lead)}; la mayor parte es ${largest}.${out}`;
}

export const counted = (): string => "Contado.";

export interface Chord {
  holes: number;
  between: Between;
  edges: Edges;
  factor: number;
  centres: number; // mm
  hole?: number; // mm
  circle: number; // mm
}

export function fromChord(c: Chord, lead: Unit): string {
  const onward = c.between === "next" ? "agujeros vecinos" : "los dos agujeros más alejados";
  const steps: Record<Edges, string> = {
    outer: `De borde exterior a borde exterior, menos un agujero de ${both(c.hole ?? 0, lead)}`,
    inner: `De borde interior a borde interior, más un agujero de ${both(c.hole ?? 0, lead)}`,
    same: "De un borde al mismo borde del otro agujero",
    centres: "De centro a centro",
  };
  return `${steps[c.edges]}: ${both(c.centres, lead)} entre los centros de ${onward}. Con ${c.holes} agujeros eso es ${local(c.factor.toFixed(5))} del círculo de tornillos, lo que da ${both(c.circle, lead)}.`;
}

/** Rótulos dentro de una oración. */
function named(labels: readonly string[]): string {
  return list(labels.map((label) => `«${lower(label)}»`));
}

/** Un rótulo dentro de una oración; una sigla queda como está. */
function lower(label: string): string {
  return /^[A-ZÁÉÍÓÚÑ][a-záéíóúñ]/.test(label) ? label.slice(0, 1).toLowerCase() + label.slice(1) : label;
}
