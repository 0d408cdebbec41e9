// What constants, formulas, limits and documents say for themselves stands beside their figures, in given-*.ts and
// sources.ts, and is written in English there. Another language says it here, by the English text itself, so that no
// figure stands twice.

/** A text of the grounds in this language. A test holds that another language has them all. */
export function grounded(text: string): string {
  return text;
}
