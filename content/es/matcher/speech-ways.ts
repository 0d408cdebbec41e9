// Lo que se dice de una manera de unir dos extremos que ninguna cruceta de la lista une.

export interface WaySaid {
  joint: string; // nombre de la cruceta que se compra
  conversion: boolean;
  keeps: number; // el extremo medido cuya horquilla se queda
  to: string; // nombre de la medida que debe llevar la otra horquilla
  caps: boolean; // la horquilla cambiada lleva los mismos dados que antes
  held: boolean; // y los sujeta de la misma manera
  recalled: boolean; // que exista esa cruceta se sabe de memoria
}

export function way(w: WaySaid): string {
  const [stays, goes] = w.keeps === 0 ? ["primer", "segundo"] : ["segundo", "primer"];
  const joint = w.conversion ? `la cruceta de conversión ${w.joint}` : `una ${w.joint} corriente`;
  const same =
    w.caps && w.held
      ? " Los dados y la sujeción quedan como están."
      : w.caps
        ? " Los dados quedan del mismo diámetro."
        : "";
  const recalled = w.recalled
    ? " Esa cruceta se sabe de memoria, no está publicada: pregunte si se consigue antes de cambiar una horquilla."
    : "";
  return `Deje la horquilla del ${stays} extremo, cambie la del ${goes} por una que lleve la ${w.to} y monte ${joint}.${same}${recalled}`;
}

export const wayOut = (): string =>
  "O cambie una horquilla, de modo que sirva una cruceta de la lista: las maneras de hacerlo vienen con esta respuesta. Un taller de cardanes monta y equilibra la horquilla.";
