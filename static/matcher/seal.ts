// A seal in front of a fragment that travels by messenger: its length and a check sum, so that a link that lost its
// end is told from a whole one. White space and %20 that a messenger or an address field put in are taken out first;
// what is sealed holds neither.
//
//   check=1f.9k2x0q&hold=outside-clip&...

export type Seal =
  | { kind: "none"; body: string } // no seal: as it came
  | { kind: "whole"; body: string }
  | { kind: "broken"; body: string };

const mark = "check=";

/** seal puts the seal in front of a fragment, which must hold no white space. */
export function seal(body: string): string {
  return `${mark}${body.length.toString(36)}.${sum(body)}&${body}`;
}

/** unseal takes the seal off a fragment, with or without "#". It never throws. */
export function unseal(fragment: string): Seal {
  const bare = fragment.replace(/^\s*#/, "");
  const tight = bare.replace(/\s+|%20/g, "");
  if (!tight.startsWith(mark)) return { kind: "none", body: bare };
  const parts = /^check=([0-9a-z]{1,6})\.([0-9a-z]{1,7})&(.*)$/.exec(tight);
  if (parts === null) return { kind: "broken", body: tight.replace(/^check=[^&]*&?/, "") };
  const [, length = "", check, rest = ""] = parts;
  const body = rest.slice(0, Number.parseInt(length, 36)); // a full stop or bracket that stuck to the end is none of it
  return { kind: sum(body) === check ? "whole" : "broken", body: sum(body) === check ? body : rest };
}

/** FNV-1a, 32 bits, over UTF-16 units; sealed text is ASCII. Against accidents, not against people. */
function sum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}
