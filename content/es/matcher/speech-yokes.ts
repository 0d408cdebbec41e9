// Lo que se dice de lecturas en una horquilla sola: cómo se lee cada sujeción allí, cómo un alojamiento da un dado, y qué
// harían los anillos.
import type { Faces, Hold, Quantity, Unit } from "./types";
import type { MeasuredEnd } from "./agree";
import * as given from "./given-yokes";
import { local } from "./speech-number";
import { both, called, capital, list, ofEnd } from "./speech-words";

/** Cómo se lee una horquilla de una sujeción. Las palabras van detrás de "Mida". */
export interface Yoke {
  bore: string; // vacío: ningún alojamiento que diga el dado
  across: string | null; // null: ninguna distancia en la horquilla da el largo
  clip: boolean; // hay dos anillos entre las orejas y la cruceta
  faces: Faces; // las de la cruceta, por las que vale la distancia
  instead: string; // qué hacer donde alojamiento o distancia no ayudan; si no, vacío
}

const bore = "los alojamientos de las dos orejas, dos veces cada uno, a un cuarto de vuelta";

export const yokes: Record<Hold, Yoke> = {
  "outside-clip": {
    bore,
    across: "de ranura a ranura de los anillos en las orejas, en las caras que miran hacia la cruz",
    clip: true,
    faces: "over-caps",
    instead: "",
  },
  "inside-clip": {
    bore,
    across: "de oreja a oreja, sobre las caras interiores planas",
    clip: true,
    faces: "groove-inner",
    instead: "",
  },
  injected: {
    bore,
    across: "de oreja a oreja, sobre las caras interiores planas",
    clip: true,
    faces: "groove-inner",
    instead: "",
  },
  plate: { bore, across: "sobre las caras exteriores de las orejas", clip: false, faces: "under-plates", instead: "" },
  strap: { bore, across: "de tope a tope", clip: false, faces: "over-caps", instead: "" },
  staked: {
    bore,
    across: null,
    clip: false,
    faces: "over-caps",
    instead:
      "Una horquilla remachada no tiene ninguna cara que dé el largo. Dé solo sus alojamientos, y mida la cruceta vieja sobre los dados.",
  },
  wing: {
    bore: "",
    across: null,
    clip: false,
    faces: "wing-outer",
    instead:
      "Una horquilla para dados con aletas no tiene ningún alojamiento que diga la medida. Mida su chavetero y la distancia entre sus agujeros, y compárelos a mano con los valores de las aletas.",
  },
  unknown: {
    bore,
    across: null,
    clip: false,
    faces: "unknown",
    instead:
      "Lo que se mide en una horquilla depende de su sujeción. Mire cómo sujeta los dados y elija eso, o dé solo sus alojamientos.",
  },
};

/** yokeOf dice cómo se lee una horquilla de esa sujeción. */
export function yokeOf(hold: Hold): Yoke {
  return { ...yokes[hold] };
}

/** Nombres de las líneas que una horquilla añade a un balance de incertidumbre. */
export const sources = {
  inside: "la lectura dentro de un agujero",
  bore: "el ajuste del dado en su alojamiento",
  play: "el juego entre cruceta y horquilla",
  clipUnknown: "los anillos que no se midieron",
  clip: "los anillos tal como se midieron",
};

// ---- lo que no se puede usar

export const clipOfJoint = (): string =>
  "El grueso de un anillo ayuda solo con una horquilla sola. En una cruceta, mida entre las caras que van con su sujeción, y quite el anillo.";
export const noClip = (): string => "Esta sujeción no lleva anillos entre horquilla y cruceta. Quite el anillo.";
export const clipsDiffer = (apart: number, lead: Unit): string =>
  `Las lecturas del anillo difieren en ${both(apart, lead)}. Los dos anillos de un par son del mismo grueso: límpielos y mida otra vez.`;
export const boresDiffer = (apart: number, lead: Unit): string =>
  `Las lecturas del alojamiento difieren en ${both(apart, lead)}. Limpie los dos alojamientos y quite las rebabas; si siguen difiriendo, una oreja está gastada o cerrada, y su horquilla es dudosa.`;
export const distancesDiffer = (apart: number, lead: Unit): string =>
  `Las lecturas entre las orejas difieren en ${both(apart, lead)}. Limpie las caras y mida cerca de la raíz y cerca de la punta de las orejas; si siguen difiriendo, las orejas están dobladas.`;
