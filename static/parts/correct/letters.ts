// Characters the loader does not take, by their ranges and not by \p{…}: the Go that runs this code in the tests knows
// no such classes. A test holds every character there is to the loader's own judgement (tables/encoding.go).

/** Controls, format characters (Unicode's Cc and Cf) and the two separators that only some programs break lines at. */
export const invisible =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u001f\u007f-\u009f\u00ad\u0600-\u0605\u061c\u06dd\u070f\u0890\u0891\u08e2\u180e\u200b-\u200f\u2028-\u202e\u2060-\u2064\u2066-\u206f\ufeff\ufff9-\ufffb\u{110bd}\u{110cd}\u{13430}-\u{1343f}\u{1bca0}-\u{1bca3}\u{1d173}-\u{1d17a}\u{e0001}\u{e0020}-\u{e007f}]/u;

/** Nothing but white space, or nothing at all. */
export const blank = /^(?:[^\S\ufeff]|\u0085)*$/; // \s has the byte order mark and lacks U+0085

/** What YAML cannot hold as it is. */
export function written(code: number): boolean {
  return invisible.test(String.fromCodePoint(code)) || code === 0xfffe || code === 0xffff || surrogate(code);
}

/** Half a character, which no file can hold. */
export function surrogate(code: number): boolean {
  return code >= 0xd800 && code <= 0xdfff;
}
