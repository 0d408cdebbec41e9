// Lo que se dice de los documentos que citan los cálculos, por el texto inglés de sources.ts. Los títulos quedan en su
// lengua.

const words: Record<string, string> = {
  "rounded down to whole degrees": "redondeado hacia abajo a grados enteros",
  "section 7": "sección 7",
  "problem 3.3-8": "problema 3.3-8",
  "a trade page, not a maker's drawing or a standard":
    "una página del comercio, no un plano de fabricante ni una norma",
  "read in a copy of one page or table, not in the whole document":
    "leído en la copia de una página o tabla, no en el documento entero",
  "one machine's manual; holds for that machine": "manual de una máquina; vale para esa máquina",
  "a page that cites a guide of SAE it does not reprint": "una página que cita una guía de SAE que no reproduce",
  "from a copy of the solutions": "de una copia de las soluciones",
  "its power constants are rounded low": "sus constantes de potencia están redondeadas hacia abajo",
  "limits as printed in a tolerance table, not the standard itself":
    "límites como están impresos en una tabla de tolerancias, no la norma misma",
  "one line of it, 1/4-28 dry, is a misprint": "una de sus líneas, 1/4-28 en seco, es una errata",
  "prints its basis as 100 rad/s²; all its points fit 1000":
    "imprime su base como 100 rad/s²; todos sus puntos concuerdan con 1000",
  "its power column is read from a chart and does not fit its torques":
    "su columna de potencia está leída de un diagrama y no concuerda con sus pares",
  "(a maker of farm machines)": "(un fabricante de máquinas agrícolas)",
  "pages 005 and 009": "páginas 005 y 009",
  "DSSM-0100, printed p. 4": "DSSM-0100, p. 4 impresa",
  "technical section, pp. 38-46": "parte técnica, pp. 38-46",
  "J3311-1-DSSP Aug 2008, printed pp. 2, 5, 8, 10, 17": "J3311-1-DSSP, agosto de 2008, pp. 2, 5, 8, 10, 17 impresas",
  "J3299-2-DSSP June 2008, charts 1-3": "J3299-2-DSSP, junio de 2008, cuadros 1-3",
  "p. 69 of the copy": "p. 69 de la copia",
  "section of a printed trade catalogue": "parte de un catálogo impreso",
  "2006, section 4.7": "2006, sección 4.7",
  "catalogue p. K53": "catálogo, p. K53",
};

/** Un texto sobre un documento, en español. */
export function grounded(text: string): string {
  return words[text] ?? text;
}