export const farBore = (text: string): string =>
  `La lectura ${local(text)} del alojamiento se aparta mucho. Si es buena, una oreja está gastada o cerrada: mida las dos orejas otra vez.`;
export const farDistance = (text: string): string =>
  `La lectura ${local(text)} entre las orejas se aparta mucho. Si es buena, las orejas están dobladas: mida cerca de la raíz y cerca de la punta.`;

// ---- cómo salió un valor

/** Qué fue de las lecturas repetidas en una horquilla; longitudes en mm. */
export interface Reckoned {
  readings: number;
  mean: number; // como se leyó
  value: number; // de la cruceta
  uncertainty: number;
  largest: string; // la línea mayor del balance
  apart?: number; // de lecturas que se dispersan más de lo que explican instrumento y mano
  lead: Unit;
}

export function fromBore(r: Reckoned): string {
  const spread =
    r.apart === undefined
      ? ""
      : ` Los alojamientos difieren en ${both(r.apart, r.lead)}: busque una oreja gastada o cerrada, y guíese por el menor.`;
  return `${counted(r.readings)} del alojamiento, ${both(r.mean, r.lead)}. Su dado está entonces cerca de ${both(r.value, r.lead)}, bueno hasta unos ±${both(r.uncertainty, r.lead)}; la mayor parte es ${r.largest}.${spread}`;
}

/** Lo que hay entre horquilla y cruceta. */
export type Between = { clips: "none" | "unknown" } | { clips: "measured"; clip: number };

export function fromDistance(r: Reckoned, between: Between): string {
  const spread =
    r.apart === undefined
      ? ""
      : ` Las lecturas difieren en ${both(r.apart, r.lead)}: busque rebabas, y compruebe si las orejas están dobladas.`;
  return `${counted(r.readings)} entre las orejas, ${both(r.mean, r.lead)}. Menos ${taken(between, r.lead)}, la cruceta tiene un largo de cerca de ${both(r.value, r.lead)}, bueno hasta unos ±${both(r.uncertainty, r.lead)}; la mayor parte es ${r.largest}.${spread}`;
}

function taken(between: Between, lead: Unit): string {
  switch (between.clips) {
    case "none":
      return "un poco de juego";
    case "unknown":
      return local(
        `dos anillos, que no se midieron y pueden ser de ${given.thinnestClip} a ${given.thickestClip} mm cada uno, y un poco de juego`,
      );
    case "measured":
      return `dos anillos de ${both(between.clip, lead)} y un poco de juego`;
  }
}

export function ofClip(readings: number, uncertainty: number, lead: Unit): string {
  return `${counted(readings)} de un anillo, buena hasta unos ±${both(uncertainty, lead)}. Se toma que los dos anillos son iguales.`;
}

export const setAside = (texts: readonly string[]): string =>
  texts.length === 0 ? "" : `Apartado: ${list(texts.map(local))}, demasiado lejos de las demás. `;

function counted(n: number): string {
  return n === 1 ? "Una lectura" : `Media de ${n} lecturas`;
}

// ---- al lado de una medida

export const boreWide = (by: number, lead: Unit, n: number | undefined): string =>
  `El alojamiento${ofEnd(n)} es ${both(by, lead)} más ancho que ese dado: ¿está gastado?`;
export const boreNarrow = (cap: string, reading: number, by: number, lead: Unit, n: number | undefined): string =>
  `Un dado de ${local(cap)} no entraría en un alojamiento${ofEnd(n)} que da ${both(reading, lead)}, ${both(by, lead)} menos: busque óxido, una rebaba o una oreja cerrada.`;

/** Qué harían los anillos medidos con una cruceta de esa medida, y qué anillos irían. */
export function withClips(
  clip: number,
  float: number,
  fitting: number | undefined,
  lead: Unit,
  n: number | undefined,
): string {
  const does =
    float > 0
      ? `le dejarían ${both(float, lead)} de juego`
      : `la apretarían: los dos juntos son ${both(-float, lead)} demasiado gruesos`;
  const fit = fitting === undefined ? "" : ` Irían anillos de ${both(fitting, lead)} cada uno.`;
  return `Sus anillos de ${both(clip, lead)}${ofEnd(n)} ${does}.${fit}`;
}

