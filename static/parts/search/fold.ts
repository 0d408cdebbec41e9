// Letters folded as package search folds them when it builds the index: see build/search/fold.go, whose rules these
// are. build/search/testdata/fold.json holds both to them.

const alike: Record<string, string> = { ß: "ss", æ: "ae", œ: "oe", ø: "o", đ: "d", ł: "l", ı: "i", ς: "σ", "×": "x" };

/** The words of a text in lower case, with one space between them. */
export function fold(text: string): string {
  return text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[\u0300-\u036f'‘’ʼ]/g, "")
    .replace(/[ßæœøđłıς×]/g, (c) => alike[c] ?? c)
    .replace(/[^a-z0-9.,\u00c0-\u1fff\u2c00-\u2fff\u3040-\ufffc\ufffe\uffff]|÷/g, " ")
    .replace(/([0-9])[.,](?=[0-9])/g, "$1|") // a decimal point stays
    .replace(/[., ]+/g, " ")
    .replace(/\|/g, ".")
    .replace(/^ | $/g, ""); // trim would take more than spaces
}

/** Without its spaces: a name is found however it is spaced. */
export function squeeze(folded: string): string {
  return folded.replace(/ /g, "");
}
