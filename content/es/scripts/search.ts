// Every word the search says by itself; the verdict on a size is the core's own text.
import type { Kind } from "../../parts/search/lookup";

export const kindWords: Record<Kind, string> = {
  row: "fila",
  guide: "guía",
  word: "palabra",
  source: "fuente",
  sheet: "página",
};

export const words = {
  title: "Buscar",
  ask: "Un nombre, una palabra o una medida",
  example: "1310 · anillo de retención · 27 x 74,6",
  close: "Cerrar",
  all: "Todo, de la A a la Z",
  key: "La tecla / abre la búsqueda en todas las páginas",
  found: (shown: number, all: number) =>
    all > shown
      ? `Se muestran ${shown} de ${all}; otra palabra reduce la lista.`
      : all === 1
        ? "1 encontrado."
        : `${all} encontrados.`,
  nothing: (typed: string) => `No se encontró nada para «${typed}».`,
  instead: (pairs: readonly [string, string][]) =>
    `Entendido ${pairs.map(([typed, taken]) => `«${taken}» por «${typed}»`).join(", ")}.`,
  cap: (length: string) => `${length} como dado`,
  across: (length: string) => `${length} como largo`,
  size: (cap: string, across: string) => `${cap} × ${across}`,
  measured: "medida",
  comparing: "Se compara la medida con el cuadro…",
  noCore: "No llegó la comparación de medidas; use Identificar.",
  noIndex: "No llegó aquello en que se busca. Cargue la página otra vez, o mire de la A a la Z.",
} as const;
