// What the search of a table in groups says.
export const words = {
  ask: "Diga qué busca: una palabra o una medida, una sujeción o un intervalo.",
  noLength: (text: string) => `«${text}» no es una longitud. Escríbala como 27, 1,062 o 1 1/16.`,
  reading: (groups: number) => (groups === 1 ? "Leyendo 1 grupo." : `Leyendo ${groups} grupos.`),
  noGroup: "Ningún grupo de esta tabla puede tener eso.",
  none: (groups: number) =>
    groups === 1 ? "Ninguna medida encaja, en 1 grupo." : `Ninguna medida encaja, en ${groups} grupos.`,
  found: (sizes: number) => (sizes === 1 ? "Encaja 1 medida." : `Encajan ${sizes} medidas.`),
  first: (shown: number, sizes: number) =>
    `Encajan ${sizes} medidas; se muestran las ${shown} primeras por dado. Pida menos para ver las demás.`,
  unread: (groups: number) =>
    `${groups === 1 ? "No se pudo leer 1 grupo" : `No se pudieron leer ${groups} grupos`}, así que aquí pueden faltar medidas. Mire si hay red e inténtelo otra vez.`,
  caption: "Medidas que encajan",
} as const;
