// A symbol as the outline of an SVG path, one square module a unit, with the quiet zone of four modules round it.
import type { QrSymbol } from "./encode";

export const quiet = 4;

/** Units along one side of the picture. */
export const pictureSide = (symbol: QrSymbol): number => symbol.modules.length + 2 * quiet;

/** The dark modules, runs of a row drawn as one bar. */
export function path(symbol: QrSymbol): string {
  let d = "";
  symbol.modules.forEach((row, r) => {
    for (let from = 0; from < row.length; from++) {
      if (!row[from]) continue;
      let to = from;
      while (row[to]) to++;
      d += `M${from + quiet} ${r + quiet}h${to - from}v1h${from - to}z`;
      from = to;
    }
  });
  return d;
}
