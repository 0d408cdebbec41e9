// What the shaft record says by itself; labels of the page are in words/shaft.yaml.

export const readWords = {
  empty: "El archivo está vacío.",
  tooLong: "El archivo es demasiado grande para ser una ficha de cardán.",
  notOurs: "Esto no es una ficha de cardán: no dice kind «shaft-record». Elija un archivo guardado en esta página.",
  enquiry: "Esto es una consulta, no una ficha de cardán. Se abre con su enlace.",
  fault: (line: number, column: number, found: string) =>
    `El archivo está dañado en la línea ${line}, columna ${column}${found === "" ? ", donde acaba antes de tiempo" : `, en «${found}»`}. Lo que hay antes se leyó; lo que hay después se perdió, así que compárelo con el original.`,
  later:
    "El archivo lo hizo una edición posterior de esta página. Se leyó lo que esta edición conoce. Cargue la página otra vez para tener la más nueva y lea el archivo de nuevo.",
  noFormat: "El archivo no dice qué forma tiene; se leyó como forma 1.",
  noTitle: "No tiene título: póngale uno.",
  untitled: "Un cardán sin nombre",
  unknown: "Esta página no lo conoce, y lo dejó fuera.",
  lacks: (names: string) => `Le falta ${names}, y se dejó fuera.`,
  cut: (longest: number) => `Tiene más de ${longest} caracteres, y se cortó.`,
  tooMany: (given: number, most: number) => `Hay ${given} y caben ${most}: se leyeron los primeros ${most}.`,
  wrong: (text: string, wanted: string) =>
    `Es ${text}, y ahí corresponde ${wanted}. Se dejó fuera: escríbalo de nuevo.`,
  more: (n: number) => `y ${n} más de la misma clase.`,
  text: "un texto entre comillas",
  list: "una lista entre [ ]",
  object: "una parte entre { }",
  date: "un día como 2026-11-25",
  page: "el nombre de un cálculo, como angles",
  word: (words: readonly string[]) => `una de estas palabras: ${words.join(", ")}`,
};

export const keepWords = {
  another: "una ficha nueva",
  untitled: "Un cardán sin nombre",
  kept: "Guardado en",
  gone: "Esa ficha ya no está en este dispositivo. Elija otra.",
  full: (title: string) => `En ${title} no cabe nada más. Quite antes algo.`,
  changed: "Otra ventana cambió esa ficha en el mismo momento: pulse otra vez.",
  refused:
    "Este navegador no guarda nada aquí: no tiene espacio, o no está permitido. Conserve en su lugar la dirección de esta página.",
};

export const sheetWords = {
  job: "Trabajo",
  by: "Por",
  date: "Fecha",
  chart: "Cuadro",
  joint: (n: number) => `Cruceta ${n + 1}`,
  clips: "Anillos montados",
  note: "Nota",
  figures: "Anotado",
  notes: "Notas",
  more: (n: number) => `y ${n} ${n === 1 ? "línea más" : "líneas más"} en su página.`,
  moreUnchecked: (n: number) => ` Y ${n} más, en su página.`,
  notChecked: "Lo que nadie midió ni calculó no se comprobó.",
  cautions:
    "Antes de trabajar en el cardán: vehículo en suelo nivelado, ruedas calzadas, sobre caballetes con carga nominal, caja de cambios en punto muerto, cardán apoyado antes de soltar los tornillos. Marque la fase. Los cardanes que giran llevan siempre su resguardo. Soldar y equilibrar es cosa de un taller de cardanes; el manual del fabricante y las normas locales van primero.",
};

export const words = {
  untitled: "Un cardán sin nombre",
  kept: "Guardado en este dispositivo.",
  notKept:
    "No guardado en este dispositivo: no tiene espacio, o el navegador no lo permite. Todo sigue aquí, en esta página. Guárdelo como archivo antes de cerrarla.",
  noRecord: "Esa ficha no está en este dispositivo. Léala de su archivo, o elija otra.",
  changedElsewhere: "Otra ventana había cambiado esta ficha, así que la suya se guarda como copia junto a ella.",
  otherWindow: "Otra ventana ha cambiado esta ficha.",
  deletedElsewhere:
    "Esta ficha se borró en otra ventana. Sigue aquí, en esta página; el próximo cambio la guarda de nuevo.",
  showIt: "Mostrar esa",
  copyOf: (title: string) => `${title.slice(0, 52)} (copia)`,
  joint: (n: number, names: string) => `Cruceta ${n + 1}${names === "" ? "" : `: ${names}`}`,
  differs: (names: string, chart: string) =>
    `Cuando se puso, el cuadro ${chart} decía ${names === "" ? "que no se nombraba ninguna medida" : names}. Mírelo otra vez.`,
  removeJoint: (n: number) => `Quitar la cruceta ${n + 1}`,
  removeFigure: (n: number) => `Quitar el dato ${n + 1}`,
  removeCalculation: (title: string) => `Quitar ${title}`,
  badDate: (text: string) => `«${text}» no es un día. Escriba año, mes y día: 2026-11-25.`,
  removed: "Quitado.",
  undo: "Volver a ponerlo",
  back: "Otra vez en la ficha.",
  full: (most: number) => `En una ficha caben ${most} crucetas; las demás se dejaron fuera.`,
  noChart: "El cuadro aún no ha llegado, así que no se puede buscar ninguna medida. Inténtelo en un momento.",
  open: (title: string) => `Abrir ${title}`,
  delete: "Borrar",
  deleteIt: (title: string) => `Borrar ${title}`,
  deleted: (title: string) => `${title}: borrada.`,
  undoDelete: (title: string) => `Volver a ponerla: ${title}`,
  backAgain: (title: string) => `${title}: está otra vez.`,
  notPutBack: "No se pudo volver a poner en este dispositivo, así que se guarda como archivo.",
  notDeleted: "No se pudo borrar: el navegador no lo permite.",
  damaged: (says: string) => `Una ficha que no se puede leer. ${says}`,
  damagedName: "la ficha dañada",
  saveRaw: "Guardarla como está",
  saveRawIt: "Guardarla como está: la ficha dañada",
  readInPart: "Leída, pero no entera:",
  unreadable: "El navegador no pudo leer el archivo.",
  fileName: (title: string) => {
    const plain = title
      .normalize("NFD")
      .replace(/[\u0300-\u036f]/g, "")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "");
    return `cardan-${plain.slice(0, 40) || "ficha"}.json`;
  },
};