/** Qué anillos necesitaría una medida. */
export function clipsFor(fitting: number, lead: Unit, n: number | undefined): string {
  const odd =
    fitting < given.thinnestClip
      ? ", más delgados que cualquiera de los que publican los fabricantes"
      : fitting > given.thickestClip
        ? ", más gruesos que cualquiera de los que publican los fabricantes"
        : "";
  return `Necesitaría anillos de unos ${both(fitting, lead)} cada uno${ofEnd(n)}${odd}.`;
}

// ---- resultado

export const service = (): string =>
  "Una horquilla hecha para plástico inyectado se compara con crucetas de anillos interiores: la que se vende como reemplazo suele llevarlos.";
export const clipsNotMeasured = (): string => "los anillos no se midieron, y de ellos depende el largo";
export const clipsLeaveOpen = (): string =>
  "Dos anillos que no se midieron dejan demasiado abierto para separar medidas tan cercanas.";
export const serviceOnly = (): string => "hay que preguntar qué cruceta reemplaza a la de plástico inyectado";

/** Lo que se comparó en horquillas, y lo que no. */
export function checkedYokes(compared: string, hold: string, asked: readonly MeasuredEnd[]): string {
  const other = asked.length === 1 ? "la otra horquilla, " : "";
  const joint = asked.every((e) => e.yoke !== undefined) ? "" : "desgaste dentro de los dados, ";
  return `Se comparó: ${compared}${hold}. No se comparó: ${other}${joint}si las orejas están dobladas y los alojamientos alineados.`;
}

// ---- después

/** Cómo se llaman las dos medidas en una horquilla. La primera es masculina, la segunda femenina. */
export const readOnYoke: Record<Quantity, string> = { cap: "alojamiento", across: "distancia entre las orejas" };

/** Qué medir en una horquilla para lo que falta. */
export function onYoke(hold: Hold, missing: Quantity): string {
  const { bore, across, clip, instead } = yokes[hold];
  const what = missing === "cap" ? bore : (across ?? "");
  if (what === "") return instead;
  return `Mida ${what}${missing === "across" && clip ? ", y un anillo" : ""}.`;
}

export const measureClip = (
  options: readonly { name: string; clip: number }[],
  lead: Unit,
  n: number | undefined,
): string =>
  `Mida el grueso de un anillo${ofEnd(n)}. ${list(
    options.slice(0, 6).map((o) => `${o.name}: unos ${both(o.clip, lead)}`),
    "o",
  )}.`;
export const measureBore = (options: readonly Printed[], n: number | undefined): string =>
  `Mida los alojamientos${ofEnd(n)} otra vez, limpios y tomando la mayor de varias lecturas. ${caps(options, "lleva dados de")}.`;
export const measureDistance = (
  across: string,
  options: readonly Printed[],
  clips: boolean,
  n: number | undefined,
): string =>
  `Mida la horquilla${ofEnd(n)} ${across}${clips ? ", y el grueso de un anillo" : ""}. ${clips ? "Menos dos anillos, " : ""}${caps(options, "mide")}.`;

interface Printed {
  name: string;
  text: string; // las cifras y la unidad del cuadro, y la otra unidad
}

function caps(options: readonly Printed[], is: string): string {
  const more = options.length > 6 ? `; y ${options.length - 6} más` : "";
  return `${list(
    options.slice(0, 6).map((o) => `${o.name} ${is} ${o.text}`),
    "o",
  )}${more}`;
}

export const measureAnyClip = (): string => "Mida el grueso de un anillo, y dé también eso.";
export const askService = (): string =>
  "Pregunte si esa cruceta es la que se vende para reemplazar la de plástico inyectado.";
export const tryByHand = (): string =>
  "Antes de meterla a presión, pruebe a mano un dado nuevo en los dos alojamientos, y compruebe que una barra por los dos gira: una oreja doblada no se ve en ningún número de aquí.";
export const otherYoke = (): string =>
  "Mida también la otra horquilla: algunas crucetas de conversión tienen un extremo como este.";
export const cleanYoke = (): string =>
  "Limpie los alojamientos y las caras de las orejas, y tome cada lectura otra vez, dos o tres veces.";
export const workedOut = (quantities: readonly Quantity[]): string =>
  `${capital(list(quantities.map((q) => `el ${called[q]}`)))} de la cruceta que entra se ${quantities.length > 1 ? "calculan" : "calcula"} a partir de la horquilla.`;
export const checkYoke = (across: string): string => `Compruebe que midió ${across}.`;
