// What the finder in somebody else's page says by itself.
export const words = {
  loading: "Se trae el buscador de crucetas…",
  failed: "El buscador de crucetas no se pudo cargar aquí.",
  fullPage: "Abrir la página completa",
  retry: "Intentar otra vez",
  partMissing:
    "Una parte del buscador no se cargó: nadie ha buscado descuidos conocidos de medición. Se intenta otra vez con la siguiente lectura.",
  chart: (version: string) => `Cuadro ${version}.`,
  startedOver: "Todas las lecturas quitadas.",
  noLanguage: (asked: string, given: string) =>
    `joint-finder: este sitio no tiene el idioma ${JSON.stringify(asked)}; habla ${given}.`,
} as const;
