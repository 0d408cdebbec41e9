// Words of a reader's own in an address that travels by messenger: one line, no sign that a messenger breaks at.

/** Writes a text for an address. Spaces become "-"; the signs that encodeURIComponent leaves alone are escaped too, for
 *  messengers read them as marks. */
export function toText(text: string | undefined, most: number): string {
  let out = "";
  for (const c of tidy(text ?? "", most)) {
    if (c === " ") out += "-";
    else if (/^[-._~!*'()]$/.test(c)) out += `%${c.charCodeAt(0).toString(16).toUpperCase()}`;
    else out += encodeURIComponent(c);
  }
  return out;
}

/** Reads one back; "" for an escape that nobody wrote for us. */
export function fromText(value: string | undefined, most: number): string {
  try {
    return tidy(decodeURIComponent((value ?? "").replace(/-/g, " ")), most);
  } catch {
    return ""; // the seal is right and the escape is not: somebody made it by hand
  }
}

/** One line without controls, marks of direction or halves of characters, no longer than it may be. */
export function tidy(text: string, most: number): string {
  let out = "";
  for (const c of text) {
    if (/^[\ud800-\udfff]$/.test(c)) continue;
    const next = shows(c.charCodeAt(0)) ? c : " ";
    if (next === " " && (out === "" || out.endsWith(" "))) continue;
    if (out.length + next.length > most) break;
    out += next;
  }
  return out.trim();
}

// General punctuation holds joiners, separators and marks of direction; what is seen of it starts at U+2010.
function shows(code: number): boolean {
  if (code <= 0x20 || (code >= 0x7f && code <= 0xa0)) return false;
  return !((code >= 0x2000 && code < 0x2010) || (code >= 0x2028 && code < 0x2030) || (code >= 0x205f && code < 0x2070));
}
