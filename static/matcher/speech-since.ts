// What is said of a link that was made with another chart.
import type { Change, Issue, Standing } from "./since";
import { inch, parseReading } from "./reading";
import { capital, list } from "./speech-words";

export function head(standing: Standing, made: string, now: string, rows: number, told: boolean): string {
  const by = `The verdict here is by chart ${now}.`;
  const later = told ? "" : ` Chart ${now} is not in the record of changes yet, so what came last may be missing.`;
  switch (standing) {
    case "older":
      return `This link was made with chart ${made}. ${since(rows)}${later} ${by}`;
    case "partly":
      return `This link was made with chart ${made}, which is not in the record of changes. After its day ${counted(rows)}; more may have changed.${later} ${by}`;
    case "newer":
      return `This link was made with chart ${made}, which is newer than chart ${now} here. What changed between them is not known here. Load the page again with a signal, or ask for the newer chart. ${by}`;
    case "unknown":
      return `This link was made with chart ${made}, and there is no record of it. Whether its rows have changed since cannot be told: ask whoever sent it what the answer was. ${by}`;
    case "no-name":
      return `This link names a chart “${made}”, and no chart is called so. Whether its rows have changed since cannot be told. ${by}`;
    case "same":
      return "";
  }
}

function since(rows: number): string {
  return rows === 0 ? "None of the rows its answer rests on has changed since." : `Since then ${counted(rows)}.`;
}

function counted(rows: number): string {
  if (rows === 0) return "no row its answer rests on is recorded as changed";
  return `${rows} ${rows === 1 ? "row its answer rests on has" : "rows its answer rests on have"} changed`;
}

/** Names of rows for a sentence; a joint that has its figures from the row that changed is one of them. */
export function rowsOf(refs: readonly string[]): string {
  return list(refs.map((ref) => ref.slice(ref.indexOf("/") + 1)));
}

export function changed(change: Change, issue: Issue, rows: string): string {
  const own = change.of.slice(change.of.indexOf("/") + 1);
  const through = rows === own || !change.of.includes("/") ? "" : ` (by ${own})`;
  const reason = change.why === "" ? issue.why : change.why;
  const why = reason === "" ? "" : ` ${sentence(reason)}`;
  return `${rows}${through}: ${what(change)}, in chart ${issue.chart}.${why}`;
}

function what(change: Change): string {
  const column = change.column === "" ? "" : `${change.column} `;
  switch (change.what) {
    case "added":
      return "added since";
    case "retired":
      return `${change.of.slice(change.of.indexOf("/") + 1)} was retired${change.new === "" ? "" : `, see ${change.new}`}`;
    case "renamed":
      return `was called ${change.old}`;
    case "value":
      return `${column}was ${figure(change.old)} and is ${figure(change.new)}`;
  }
  return `${column}${change.what} was ${figure(change.old)} and is ${figure(change.new)}`;
}

/** A figure as it was printed, with the other unit behind it. */
function figure(text: string): string {
  if (text === "") return "nothing";
  const r = /^[\d. /]+ (in|mm)$/.test(text) ? parseReading(text) : undefined;
  if (!r?.ok) return text;
  return `${text} (≈ ${r.unit === "in" ? `${r.mm.toFixed(2)} mm` : `${(r.mm / inch).toFixed(3)} in`})`;
}

function sentence(text: string): string {
  return /[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`;
}
