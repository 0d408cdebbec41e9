// Lo que se dice de un enlace que se hizo con otro cuadro.
import type { Change, Issue, Standing } from "./since";
import { inch, parseReading } from "./reading";
import { local } from "./speech-number";
import { called, capital, list } from "./speech-words";

export function head(standing: Standing, made: string, now: string, rows: number, told: boolean): string {
  const by = `El resultado de aquí es según el cuadro ${now}.`;
  const later = told
    ? ""
    : ` El cuadro ${now} todavía no está en el registro de cambios, así que puede faltar lo último.`;
  switch (standing) {
    case "older":
      return `Este enlace se hizo con el cuadro ${made}. ${since(rows)}${later} ${by}`;
    case "partly":
      return `Este enlace se hizo con el cuadro ${made}, que no está en el registro de cambios. Después de su día ${counted(rows)}; puede haber cambiado más.${later} ${by}`;
    case "newer":
      return `Este enlace se hizo con el cuadro ${made}, que es más nuevo que el cuadro ${now} de aquí. Lo que cambió entre los dos no se sabe aquí. Cargue la página otra vez con señal, o pida el cuadro nuevo. ${by}`;
    case "unknown":
      return `Este enlace se hizo con el cuadro ${made}, y no hay registro de él. No se puede decir si sus filas han cambiado desde entonces: pregunte a quien lo envió cuál fue la respuesta. ${by}`;
    case "no-name":
      return `Este enlace nombra un cuadro «${made}», y ningún cuadro se llama así. No se puede decir si sus filas han cambiado desde entonces. ${by}`;
    case "same":
      return "";
  }
}

function since(rows: number): string {
  return rows === 0
    ? "Ninguna de las filas en que se apoya su respuesta ha cambiado desde entonces."
    : `Desde entonces ${counted(rows)}.`;
}

function counted(rows: number): string {
  if (rows === 0) return "no consta que haya cambiado ninguna fila en que se apoya su respuesta";
  return rows === 1
    ? "ha cambiado 1 fila en que se apoya su respuesta"
    : `han cambiado ${rows} filas en que se apoya su respuesta`;
}

/** Nombres de filas para una oración. */
export function rowsOf(refs: readonly string[]): string {
  return list(refs.map((ref) => ref.slice(ref.indexOf("/") + 1)));
}

export function changed(change: Change, issue: Issue, rows: string): string {
  const own = change.of.slice(change.of.indexOf("/") + 1);
  const through = rows === own || !change.of.includes("/") ? "" : ` (por ${own})`;
  const reason = change.why === "" ? issue.why : change.why;
  const why = reason === "" ? "" : ` ${sentence(reason)}`;
  return `${rows}${through}: ${what(change)}, en el cuadro ${issue.chart}.${why}`;
}

function what(change: Change): string {
  const name = (called as Record<string, string>)[change.column] ?? change.column;
  const column = name === "" ? "" : `«${name}» `;
  switch (change.what) {
    case "added":
      return "añadida desde entonces";
    case "retired":
      return `${change.of.slice(change.of.indexOf("/") + 1)} se retiró${change.new === "" ? "" : `, vea ${change.new}`}`;
    case "renamed":
      return `se llamaba ${change.old}`;
    case "value":
      return `${column}era ${figure(change.old)} y es ${figure(change.new)}`;
  }
  return `${column}«${change.what}» era ${figure(change.old)} y es ${figure(change.new)}`;
}

/** Un valor como estaba impreso, con la otra unidad detrás. */
function figure(text: string): string {
  if (text === "") return "nada";
  const r = /^[\d. /]+ (in|mm)$/.test(text) ? parseReading(text) : undefined;
  if (!r?.ok) return text;
  return local(`${text} (≈ ${r.unit === "in" ? `${r.mm.toFixed(2)} mm` : `${(r.mm / inch).toFixed(3)} in`})`);
}

function sentence(text: string): string {
  return /[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`;
}
