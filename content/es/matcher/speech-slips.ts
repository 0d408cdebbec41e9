// Lo que se dice de los descuidos: qué serían las lecturas y qué mirar otra vez. Un descuido solo se supone: "si", nunca
// "porque".
import type { Hold, Quantity, Unit } from "./types";
import type { Slip } from "./slips-kinds";
import { both, called, holdWords, list, sizeCalled } from "./speech-words";

/** Lo que hay que decir de un descuido. */
export interface Supposed {
  slip: Slip;
  end: string; // " del primer extremo", donde hay dos
  of?: Quantity; // sin ello: de las dos
  mm?: number; // lo que sería esa lectura
  lead: Unit;
  asked: Hold;
  sizes: readonly { names: readonly string[]; held: Hold }[]; // la más probable delante
  conversion: boolean;
}

interface Speech {
  if: (s: Supposed) => string;
  next: (s: Supposed) => string;
  guide: string; // página de la guía, debajo de /measure/
}

const what = (s: Supposed): string => (s.of === undefined ? `las lecturas${s.end}` : `el ${called[s.of]}${s.end}`);
const ofWhat = (s: Supposed): string =>
  s.of === undefined ? `de las lecturas${s.end}` : `del ${called[s.of]}${s.end}`;
// "no va sujeta" la cruceta, "el primer extremo no va sujeto"
const held = (s: Supposed, not: string): string =>
  s.end === "" ? `${not}va sujeta` : `${s.end.replace(/^ del /, "el ")} ${not}va sujeto`;
const was = (s: Supposed): string => (s.of === undefined ? "se tomaron" : "se tomó");
const wouldBe = (s: Supposed): string => (s.mm === undefined ? "" : ` y es ${both(s.mm, s.lead)}`);
const unit = (one: string, other: string): Speech => ({
  if: (s) => `${what(s)} ${s.of === undefined ? "están" : "está"} en ${one}, no en ${other}`,
  next: () => "Mire qué unidad muestra el instrumento, y escriba las lecturas otra vez con esa unidad.",
  guide: "units",
});
const line = (fraction: string): Speech => ({
  if: (s) => `${what(s)} se leyó con ${fraction} in de error${wouldBe(s)}`,
  next: (s) => `Lea ${what(s)} otra vez, mirando las rayas de frente, o tome un calibrador.`,
  guide: "rule",
});
const over = (faces: string, next: string, guide: string): Speech => ({
  if: (s) => `${what(s)} ${was(s)} ${faces}`,
  next: () => next,
  guide,
});
const betweenGrooves = "Saque los anillos, y mida entre las caras interiores de las ranuras.";
const overCaps = "Quite los anillos, empuje los dados a fondo, y mida de punta a punta de los dados.";

const speech: Record<Slip, Speech> = {
  "inches-for-millimetres": unit("pulgadas", "milímetros"),
  "millimetres-for-inches": unit("milímetros", "pulgadas"),
  "cap-across-exchanged": {
    if: (s) => `dado y largo${s.end} están cambiados de lugar`,
    next: () => "Mire cuál es cuál, y escríbalos otra vez: el dado es siempre el menor.",
    guide: "across",
  },
  "decimal-point": {
    if: (s) => `la coma decimal ${ofWhat(s)} está en mal lugar${wouldBe(s)}`,
    next: (s) => `Lea ${what(s)} otra vez, y escriba todas las cifras, con su coma.`,
    guide: "units",
  },
  "digits-exchanged": {
    if: (s) => `dos cifras ${ofWhat(s)} están cambiadas de lugar${wouldBe(s)}`,
    next: (s) => `Lea ${what(s)} otra vez, cifra por cifra.`,
    guide: "good-reading",
  },
  sixteenth: line("1/16"),
  "thirty-second": line("1/32"),
  "groove-outer-faces": over(
    "entre las caras exteriores de las ranuras, o con los anillos puestos",
    betweenGrooves,
    "groove-outer",
  ),
  "clips-included": over("sobre los anillos", overCaps, "over-caps"),
  "over-caps-of-inside-clip": over("sobre los dados", betweenGrooves, "groove-inner"),
  "over-plates": over("sobre las placas", "Mida debajo de las placas, con las bocas para interiores.", "under-plates"),
  "over-ears": over("sobre las orejas de la horquilla", overCaps, "over-caps"),
  "centre-to-cap": {
    if: (s) => `${what(s)} ${was(s)} solo hasta el centro de la cruz`,
    next: () => "Mida de un dado al otro, a lo largo de toda la cruceta.",
    guide: "cannot",
  },
  "radius-for-diameter": {
    if: (s) => `${what(s)} es solo la mitad del diámetro`,
    next: (s) => `Mida ${what(s)} otra vez, con las bocas por el medio.`,
    guide: "cap",
  },
  "wrong-hold": {
    if: (s) => {
      const by = [...new Set(s.sizes.map((size) => holdWords[size.held]))];
      return by.length === 1 ? `${held(s, "")} por ${by[0]}` : `${held(s, "no ")} por ${holdWords[s.asked]}`;
    },
    next: () => "Mire otra vez cómo va sujeta.",
    guide: "what-holds-it",
  },
};

export const says = (s: Supposed): string => `Si ${speech[s.slip].if(s)}, es ${sized(s)}.`;
export const head = (slip: { look: string; says: string }): string =>
  `${slip.look === "hold" ? "Mire" : "Mida"} otra vez. ${slip.says}`;
export const next = (s: Supposed): string => speech[s.slip].next(s);
export const guide = (slip: Slip): string => `/measure/${speech[slip].guide}/`;

// "la medida 1350, también llamada 30.2x92", o todas las medidas donde el descuido deja más de una.
function sized(s: Supposed): string {
  const [first, ...more] = s.sizes;
  if (more.length > 0) {
    const by = (h: Hold): string => (s.slip === "wrong-hold" ? ` (${holdWords[h]})` : "");
    return `una de estas medidas: ${list(
      s.sizes.map((size) => `${size.names[0] ?? ""}${by(size.held)}`),
      "o",
    )}`;
  }
  return sizeCalled(first?.names ?? [], s.conversion);
}

/** Lecturas que concuerdan con una medida, y que irían con otra si se hubieran tomado entre otras caras. */
export function otherByFaces(s: Supposed): string {
  return `Compruebe las caras: si ${speech[s.slip].if(s)}, es en cambio ${list(
    s.sizes.slice(0, 4).map((size) => size.names[0] ?? ""),
    "o",
  )}.`;
}
