// Cómo se escribe un número: coma delante de los decimales.

/** Un número, o un texto con números, que viene con punto decimal. Las direcciones y los datos guardan el punto. */
export function local(text: string): string {
  return text.replace(/(\d)\.(?=\d)/g, "$1,");
}
