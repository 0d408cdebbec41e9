// Lo que dicen las páginas de un cuadro grande, que se trae por partes.
const some = (n: number): string => (n === 1 ? "una parte" : `${n} partes`);

export const words = {
  looking: "Buscando en el cuadro",
  lookingSays: "El cuadro es grande y viene por partes. Se buscan las que tocan sus lecturas.",
  slow: (n: number, size: string) =>
    `Se traen del cuadro ${some(n)}, unos ${size}. No hay resultado hasta que estén todas.`,
  stuck: (n: number, size: string) =>
    `Todavía se espera del cuadro ${some(n)}, unos ${size}. La red es lenta, o no hay red.`,
  more: "Hace falta más del cuadro",
  costly: (n: number, size: string) => `Estas lecturas tocan ${some(n)} del cuadro: traerlas son unos ${size}.`,
  fewer: "Con el dado y también el largo son muchas menos.",
  fetch: (size: string) => `Traerlas, unos ${size}`,
  none: "Sin resultado",
  unreachable:
    "No se pudo traer una parte del cuadro, así que no se puede decir nada: lo que falta parecería no existir.",
  gone: "Una parte del cuadro ya no está donde esta página la busca: el cuadro del sitio es más nuevo que esta página. Vuelva a cargar la página.",
  damaged:
    "Una parte del cuadro llegó dañada, también al pedirla otra vez. No se usó, y sin ella no se puede decir nada.",
  joints: "Se trae lo que el cuadro dice de estas crucetas. No se escribe nada de ello hasta que esté todo.",
  jointsStuck:
    "Todavía se espera lo que el cuadro dice de estas crucetas. La red es lenta, o no hay red. No se escribe nada de ello hasta que esté todo.",
  noJoints: "Falta lo que el cuadro dice de estas crucetas",
  notFound:
    "No se pudo preguntar al cuadro por ese nombre, así que no se sabe si lo tiene. Lo escrito queda: pulse otra vez.",
  retry: "Probar otra vez",
  reload: "Volver a cargar la página",
  keptReadings: "Sus lecturas quedan como están. Puede seguir midiendo.",

  keep: "Guardar todo el cuadro en este dispositivo",
  keepAbout: (size: string) =>
    `Así esta página identifica sin red, mida usted lo que mida. Traer el cuadro son unos ${size}; de uno posterior, solo lo que haya cambiado.`,
  keepIt: (size: string) => `Guardarlo, unos ${size}`,
  keepRest: (size: string) => `Traer el resto, unos ${size}`,
  stop: "Parar",
  letGo: "Quitarlo de este dispositivo",
  keeping: (n: number, of: number) => `Hay ${n} de ${of} partes en este dispositivo.`,
  stopped: (n: number, of: number) => `Se paró. ${n} de ${of} partes están en este dispositivo, y ahí quedan.`,
  allKept: "Todo el cuadro está en este dispositivo.",
  letGone: "El cuadro se quitó de este dispositivo.",
  refused:
    "Este navegador no guarda nada de este sitio, así que no puede guardar el cuadro. Puede ser por una ventana privada o por un ajuste.",
  full: (n: number, of: number) =>
    `No hay espacio para más en este dispositivo. ${n} de ${of} partes están en él, y ahí quedan; haga espacio y pruebe otra vez, o quítelas.`,
  cannot: "Para guardarlo, la página tiene que venir por https; esta no.",
} as const;
