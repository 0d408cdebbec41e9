// A request to measure, as the fragment of the card's address:
//
//   check=2d.1x9k3a&take=cap,across&hold=outside-clip&unit=in&from=the-workshop&say=which-cap%3F
//
// Only letters, digits and - . , = & % are in it, so that a messenger finds no place to break it or to end it early; a
// space is written "-". The second end's keys end in 2. Decoding takes any text.
import type { Faces, Hold, Quantity, Unit } from "./types";
import { fromText, toText } from "./free-text";
import { seal, unseal } from "./seal";
import * as say from "./speech-request";
import { facesFor, holds, quantities, unitWords } from "./words";

/** Longest link that is sent, whole: some messengers and mail programs cut what is longer. */
export const longestLink = 2000;

/** Longest texts of a request, in UTF-16 units as a field counts them. */
export const longestName = 60;
export const longestQuestion = 400;

export interface RequestEnd {
  hold?: Hold; // left out: the customer is asked
  faces?: Faces; // left out: the usual ones of the hold
  take: Quantity[]; // one or two, in the order they are taken
}

export interface MeasureRequest {
  ends: RequestEnd[]; // one or two
  unit?: Unit; // left out: the customer chooses
  from?: string; // who asks
  question?: string; // in the shop's words
}

export type OpenedRequest =
  | { ok: true; request: MeasureRequest }
  | { ok: false; why: "empty" | "broken" | "unreadable"; says: string };

/** encodeRequest writes the fragment, without "#". Texts are cut to their longest. */
export function encodeRequest(request: MeasureRequest): string {
  const parts: string[] = [];
  const put = (key: string, value: string | undefined): void => {
    if (value !== undefined && value !== "") parts.push(`${key}=${value}`);
  };
  request.ends.slice(0, 2).forEach((end, i) => {
    const n = i === 0 ? "" : "2";
    put(`take${n}`, quantities.filter((q) => end.take.includes(q)).join(","));
    put(`hold${n}`, end.hold);
    put(`faces${n}`, end.faces);
  });
  put("unit", request.unit);
  put("from", toText(request.from, longestName));
  put("say", toText(request.question, longestQuestion));
  return seal(parts.join("&"));
}

/** decodeRequest reads a fragment, with or without "#". It never throws. */
export function decodeRequest(fragment: string): OpenedRequest {
  if (fragment.length > 4 * longestLink) return refuse("unreadable", say.tooLong());
  const { kind, body } = unseal(fragment);
  if (body.trim() === "" && kind === "none") return refuse("empty", say.empty());
  if (kind === "broken") return refuse("broken", say.broken());
  if (kind === "none") return refuse("unreadable", say.notOurs());
  const given = new Map<string, string>();
  for (const pair of body.split("&")) {
    const at = pair.indexOf("=");
    if (at > 0) given.set(pair.slice(0, at), pair.slice(at + 1));
  }
  const ends: RequestEnd[] = [];
  for (const n of ["", "2"]) {
    const take = quantities.filter((q) => (given.get(`take${n}`) ?? "").split(",").includes(q));
    if (take.length === 0) continue;
    const end: RequestEnd = { take };
    const hold = holds.find((h) => h === given.get(`hold${n}`));
    if (hold !== undefined) end.hold = hold;
    const faces = hold && facesFor(hold).find((f) => f === given.get(`faces${n}`));
    if (faces !== undefined) end.faces = faces;
    ends.push(end);
  }
  if (ends.length === 0) return refuse("unreadable", say.nothingAsked());
  const request: MeasureRequest = { ends };
  const unit = unitWords.find((u) => u === given.get("unit"));
  if (unit !== undefined) request.unit = unit;
  const from = fromText(given.get("from"), longestName);
  if (from !== "") request.from = from;
  const question = fromText(given.get("say"), longestQuestion);
  if (question !== "") request.question = question;
  return { ok: true, request };
}

function refuse(why: "empty" | "broken" | "unreadable", says: string): OpenedRequest {
  return { ok: false, why, says };
}
