// Lo que se dice de un enlace que no pide ninguna medición que se pueda tomar.

export const empty = (): string => "Esta página se abre con un enlace que dice qué medir. El suyo no trae nada.";
export const broken = (): string =>
  "Este enlace perdió un trozo por el camino, así que no se puede saber todo lo que se pedía. Pida que se lo envíen otra vez, en una sola línea.";
export const notOurs = (): string =>
  "Este enlace no dice qué medir. Puede que se haya escrito a mano o se haya cambiado.";
export const nothingAsked = (): string => "Este enlace no pide medir nada. Pida uno nuevo.";
export const tooLong = (): string => "Este enlace es demasiado largo para ser uno de los nuestros. Pida uno nuevo.";
