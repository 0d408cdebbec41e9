// What the bar says.
export const words = {
  label: "Un cuadro más nuevo",
  waiting: (mine: string, newer: string, others: number) =>
    (mine === newer
      ? `Hay páginas más nuevas, con el mismo cuadro ${mine}. Usted conserva aquellas con las que empezó hasta que diga lo contrario.`
      : `Ha llegado el cuadro ${newer}. Usted conserva el cuadro ${mine}, con el que empezó, hasta que diga lo contrario.`) +
    (others > 0
      ? others === 1
        ? " Otra página abierta lo seguirá en su próximo paso."
        : ` Otras ${others} páginas abiertas lo seguirán en su próximo paso.`
      : ""),
  taken: (mine: string) =>
    `En otra ventana se tomó un cuadro más nuevo. Lo que ve aquí sigue siendo el cuadro ${mine}.`,
  noRoom: (mine: string) =>
    `Hay un cuadro más nuevo, pero este dispositivo no tiene espacio para guardarlo junto al cuadro ${mine}. ` +
    "Sin una copia guardada, el sitio necesita red hasta que haya espacio.",
  use: "Usarlo ahora",
  reload: "Cargar otra vez esta página",
  drop: "Borrar la copia guardada",
  later: "Más tarde",
} as const;
