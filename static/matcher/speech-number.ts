// How a number is written: with a point before its decimals. Numbers in sentences, tables, pictures and fields go through
// here; addresses, files and data keep the point in every language.

/** A number, or a text with numbers, that comes with a decimal point. */
export function local(text: string): string {
  return text;
}

/** The text of a field that shows a number which comes with a decimal point: read back it means that number alone. */
export function toField(text: string): string {
  return text;
}

/** What was typed into a field, for those who read it as a number: a point that might stand between thousands in this
 *  language becomes a comma, which every reader doubts. */
export function fromField(text: string): string {
  return text;
}
