// What is said of the documents that calculations cite, for the page that lists them. It stands in English in sources.ts;
// another language says it here, by the English text. What constants, formulas and limits say for themselves is said so too,
// in the `grounds` of a calculation's words, so that no figure stands twice.

/** A text about a document in this language. */
export function grounded(text: string): string {
  return text;
}
