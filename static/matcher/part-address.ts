// A query about a table without joints as the fragment of its page's address, which is
// never sent to a server:
//
//   holes=8&circle=38.8mm,38.9mm&edges=outer&hole-diameter=10.1mm&pilot=75.0mm&tool=...&chart=...
//
// A matched column's id is its key; tables/match.go refuses a column that is called like
// one of the others. Decoding takes any text and never throws.
import type { PartComplaint, PartQuery, PartTable } from "./part-types";
import { allEdges, betweens, holeKey, mostPartReadings, shorten } from "./part-query";
import { parseReading } from "./reading";
import { unseal } from "./seal";
import * as say from "./speech-address";
import { badAddress } from "./speech-part-query";
import { conditions, tools, unitWords } from "./words";
import { short, toAddress } from "./written";

/** Longest fragment looked at. */
const longest = 8000;

export interface DecodedPart {
  query: PartQuery;
  chart?: string; // the version the address was made with
  complaints: PartComplaint[];
}

/** encodePart writes the fragment, without "#"; `chart` is the version's name. */
export function encodePart(table: PartTable, query: PartQuery, chart?: string): string {
  const out: string[] = [];
  const put = (key: string, value: string | undefined): void => {
    if (value !== undefined && value !== "") out.push(`${encodeURIComponent(key)}=${value}`);
  };
  const lengths = (list: readonly string[] | undefined): string =>
    (list ?? []).map((text) => toAddress(short(text, query.unit))).join(",");
  for (const column of table.columns) {
    const list = query.values[column.id];
    put(column.id, column.match === "exact" ? (list ?? []).map(toAddress).join(",") : lengths(list));
  }
  put("between", query.between);
  put("edges", query.edges);
  put(holeKey, lengths(query.hole));
  put("unit", query.unit);
  put("tool", query.tool);
  put("condition", query.condition);
  put("chart", chart === undefined ? undefined : toAddress(chart));
  return out.join("&");
}

export function decodePart(table: PartTable, fragment: string): DecodedPart {
  const query: PartQuery = { table: table.id, values: {} };
  const out: DecodedPart = { query, complaints: [] };
  const complain = (text: string, says: string): void => {
    out.complaints.push({ column: "query", index: 0, text: shorten(text), says });
  };
  if (fragment.length > longest) {
    complain("", say.tooLong());
    return out;
  }
  const { kind, body } = unseal(fragment);
  if (kind === "broken") complain("check", say.broken());
  const seen = new Set<string>();
  for (const pair of body.split("&")) {
    if (pair === "") continue;
    const at = pair.indexOf("=");
    const key = fromAddress(at < 0 ? pair : pair.slice(0, at));
    const raw = at < 0 ? "" : pair.slice(at + 1);
    if (seen.has(key)) {
      complain(key, say.twice(shorten(key)));
      continue;
    }
    seen.add(key);
    const pick = <T extends string>(words: readonly T[]): T | undefined => {
      const value = fromAddress(raw);
      const found = words.find((w) => w === value);
      if (found === undefined) complain(value, say.unknownWord(key, shorten(value), words));
      return found;
    };
    const column = table.columns.find((c) => c.id === key);
    if (column !== undefined) {
      query.values[column.id] = texts(raw, column.match !== "exact");
      continue;
    }
    switch (key) {
      case "between":
        set(query, "between", pick(betweens));
        break;
      case "edges":
        set(query, "edges", pick(allEdges));
        break;
      case holeKey:
        query.hole = texts(raw, true);
        break;
      case "unit":
        set(query, "unit", pick(unitWords));
        break;
      case "tool":
        set(query, "tool", pick(tools));
        break;
      case "condition":
        set(query, "condition", pick(conditions));
        break;
      case "chart":
        out.chart = fromAddress(raw).slice(0, 40);
        break;
      default:
        complain(key, badAddress(shorten(key)));
    }
  }
  return out;
}

function set<K extends keyof PartQuery>(query: PartQuery, key: K, value: PartQuery[K] | undefined): void {
  if (value !== undefined) query[key] = value;
}

// One more than may be read, so that too many are still noticed.
function texts(raw: string, readings: boolean): string[] {
  return raw
    .split(",")
    .filter((t) => t !== "")
    .slice(0, mostPartReadings + 1)
    .map((t) => {
      const text = fromAddress(t);
      const r = readings ? parseReading(text) : undefined;
      return r?.ok ? r.text : text;
    });
}

function fromAddress(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // a broken escape: taken as it stands
  }
}
