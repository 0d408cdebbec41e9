// Sentences of a slip that depend on how the size came about.
import { factWords } from "words:order";
import type { Settled } from "./facts";

export function verdictOf(
  settled: Settled,
  head: string | undefined,
  row: string | undefined,
  inChart: boolean,
): string {
  if (head !== undefined) return head;
  if (settled === "chosen" && row !== undefined) return factWords.chosen(row);
  return row === undefined || inChart ? factWords.open : factWords.noRow(row);
}
