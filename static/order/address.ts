// A slip as the fragment of the address of /order/:
//
//   check=5k.1x9k3a&from=the-shed&job=trolley&chart=2026-11-25-3f9a1c2
//     &joint=2&place=gearbox-end&grease=sealed&with=clips.4,straps&hold=outside-clip&cap=1.187in,1.188in&across=3.626in
//     &joint=1&row=7260-to-1310
//
// What stands before the first "joint" is about the slip; each "joint" says how many and begins the keys of one, the
// last of which are an identification as the core writes it. It is sealed as the other links are. The identify page
// hands over its own fragment, which has no "joint" and no seal. Decoding takes any text.
import { fromText, toText } from "../matcher/free-text";
import { longestLink } from "../matcher/request";
import {
  emptyJoint,
  extras,
  type Extra,
  greases,
  longestName,
  longestPlace,
  mostJoints,
  mostWanted,
  type Slip,
  type SlipJoint,
  texts,
  type Wanted,
} from "./slip";
import { addressWords as say } from "words:order";

export { longestLink };

export type OpenedSlip =
  | { ok: true; slip: Slip; remarks: string[] }
  | { ok: false; why: "empty" | "broken" | "unreadable"; says: string };

/** encodeSlip writes the fragment, without "#". Texts are cut to their longest, joints to mostJoints. */
export function encodeSlip(slip: Slip): string {
  const parts: string[] = [];
  const put = (key: string, value: string | undefined): void => {
    if (value !== undefined && value !== "") parts.push(`${key}=${value}`);
  };
  for (const [name, key, longest] of texts) put(key, toText(slip[name], longest));
  put("chart", toChart(slip.chart));
  for (const joint of slip.joints.slice(0, mostJoints)) {
    put("joint", String(joint.count));
    put("place", toText(joint.place, longestPlace));
    put("row", joint.row === undefined ? undefined : toText(joint.row, longestName));
    put("grease", joint.grease);
    put("with", joint.extras.map((w) => (w.count === undefined ? w.item : `${w.item}.${w.count}`)).join(","));
    // A seal bears no blank: one in a reading that could not be read travels as a blank that does not break.
    if (joint.query !== undefined) parts.push(CapspanCore.encodeAddress(joint.query).replace(/%20/g, "%C2%A0"));
  }
  return CapspanCore.seal(parts.filter((p) => p !== "").join("&"));
}

/** decodeSlip reads a fragment, with or without "#". It never throws; what cannot be used is a remark. */
export function decodeSlip(fragment: string): OpenedSlip {
  if (fragment.length > 4 * longestLink) return refuse("unreadable", say.tooLong);
  const { kind, body } = CapspanCore.unseal(fragment);
  if (kind === "broken") return refuse("broken", say.broken);
  if (!body.includes("=")) return refuse("empty", say.empty);
  const [head = "", ...joints] = split(body);
  if (joints.length === 0) return handedOver(head);
  const remarks: string[] = [];
  const slip: Slip = { joints: [] };
  const given = pairs(head, remarks);
  for (const [name, key, longest] of texts) {
    const text = fromText(given.get(key), longest);
    if (text !== "") slip[name] = text;
    given.delete(key);
  }
  const chart = toChart(given.get("chart"));
  if (chart !== "") slip.chart = chart;
  given.delete("chart");
  for (const key of given.keys()) remarks.push(say.unknownKey(shown(key)));
  if (joints.length > mostJoints) remarks.push(say.tooMany(joints.length, mostJoints));
  slip.joints = joints.slice(0, mostJoints).map((part, n) => readJoint(part, n, remarks));
  return { ok: true, slip, remarks: remarks.slice(0, mostRemarks) };
}

/** More would say nothing new. */
const mostRemarks = 6;

// The parts before and from each "joint".
function split(body: string): string[] {
  const out: string[][] = [[]];
  for (const pair of body.split("&")) {
    if (pair.startsWith("joint=")) out.push([]);
    out[out.length - 1]?.push(pair);
  }
  return out.map((list) => list.join("&"));
}

// One joint without a slip round it: an identification, or a row's page's "row=1310".
function handedOver(body: string): OpenedSlip {
  const remarks: string[] = [];
  const joint = readJoint(body, 0, remarks);
  if (joint.query === undefined && joint.row === undefined) return refuse("unreadable", say.notOurs);
  const slip: Slip = { joints: [joint] };
  const chart = CapspanCore.decodeAddress(body).chart;
  if (chart !== undefined) slip.chart = toChart(chart);
  return { ok: true, slip, remarks: remarks.slice(0, mostRemarks) };
}

const own = ["joint", "place", "row", "grease", "with"];

function readJoint(part: string, n: number, remarks: string[]): SlipJoint {
  const mine: string[] = [];
  const query: string[] = [];
  for (const pair of part.split("&")) (own.includes(pair.split("=", 1)[0] ?? "") ? mine : query).push(pair);
  const given = pairs(mine.join("&"), remarks);
  const joint = emptyJoint();
  const count = given.get("joint");
  if (count !== undefined) {
    const wanted = whole(count);
    if (wanted === undefined) remarks.push(say.badCount(n, shown(count)));
    else joint.count = wanted;
  }
  const place = fromText(given.get("place"), longestPlace);
  if (place !== "") joint.place = place;
  const row = fromText(given.get("row"), longestName).replace(/ /g, "-"); // an id has no spaces, and may have a "-"
  if (row !== "") joint.row = row;
  const grease = greases.find((g) => g === given.get("grease"));
  if (grease !== undefined) joint.grease = grease;
  joint.extras = readExtras(given.get("with") ?? "");
  if (query.some((pair) => pair !== "")) {
    const { query: asked, complaints } = CapspanCore.decodeAddress(query.join("&"));
    for (const c of complaints) remarks.push(say.ofJoint(n, c.says));
    if (asked.ends.some((end) => end.hold !== "unknown" || (end.cap ?? []).length + (end.across ?? []).length > 0)) {
      joint.query = asked;
    }
  }
  return joint;
}

function readExtras(text: string): Wanted[] {
  const out: Wanted[] = [];
  for (const one of text.split(",")) {
    const [name, count] = one.split(".");
    const item: Extra | undefined = extras.find((e) => e === name);
    if (item === undefined || out.some((w) => w.item === item)) continue;
    const wanted = count === undefined ? undefined : whole(count);
    out.push(wanted === undefined ? { item } : { item, count: wanted });
  }
  return out;
}

function whole(text: string): number | undefined {
  if (!/^[1-9]\d?$/.test(text)) return undefined;
  return Math.min(Number(text), mostWanted);
}

function pairs(part: string, remarks: string[]): Map<string, string> {
  const out = new Map<string, string>();
  for (const pair of part.split("&")) {
    if (pair === "") continue;
    const at = pair.indexOf("=");
    const key = at < 0 ? pair : pair.slice(0, at);
    if (out.has(key)) remarks.push(say.twice(shown(key)));
    else out.set(key, at < 0 ? "" : pair.slice(at + 1));
  }
  return out;
}

// A version's name has no spaces: its "-" stay.
function toChart(text: string | undefined): string {
  return /^[0-9a-z-]{1,40}$/.test(text ?? "") ? (text ?? "") : "";
}

function shown(text: string): string {
  return text.slice(0, 40);
}

function refuse(why: "empty" | "broken" | "unreadable", says: string): OpenedSlip {
  return { ok: false, why, says };
}
