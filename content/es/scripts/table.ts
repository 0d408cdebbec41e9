// What the filter of a table says.
export const words = {
  all: (all: number) => (all === 1 ? "1 fila." : `${all} filas.`),
  some: (shown: number, all: number) => `${shown} de ${all} filas.`,
  none: (sized: boolean) =>
    `Ninguna fila encaja.${sized ? " Una medida es dado y largo, como 27 x 82 o 1,062 x 3,219." : ""}`,
  sortBy: (column: string) => `ordenar por ${column}`,
} as const;
