// How a number is written: with a point before its decimals.

/** A number, or a text with numbers, that comes with a decimal point. Addresses and data keep the point in every language. */
export function local(text: string): string {
  return text;
}
