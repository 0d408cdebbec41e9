// Lo que se dice de lecturas repetidas: qué se apartó y por qué, y cuán bueno es el resto.
import type { Quantity, Unit } from "./types";
import type { How } from "./estimate";
import { local } from "./speech-number";
import { both, called, capIs, capital, isNothing, jointIs, offBy, toolWords } from "./speech-words";

/** Nombres de las líneas de un balance de incertidumbre. */
export const sources = {
  repeat: "la repetición de la lectura",
  tool: "el límite de error del instrumento",
  step: "la última cifra leída",
  condition: "el estado de la pieza",
};

/** Qué fue de las lecturas repetidas; longitudes en mm. */
export interface Became {
  used: number;
  shift: number; // lo que se quita a la media por el estado de la pieza
  uncertainty: number;
  largest: string; // la línea mayor del balance
  aside: readonly number[]; // cuánto se aparta de las demás cada lectura apartada
  spread?: number; // de lecturas que se dispersan más de lo esperado
  expected?: number;
}

export function why(quantity: Quantity, how: How, became: Became): string {
  const { lead } = how;
  const mean = became.used === 1 ? "Una lectura" : `Media de ${became.used} lecturas`;
  const right = putRight(quantity, how, became.shift, became.uncertainty).map(
    (p) => ` ${capital(p)}: eso está corregido.`,
  );
  return [
    ...became.aside.map((off) => `Apartada: ${offBy(off, quantity, lead)} que las demás. ${reason(quantity, off)}`),
    `${mean}, buena hasta unos ±${both(became.uncertainty, lead)}; la mayor parte es ${became.largest}.${right.join("")}`,
    ...(became.spread === undefined || became.expected === undefined
      ? []
      : [
          `Las lecturas se dispersan en ${both(became.spread, lead)}; con ${toolWords[how.tool]} deberían quedar dentro de ${both(became.expected, lead)}. ${look[quantity]}`,
        ]),
  ].join(" ");
}

/** "un dado usado da unos 0,01 mm (0,0004 in) de menos"; nada si se pierde en lo que no se sabe. */
export function putRight(quantity: Quantity, how: How, shift: number, uncertainty: number): string[] {
  if (isNothing(shift) || Math.abs(shift) < uncertainty / 10) return [];
  const part = quantity === "cap" ? `un dado ${capIs[how.condition]}` : `una cruceta ${jointIs[how.condition]}`;
  return [`${part} da unos ${both(Math.abs(shift), how.lead)} de ${shift < 0 ? "menos" : "más"}`];
}

const look: Record<Quantity, string> = {
  cap: "Busque suciedad, un instrumento inclinado o un dado que no es redondo.",
  across: "Busque un dado que no está a fondo, suciedad o bocas inclinadas.",
};

// Hacia dónde falla una lectura mala dice qué buscar.
function reason(quantity: Quantity, off: number): string {
  if (quantity === "across") {
    return off > 0
      ? "Un dado que no está a fondo, la suciedad o un calibrador inclinado dan de más."
      : "Unas bocas que no alcanzan la cara, o un descuido al leer la escala, dan de menos.";
  }
  return off > 0
    ? "La suciedad, el óxido o un calibrador inclinado dan de más."
    : "Una parte gastada o plana, o un descuido al leer la escala, dan de menos.";
}

export function secondSize(quantity: Quantity, text: string): string {
  return quantity === "cap"
    ? `La lectura ${local(text)} se aparta mucho para ser suciedad. Si es buena, esta cruz tiene dos diámetros de dado: mida los cuatro dados.`
    : `La lectura ${local(text)} se aparta mucho para ser un dado suelto. Si es buena, es del otro par de dados: mídalo como segundo extremo.`;
}

export function twoDisagree(quantity: Quantity, apart: number, lead: Unit): string {
  return quantity === "cap"
    ? `Las dos lecturas del dado difieren en ${both(apart, lead)}. Limpie los dados y mida otra vez; si siguen difiriendo, la cruz tiene dos diámetros de dado y cada par es un extremo aparte.`
    : `Las dos lecturas del largo difieren en ${both(apart, lead)}. Empuje los dados a fondo y tome una tercera; si una es del otro par de dados, escríbala como segundo extremo.`;
}

export function twoGroups(quantity: Quantity, groups: readonly [number, number], lead: Unit): string {
  const where = `Las lecturas del ${called[quantity]} forman dos grupos, cerca de ${both(groups[0], lead)} y cerca de ${both(groups[1], lead)}.`;
  return quantity === "cap"
    ? `${where} Una cruz con dos diámetros de dado puede ser una cruceta de conversión: escriba cada par de dados como un extremo aparte.`
    : `${where} Si son de los dos pares de dados, escriba cada par como un extremo aparte; si no, empuje los dados a fondo y mida otra vez.`;
}

export function spreadTooFar(quantity: Quantity, apart: number, lead: Unit): string {
  return `Las lecturas del ${called[quantity]} se dispersan en ${both(apart, lead)}, demasiado para tomar una media. ${
    quantity === "cap"
      ? "Limpie los dados y mida cada uno en dos direcciones."
      : "Limpie las caras, empuje los dados a fondo y tome tres lecturas otra vez."
  }`;
}
