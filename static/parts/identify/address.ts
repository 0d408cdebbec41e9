// The address of the page carries the query behind the #, so nothing of it is sent to a server. The codec is the
// core's, so that a test and the command read the same addresses.
import type { Unit } from "../../matcher/types";
import { fromQuery, hasReadings, toQuery, type State } from "./state";
import { words } from "words:identify";

export interface Opened {
  state: State;
  remarks: string[]; // what the reader must know about the address
  made: string | undefined; // the chart it was made with
}

/** The query in the page's address; null when there is none. */
export function readAddress(chart: string, unit: Unit): Opened | null {
  const fragment = location.hash.slice(1);
  if (!fragment.includes("=")) return null; // a place on the page, such as the skip link's
  const { query, chart: made, complaints } = CapspanCore.decodeAddress(fragment);
  const remarks: string[] = [];
  if (complaints.length) remarks.push(`${words.badAddress} ${complaints.map((c) => c.says).join(" ")}`);
  if (made && made !== chart) remarks.push(words.otherChart(made, chart));
  return { state: fromQuery(query, unit), remarks, made };
}

/** Writes the state into the address without a new step in the history; an untouched form leaves no trace. */
export function writeAddress(state: State, chart: string): void {
  const touched = hasReadings(state) || state.ends.some((end) => end.hold !== null);
  const fragment = touched ? `#${CapspanCore.encodeAddress(toQuery(state), chart)}` : "";
  history.replaceState(null, "", location.pathname + location.search + fragment);
}
