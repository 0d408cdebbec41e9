// What keyboards and messengers make of a typed figure.

/** plainMarks makes the many spaces, dashes, slashes, inch and foot marks one each. */
export function plainMarks(text: string): string {
  return text
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u2060\ufeff]+/g, " ")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2010-\u2014\u2212]/g, "-")
    .replace(/[\u2033\u201c\u201d]/g, '"')
    .replace(/[\u2032\u2018\u2019]/g, "'")
    .trim();
}
