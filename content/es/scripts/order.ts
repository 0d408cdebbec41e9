// What the enquiry slip says: on the page, on paper, in a text message and in a mail. Labels of the form are in
// words/order.yaml.
import type { Verdict } from "../../matcher/types";
import type { Open } from "../../order/facts";
import type { Extra, Grease } from "../../order/slip";

export const addressWords = {
  empty: "Esta hoja está vacía. Ponga abajo una cruceta, o venga aquí desde una identificación.",
  broken:
    "Este enlace perdió un trozo en el camino, así que no se usa nada de él. Pida que se lo envíen de nuevo, en una sola línea.",
  notOurs: "Este enlace no contiene ninguna consulta. Puede que se haya escrito a mano o se haya cambiado.",
  tooLong: "Este enlace es demasiado largo para ser uno de los nuestros. Pida otro.",
  unknownKey: (key: string) => `El enlace dice algo que esta página no conoce: ${key}.`,
  twice: (key: string) => `El enlace dice ${key} dos veces; se usa la primera.`,
  tooMany: (given: number, most: number) =>
    `El enlace contiene ${given} crucetas y en una hoja caben ${most}: aquí están las primeras ${most}.`,
  badCount: (n: number, text: string) => `Cruceta ${n + 1}: «${text}» no es un número de crucetas; se pone 1.`,
  ofJoint: (n: number, says: string) => `Cruceta ${n + 1}: ${says}`,
};

export const extraWords: Record<Extra, string> = {
  clips: "anillos",
  straps: "abrazaderas con sus tornillos",
  "u-bolts": "pernos en U con sus tuercas",
  "plate-bolts": "tornillos de placa con sus chapas de bloqueo",
};

export const greaseWords: Record<Grease, string> = { fitting: "con grasera", sealed: "sellada de por vida" };

export const openWords: Record<Open, string> = {
  size: "medida",
  grease: "con grasera o sellada",
  "clip-thickness": "grosor de los anillos",
  clips: "número de anillos",
  straps: "número de abrazaderas",
  "u-bolts": "número de pernos en U",
  "plate-bolts": "número de tornillos de placa",
};

export const notChecked = [
  "si entra en sus horquillas",
  "carga, ángulo y velocidad",
  "el estado de horquillas, alojamientos y cardán",
] as const;

export const factWords = {
  chosen: (row: string) =>
    `La medida ${row} se eligió por su nombre. No hay ninguna lectura detrás: mida antes de pedir.`,
  open: "La medida aún no se conoce.",
  noRow: (row: string) => `El cuadro de esta página no tiene ninguna medida llamada ${row}.`,
  noReading: "Se anotó cómo va sujeta; no hay ninguna lectura detrás.",
};

/** How far the slip may be relied on, for each way the size came about. */
export const standing: Record<Verdict | "chosen" | "open", string> = {
  identified: "Identificada por lecturas",
  possible: "Posible: confirme antes de pedir",
  between: "Sin resolver: las lecturas dejan varias medidas",
  "not-in-chart": "No está en el cuadro: pida según las lecturas",
  "measure-again": "Sin resolver: mida otra vez",
  chosen: "Elegida por su nombre, sin medir",
  open: "Medida no conocida",
};

export const joined = (names: readonly string[]): string => names.join(", ");

