// Lo que se dice de las mediciones que están al lado de un valor del cuadro: en su página, y a quien va a añadir una.
import type { Beside, Combined, Worth } from "./measured";
import type { Tool, Unit } from "./types";
import { local } from "./speech-number";
import { both, isNothing, toolWords } from "./speech-words";

const plusMinus = (mm: number, uncertainty: number, lead: Unit): string =>
  `${both(mm, lead)}, ±${both(uncertainty, lead)}`;

const readingsOf = (n: number): string => (n === 1 ? "una lectura" : `${n} lecturas`);

export const nothingRead = (): string => "No se entiende ninguna lectura.";

/** Una medición por sí sola. */
export function worth(mm: number, uncertainty: number, readings: number, tool: Tool, lead: Unit): string {
  return `${plusMinus(mm, uncertainty, lead)}, de ${readingsOf(readings)} con ${toolWords[tool]}.`;
}

export function comes(c: Combined, tool: Tool | undefined, lead: Unit): string {
  const from =
    tool === undefined
      ? `media ponderada de ${c.count} mediciones (${readingsOf(c.readings)})`
      : `de ${readingsOf(c.readings)} con ${toolWords[tool]}`;
  return `Medido: ${plusMinus(c.mm, c.uncertainty, lead)} (aproximadamente 95 %), ${from}.`;
}

export function amongThemselves(c: Combined): string {
  const ratio = local(
    `cociente de Birge ${c.ratio.toFixed(2)}, donde el azar llega hasta ${c.limit.toFixed(2)} (ji cuadrado, 95 %)`,
  );
  return c.consistent
    ? `Las mediciones concuerdan entre sí: ${ratio}.`
    : `Las mediciones no concuerdan entre sí: ${ratio}. La incertidumbre se amplía con ese cociente.`;
}

export function beside(printed: string, b: Beside, consistent: boolean, lead: Unit): string {
  const text = local(printed);
  if (!consistent && b.off <= b.within)
    return `Lo que no concuerda consigo mismo no habla ni a favor ni en contra de ${text} como está impreso.`;
  const off = both(b.off, lead);
  const within = both(b.within, lead);
  if (isNothing(b.off)) return `Eso concuerda con ${text} como está impreso.`;
  const way = b.larger ? "mayor" : "menor";
  return b.off <= b.within
    ? `Eso concuerda con ${text} como está impreso: es ${off} ${way}, y ±${within} es lo que los dos dejan abierto.`
    : `Eso no concuerda con ${text} como está impreso: es ${off} ${way}, y ±${within} es lo que los dos dejan abierto. El valor impreso se queda hasta que se haya mirado otra vez su fuente.`;
}

/** Lo que se midió y no está en la media. */
export function unused(each: readonly Worth[]): string[] {
  const out: string[] = [];
  const elsewhere = each.filter((w) => w.elsewhere).length;
  if (elsewhere > 0)
    out.push(
      elsewhere === 1
        ? "Una medición se tomó entre otras caras que las del valor: está en la lista y no se cuenta."
        : `${elsewhere} mediciones se tomaron entre otras caras que las del valor: están en la lista y no se cuentan.`,
    );
  for (const w of each)
    if (w.trouble && !w.elsewhere) out.push(`Una medición está en la lista y no se cuenta. ${w.says}`);
  return out;
}
