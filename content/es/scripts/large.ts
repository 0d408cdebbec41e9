// What pages of a large chart say, and no others.
export const words = {
  looking: "Se buscan las filas…",
  many: "Demasiadas filas tienen estas palabras en el nombre: escriba más de una de ellas.",
  noRows: "No llegaron las filas con esos nombres, así que puede faltar en la lista lo que busca.",
  again: "Intentar de nuevo",

  taken: "En otra ventana se tomó un cuadro más nuevo. Lo que ve aquí sigue siendo el de antes.",
} as const;
