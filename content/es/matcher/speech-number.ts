// Cómo se escribe un número: con coma delante de los decimales. Los números de oraciones, tablas, dibujos y campos pasan
// por aquí; las direcciones, los archivos y los datos guardan el punto en todas las lenguas.

/** Un número, o un texto con números, que viene con punto decimal. */
export function local(text: string): string {
  return text.replace(/(\d)\.(?=\d)/g, "$1,");
}

/** El texto de un campo que muestra un número que viene con punto decimal. Con tres cifras detrás de la coma lleva un
 *  cero más: leído otra vez no puede ser de miles. */
export function toField(text: string): string {
  return local(/^[-+]?[1-9]\d{0,2}\.\d{3}$/.test(text) ? `${text}0` : text);
}

/** Lo que se escribió en un campo, para quien lo lee como número: un punto que podría separar miles pasa a ser coma, de
 *  la que duda todo lector. */
export function fromField(text: string): string {
  return text.replace(/^(\s*[-+\u2212]?[1-9]\d{0,2})\.(?=\d{3}(?![\d.,]))/, "$1,");
}