export const slipWords = {
  line: (cap: string, across: string, hold: string) => `dado ${cap}; largo ${across}; ${hold}`,
  title: "Consulta: crucetas",
  joint: (n: number, of: number) => (of > 1 ? `Cruceta ${n + 1} de ${of}` : "Cruceta"),
  wanted: (count: number) => (count === 1 ? "se pide 1" : `se piden ${count}`),
  forPlace: (place: string) => `para: ${place}`,
  soldAs: "Se vende como",
  oneOf: "Una de",
  moreSizes: (n: number) => `y ${n} más`,
  hold: "Cómo va sujeta",
  cap: "Diámetro del dado",
  across: "Largo",
  faces: (faces: string) => `medido ${faces}`,
  chart: "Cuadro",
  measured: "Medido",
  bare: "deducido de la horquilla sola",
  readings: (used: number, aside: number) =>
    `${used === 1 ? "1 lectura" : `${used} lecturas`}${aside === 0 ? "" : aside === 1 ? ", 1 apartada" : `, ${aside} apartadas`}`,
  readWith: (tool: string, condition: string) => `Leído con ${tool}; piezas ${condition}.`,
  conditions: { new: "nuevas", used: "usadas y limpias", worn: "gastadas", rusted: "oxidadas" },
  notThese: "No confundir con",
  otherHold: "mismos datos, otra sujeción",
  threads: "Roscas que van con el nombre",
  elsewhere: "en otra parte",
  confirmMemory: "Los datos son de memoria, no publicados: confírmelos antes de pedir.",
  grease: "Engrase",
  greaseOpen: "con grasera / sellada",
  extras: "Con ella",
  thickness: "grosor de los anillos",
  noExtras: "no se pide nada",
  part: "Número de pieza ofrecido",
  price: "Precio, y para cuándo",
  back: "La identificación",
  backRow: "La medida en el cuadro",
  qr: (n: number) => `Código QR que lleva de vuelta a la cruceta ${n + 1}`,
  shop: "Para",
  from: "De",
  job: "Trabajo",
  note: "Nota",
  date: "Fecha",
  version: "Cuadro",
  notChecked: "Sin comprobar",
  defers:
    "Compare la cruceta nueva con la vieja antes de prensarla. El manual del fabricante y un taller de cardanes tienen la última palabra.",
  expanded: "± vale en unas 95 de cada 100 mediciones así. ≈ está convertido.",
};

export const addWords = {
  nothing: "Escriba el nombre de una medida, como 1310, o pegue la dirección de una identificación.",
  unknown: (text: string) =>
    `«${text}» no es ninguna medida del cuadro ni la dirección de una identificación. Escriba un nombre como lo tiene el cuadro, por ejemplo 1310, o pegue la dirección entera.`,
  several: (text: string, rows: string) => `«${text}» es otro nombre de varias medidas: ${rows}. Escriba una de ellas.`,
};

export const messageWords = {
  head: "Consulta de crucetas:",
  line: (count: number, size: string) => `${count} x ${size}`,
  unsettled: (standing: string) => `medida por decidir (${standing.toLowerCase()})`,
  also: (names: string) => ` (también se vende como ${names})`,
  cap: "dado",
  across: "largo",
  measured: "medido",
  not: (names: string) => `Que no sea ${names}.`,
  ask: "¿La tiene, a qué precio y para cuándo?",
  link: "Todo, aquí:",
};

export const mailWords = {
  subject: (sizes: string, job: string) => `Consulta: cruceta ${sizes}${job ? `, ${job}` : ""}`,
  greeting: "Pedimos oferta de estas crucetas.",
  link: "La hoja con todo, para abrir o imprimir:",
  chart: (version: string) => `Cifras del cuadro ${version}.`,
};

export const words = {
  noCore: "Una parte de esta página no llegó. Cárguela otra vez donde haya señal, o imprima la hoja en blanco.",
  noChart: "No se pudo traer el cuadro. Cargue la página otra vez donde haya señal, o imprima la hoja en blanco.",
  otherChart: (made: string, now: string) =>
    `Esta hoja se hizo con el cuadro ${made}; esta página tiene el ${now} y muestra sus cifras.`,
  tooLong: (length: number, most: number) =>
    `El enlace tiene ${length} caracteres; algunos programas de mensajes cortan los de más de ${most}. Acorte la nota, quite lecturas que no necesite, o haga otra hoja para algunas de las crucetas. Imprimir, copiar y el archivo funcionan igual.`,
  qr: "La hoja como código QR",
  remove: (n: number) => `Quitar la cruceta ${n + 1}`,
  removed: "Quitada.",
  undo: "Volver a ponerla",
  back: "Otra vez en la hoja.",
  full: (most: number) => `En una hoja caben ${most} crucetas. Haga otra para más.`,
  added: (what: string) => `${what}: en la hoja.`,
  begun: (sizes: string) => `En esta ventana ya hay una hoja empezada: ${sizes}. ¿Va en ella la cruceta nueva?`,
  aJoint: "una cruceta",
  kept: "Esta es la hoja que empezó en esta ventana.",
  badNumber: (text: string, most: number) => `«${text}» no es un número de 1 a ${most}: queda el último bueno.`,
  numbered: (n: number) => `Cruceta ${n + 1}`,
  copied: "Copiado.",
  copyByHand: "Aquí no se permite copiar. El texto está seleccionado: cópielo usted.",
  fileName: "consulta.json",
};
