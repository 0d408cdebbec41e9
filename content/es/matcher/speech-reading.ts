// Lo que se dice de una lectura que no se puede entender. Una oración para cada cosa: qué está mal, y qué escribir.

export const empty = (): string => "Aquí no hay nada. Escriba una lectura, como 27,00 mm o 1,062 in.";
export const tooLong = (most: number): string =>
  `Eso tiene más de ${most} caracteres. Escriba una sola lectura, como 1,062 in.`;
export const noNumber = (text: string): string =>
  `No hay ningún número en «${text.trim()}». Escriba una lectura, como 27,00 mm.`;
export const notNumber = (number: string): string =>
  `«${number}» no es un solo número. Escríbalo como 27,00, 1,062 o 1 1/16.`;
export const signed = (): string => "Una longitud no lleva signo de más ni de menos. Quite el signo.";
export const zero = (): string => "Una longitud tiene que ser mayor que cero.";
export const exponent = (): string => "Escriba el número completo, sin exponente.";
export const twoNumbers = (): string => "Aquí hay dos números. Escriba una lectura cada vez.";
export const thousands = (number: string): string =>
  `«${number}» tiene dos puntos o comas, así que se puede leer de dos maneras. Escriba solo el que va delante de los decimales.`;
export const whichUnit = (number: string): string =>
  `¿«${number}» está en milímetros o en pulgadas? Escriba mm o in detrás.`;
export const decimalFraction = (): string =>
  "Escriba una fracción o un decimal, no las dos cosas juntas: 1 1/16 o 1,0625.";
export const fractionOfMillimetre = (): string =>
  "Las fracciones son para pulgadas. Escriba los milímetros con decimales, o quite mm.";
export const zeroBelow = (): string => "Una fracción no puede tener 0 debajo de la raya.";
export const oddFraction = (bottom: number): string =>
  `Las reglas en pulgadas dividen en 2, 4, 8, 16, 32, 64 y 128, no en ${bottom}. Mire otra vez, o escriba un decimal.`;
export const improper = (): string =>
  "Detrás de un número entero la fracción tiene que ser menor que uno. Escriba 1 1/16, no 1 17/16.";

export function unknownUnit(word: string): string {
  const w = word.toLowerCase().replace(/\.$/, "");
  if (w === "cm") return "Escriba milímetros o pulgadas: 1 cm son 10 mm.";
  if (w === "m") return "Escriba milímetros o pulgadas: 1 m son 1000 mm.";
  if (w === "ft" || w === "feet" || w === "foot" || w === "'") return "Escriba pulgadas o milímetros: 1 pie son 12 in.";
  if (w === "mil" || w === "mils" || w === "thou")
    return "Escriba pulgadas con decimales: 1062 milésimas son 1,062 in.";
  return `«${word}» no es una unidad conocida aquí. Escriba mm o in.`;
}
