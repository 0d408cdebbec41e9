// What the life-size drawing says of its scale; labels are in words/joint.yaml.
const scale = (perMm: number): string => `${perMm.toFixed(2).replace(".", ",")} píxeles por milímetro`;

export const words = {
  scale,
  toScale: (perMm: number, kept: boolean) =>
    `A tamaño natural en esta pantalla, según su tarjeta: ${scale(perMm)}.${
      kept ? "" : " Este navegador no lo recuerda para la página siguiente."
    }`,
  pinched: "Sin escala mientras la página esté ampliada o reducida con los dedos: vuélvala primero a su tamaño.",
  otherScreen: "Sin escala: la pantalla o el aumento no son los de cuando se puso la tarjeta.",
  notYet: "Aún sin escala: ponga primero una tarjeta bancaria sobre la pantalla.",
} as const;
