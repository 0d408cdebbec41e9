// What stands round the sentences about a link that was made with another chart; those are the core's.
export const words = {
  title: "Desde que se hizo este enlace",
  missing: "No se pudo traer el registro de cambios, así que aquí no se dice qué ha cambiado desde entonces.",
  all: "Todos los cambios del cuadro",
} as const;
