// The words of the picture.
import type { Kind } from "../../parts/neighbourhood/places";

export const kindWords: Record<Kind, string> = {
  left: "una medida que queda",
  same: "mismos datos, otra sujeción",
  part: "no coincide en conjunto, aunque este extremo sí",
  near: "no coincide",
};

export const words = {
  title: "Dónde quedan sus lecturas",
  close: "De cerca",
  around: "Alrededor",
  about:
    "Cada marca es una medida; las lecturas dentro de su recuadro de trazos concuerdan con ella. El recuadro alrededor de la cruz es lo que pueden errar sus lecturas.",
  pick: "Toque una marca, o recórralas con la tecla Tab, para leer en cuánto difiere.",
  you: "Sus lecturas",
  youShort: "usted",
  scale: (wide: string, high: string) => `El dibujo abarca ${wide} de ancho${high ? ` y ${high} de alto` : ""}.`,
  table: "Lo mismo en una tabla",
  caption: "Medidas junto a sus lecturas",
  size: "Medida",
  chart: "cuadro",
  offBy: "difiere en",
  larger: "mayor que el suyo",
  smaller: "menor que el suyo",
  same: "igual que el suyo",
} as const;
