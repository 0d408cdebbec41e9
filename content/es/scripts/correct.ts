// What the page of corrections says by itself; labels are in templates/correct.html.
// Figures stand here as the files of the chart have them, with a point.
import { basisWords } from "./terms";

export const checkWords = {
  empty: "Esto está vacío. Llénelo.",
  tooLong: (length: number, most: number) => `Esto tiene ${length} caracteres; se admiten ${most} como máximo.`,
  invisible: (code: string) => `Contiene el carácter invisible ${code}. Escríbalo de nuevo, en una sola línea.`,
  badID: "Solo letras sin acento, cifras, y entre ellas guiones o puntos sueltos.",
  taken: (id: string) => `Otra fuente ya tiene el nombre «${id}».`,
  badDate: "Escriba el día así: 2026-11-25.",
  unknownWord: (word: string) => `«${word}» no es ninguna de las palabras que aquí se conocen.`,
  badNumber: (text: string, range: boolean) =>
    `«${text}» no es un número como los del cuadro. Escriba 27.00, 1.062 o 1 3/16${range ? ", o un intervalo como 26-35" : ""}.`,
  implausible: (text: string, least: string, greatest: string) =>
    `${text} queda fuera de ${least} a ${greatest}, que es todo lo que admite esta columna. Mire el punto y la unidad.`,
  noBasis: "No dice por qué se cree.",
  unknownSource: (id: string) => `La fuente «${id}» no está en la lista.`,
  noSource: "Nombre el documento que lo imprime.",
  senselessSource: "Hay una fuente junto a un dato que no descansa en ella.",
  placeOfNothing: "Un lugar sin documento. Nombre el documento.",
  noFaces: "Diga entre qué caras se mide.",
  facesOfNothing: "Lo que no existe no tiene caras.",
  facesOfAnotherHold: (faces: readonly string[]) =>
    `Estas caras no van con el modo en que se sujeta la cruceta. Serían: ${faces.join(", ")}.`,
  noReadings: "Escriba al menos una lectura.",
  noUnit: (text: string) => `«${text}» no dice su unidad. Escriba mm o in detrás.`,
  notAsMeasured: "El dato queda fuera de las lecturas.",
  othersAreFigures: "Lo que acompaña a una cifra tiene que ser otra cifra.",
} as const;

export const typedWords = {
  nothingNew: "Eso es lo que el cuadro ya dice.",
  understood: (text: string, other: string) => `Entendido como ${text}${other === "" ? "" : ` (≈ ${other})`}.`,
  reading: (typed: string, text: string) => `«${typed}» se entiende como ${text}.`,
  refused: (typed: string, says: string) => `«${typed}»: ${says}`,
  whichUnit: (word: string, units: readonly string[]) =>
    `${word === "" ? "Falta la unidad." : `«${word}» no es una unidad de esta columna.`} Escriba ${units.join(" o ")} detrás.`,
} as const;

export const pageWords = {
  place: (file: string, line: number) => `${file}, línea ${line}`,
  noTable: (table: string) => `No hay ninguna tabla «${table}» en este cuadro. Elija una abajo.`,
  noRow: (row: string) => `No hay ninguna fila «${row}» en esta tabla. Elija una abajo.`,
  notThere:
    "Una parte de esta página no llegó. Cárguela otra vez donde haya señal, o corrija el valor a mano como se dice abajo.",
  yours: (says: string) => `Las suyas: ${says}`,
  now: (figure: string, basis: string, measured: number) =>
    [
      figure,
      ...(basis === "" ? [] : [basis in basisWords ? basisWords[basis as keyof typeof basisWords] : basis]),
      ...(measured === 0 ? [] : [measured === 1 ? "medido una vez" : `medido ${measured} veces`]),
    ].join(", "),
} as const;

export const outWords = {
  place: (file: string, line: number) => `${file}, línea ${line}`,
  copied: "Copiado. Péguelo sobre la línea vieja.",
  copyByHand: "Aquí no se permite copiar. La línea está seleccionada: cópiela usted.",
  subject: (of: string) => `Corrección: ${of}`,
  body: (place: string, was: string, put: string, registry: string, entry: string) =>
    [
      `Una corrección para ${place}`,
      "",
      "En lugar de",
      was,
      "ponga",
      put,
      ...(entry === "" ? [] : ["", `y al final de ${registry}`, entry]),
      "",
    ].join("\n"),
} as const;
