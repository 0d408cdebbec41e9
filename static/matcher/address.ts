// A query as the fragment of an address, which is never sent to a server:
//
//   hold=outside-clip&faces=over-caps&cap=1.060in,1.061in&across=3.226in&tool=digital-caliper&condition=used&chart=...
//
// The second end's keys end in 2. Readings are written in their canonical form; one
// that cannot be read is kept as it was typed, escaped. Decoding takes any text.
import type { Complaint, Condition, Faces, Hold, Query, QueryEnd, Tool, Unit } from "./types";
import { parseReading } from "./reading";
import { unseal } from "./seal";
import { mostReadings } from "./query";
import * as say from "./speech-address";
import { allFaces, conditions, holds, tools, unitWords } from "./words";
import { short, toAddress } from "./written";

/** Longest fragment looked at: two ends of many readings stay well below. */
export const longestAddress = 8000;

export interface Decoded {
  query: Query;
  chart?: string; // the version the address was made with
  complaints: Complaint[];
}

/** encodeAddress writes the fragment, without "#"; `chart` is the version's name. */
export function encodeAddress(query: Query, chart?: string): string {
  const parts: string[] = [];
  const put = (key: string, value: string | undefined): void => {
    if (value !== undefined && value !== "") parts.push(`${key}=${toAddress(value)}`);
  };
  query.ends.slice(0, 2).forEach((end, i) => {
    const n = i === 0 ? "" : "2";
    put(`hold${n}`, end.hold);
    put(`faces${n}`, end.faces);
    put(`taken${n}`, end.taken);
    for (const key of ["cap", "across", "clip"] as const) {
      const list = (end[key] ?? []).map((text) => toAddress(short(text, query.unit)));
      if (list.length > 0) parts.push(`${key}${n}=${list.join(",")}`);
    }
  });
  put("unit", query.unit);
  put("tool", query.tool);
  put("condition", query.condition);
  put("chart", chart);
  return parts.join("&");
}

/** decodeAddress reads a fragment, with or without "#". It never throws: what cannot be read is a complaint. */
export function decodeAddress(fragment: string): Decoded {
  const complaints: Complaint[] = [];
  const complain = (end: number, text: string, says: string): void => {
    complaints.push({ end, quantity: "query", index: 0, text: text.slice(0, 40), says });
  };
  const out: Decoded = { query: { ends: [] }, complaints };
  if (fragment.length > longestAddress) {
    complain(0, "", say.tooLong());
    out.query.ends.push({ hold: "unknown" });
    return out;
  }
  const ends: Partial<QueryEnd>[] = [{}, {}];
  const seen = new Set<string>();
  // Readings a customer sent back are sealed: a lost end must not look like fewer readings.
  const { kind, body } = unseal(fragment);
  if (kind === "broken") complain(0, "check", say.broken());
  for (const pair of body.split("&")) {
    if (pair === "") continue;
    const at = pair.indexOf("=");
    const key = at < 0 ? pair : pair.slice(0, at);
    const raw = at < 0 ? "" : pair.slice(at + 1);
    if (seen.has(key)) {
      complain(0, key, say.twice(key));
      continue;
    }
    seen.add(key);
    const n = key.endsWith("2") ? 1 : 0;
    const end = ends[n] ?? {};
    const pick = <T extends string>(words: readonly T[]): T | undefined => {
      const value = fromAddress(raw);
      const found = words.find((w) => w === value);
      if (found === undefined) complain(n, value, say.unknownWord(key, value.slice(0, 40), words));
      return found;
    };
    switch (n === 1 ? key.slice(0, -1) : key) {
      case "hold":
        set(end, "hold", pick<Hold>(holds));
        break;
      case "faces":
        set(end, "faces", pick<Faces>(allFaces));
        break;
      case "taken":
        set(end, "taken", pick<"joint" | "yoke">(["joint", "yoke"]));
        break;
      case "cap":
        end.cap = readings(raw);
        break;
      case "across":
        end.across = readings(raw);
        break;
      case "clip":
        end.clip = readings(raw);
        break;
      default:
        common(
          key,
          pick,
          () => fromAddress(raw),
          out,
          () => complain(0, key, say.unknownKey(key.slice(0, 40))),
        );
    }
  }
  const second = Object.keys(ends[1] ?? {}).length > 0;
  out.query.ends = (second ? ends : ends.slice(0, 1)).map((e) => ({ ...e, hold: e.hold ?? "unknown" }));
  return out;
}

function common(
  key: string,
  pick: <T extends string>(words: readonly T[]) => T | undefined,
  text: () => string,
  out: Decoded,
  unknown: () => void,
): void {
  switch (key) {
    case "unit":
      set(out.query, "unit", pick<Unit>(unitWords));
      break;
    case "tool":
      set(out.query, "tool", pick<Tool>(tools));
      break;
    case "condition":
      set(out.query, "condition", pick<Condition>(conditions));
      break;
    case "chart":
      out.chart = text().slice(0, 40);
      break;
    default:
      unknown();
  }
}

function set<T, K extends keyof T>(to: T, key: K, value: T[K] | undefined): void {
  if (value !== undefined) to[key] = value;
}

// One more than may be read, so that too many are still noticed.
function readings(raw: string): string[] {
  return raw
    .split(",")
    .filter((t) => t !== "")
    .slice(0, mostReadings + 1)
    .map((t) => {
      const text = fromAddress(t);
      const r = parseReading(text);
      return r.ok ? r.text : text;
    });
}

function fromAddress(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // a broken escape: taken as it stands
  }
}
