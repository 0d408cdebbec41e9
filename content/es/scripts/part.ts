// What the page of identifying a part says by itself. What the verdict says is the core's own text.
import type { Basis } from "../../matcher/types";
import { basisWords } from "./terms";

export const words = {
  start: "Cuente lo que haya que contar, ponga una medida y lea aquí el resultado.",
  startMore: "Dos o tres lecturas de cada longitud dicen más que una: un descuido salta a la vista.",
  noTable:
    "No se pudo traer la tabla, así que aquí aún no se puede identificar nada. Abajo se dice cómo se hace a mano.",
  between: "Entre varias filas",
  rowLeft: "La fila",
  rowsLeft: "Filas que quedan",
  rowsLeftAbout: "Estas lecturas no pueden separarlas.",
  basis: (basis: Basis) => `Fundamento de lo comparado: ${basisWords[basis]}.`,
  shareTitle: "Lecturas de una pieza",
  next: (label: string) => `Otra lectura: ${label}`,
  counted: (label: string, count: string) => `${label}: ${count}.`,
} as const;
