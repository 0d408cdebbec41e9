// Números y palabras del taller tal como se dicen. Todo lo demás que habla se apoya en esto.
import type { Basis, Condition, Faces, Hold, Measurand, Quantity, Tool, Unit } from "./types";
import { inch } from "./reading";
import { local } from "./speech-number";

export const holdWords: Record<Hold, string> = {
  "outside-clip": "anillos exteriores",
  "inside-clip": "anillos interiores",
  plate: "placas",
  strap: "abrazaderas o pernos en U",
  wing: "dados con aletas",
  injected: "plástico inyectado",
  staked: "remachado",
  unknown: "algo que nadie ha anotado",
};

export const facesWords: Record<Faces, string> = {
  "over-caps": "sobre los dados",
  "groove-inner": "entre las caras interiores de las ranuras",
  "groove-outer": "entre las caras exteriores de las ranuras",
  "under-plates": "debajo de las placas",
  "hole-centres": "entre centros de agujeros",
  "wing-outer": "sobre las aletas",
  unknown: "entre caras sin anotar",
};

export const basisWords: Record<Basis, string> = {
  published: "de una fuente publicada",
  measured: "medidos en piezas",
  "common-practice": "de uso común, sin fuente nombrada",
  memory: "de memoria, no publicados",
};

export const toolWords: Record<Tool, string> = {
  "digital-caliper": "un calibrador digital",
  "dial-caliper": "un calibrador de carátula",
  "vernier-caliper": "un calibrador con nonio",
  "vernier-caliper-coarse": "un calibrador con nonio de 0,05 mm",
  micrometer: "un micrómetro",
  "steel-rule": "una regla de acero",
  tape: "una cinta métrica",
};

/** Lo que se mide, sin artículo; las tres palabras son masculinas. */
export const called: Record<Measurand, string> = { cap: "dado", across: "largo", clip: "anillo" };

/** Cómo está la pieza: de un dado y de una cruceta. */
export const capIs: Record<Condition, string> = { new: "nuevo", used: "usado", worn: "gastado", rusted: "oxidado" };
export const jointIs: Record<Condition, string> = { new: "nueva", used: "usada", worn: "gastada", rusted: "oxidada" };

/** Una longitud en las dos unidades, la que manda delante: "26,93 mm (1,060 in)"; por debajo de una milésima de pulgada, una cifra más. */
export function both(mm: number, lead: Unit): string {
  const inches = local(`${(mm / inch).toFixed(Math.abs(mm) < inch / 1000 ? 4 : 3)} in`);
  const millimetres = local(`${mm.toFixed(2)} mm`);
  return lead === "in" ? `${inches} (${millimetres})` : `${millimetres} (${inches})`;
}

/** Cómo queda una longitud al lado de otra: "0,05 mm (0,002 in) menor". */
export function offBy(mm: number, quantity: Quantity, lead: Unit): string {
  const way = quantity === "cap" ? (mm > 0 ? "mayor" : "menor") : mm > 0 ? "más largo" : "más corto";
  return `${both(Math.abs(mm), lead)} ${way}`;
}

/** Tan poco que no es nada con dos decimales de milímetro. */
export function isNothing(mm: number): boolean {
  return Math.abs(mm) < 0.005;
}

/** "a, b y c"; "y" pasa a "e" y "o" a "u" delante del mismo sonido. "and" y "or" valen por "y" y "o". */
export function list(words: readonly string[], last = "y"): string {
  if (words.length < 2) return words.join("");
  const end = words[words.length - 1] ?? "";
  return `${words.slice(0, -1).join(", ")} ${joining(last, end)} ${end}`;
}

function joining(last: string, end: string): string {
  const next = end.replace(/^[«“"(¿¡]+/, "");
  if (last === "y" || last === "and") return /^(?:[ií]|h[ií](?![aeo]))/i.test(next) ? "e" : "y";
  return /^(?:h?[oó]|8|11(?!\d))/i.test(next) ? "u" : "o";
}

/** Qué extremo, donde hay dos: " del primer extremo". */
export function ofEnd(n: number | undefined): string {
  return n === undefined ? "" : n === 0 ? " del primer extremo" : " del segundo extremo";
}

/** Una medida con todos sus nombres: "la medida 1350, también llamada 30.2x92". */
export function sizeCalled(names: readonly string[], conversion: boolean): string {
  const [first, ...rest] = [...new Set(names)];
  return `la ${conversion ? "cruceta de conversión" : "medida"} ${first ?? ""}${rest.length === 0 ? "" : `, también llamada ${list(rest)}`}`;
}

/** Los primeros nombres y cuántos más: "1300, 1310, 1330 y 2 más". */
export function some(names: readonly string[], most: number, last = "y"): string {
  if (names.length <= most) return list(names, last);
  return `${names.slice(0, most).join(", ")} y ${names.length - most} más`;
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
