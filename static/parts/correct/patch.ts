// A correction as a unified diff, which git apply takes: each file's own line ends, three lines of context.
import type { ChartFile, NewSource, PlacedCell } from "./facts";
import { sourceLines } from "./yaml";

/** Lines of one file that give way to others. */
export interface Edit {
  file: string;
  lines: string[]; // of the file as it is, each with its own end
  at: number; // the first that goes, from 0; they are put in before it when none goes
  gone: number;
  put: string[]; // with their ends
}

const context = 3;

/** Lines with their ends; the last may have none. */
export function linesOf(text: string): string[] {
  return text === "" ? [] : (text.match(/[^\n]*\n|[^\n]+$/g) ?? []);
}

export function lineEnd(text: string): string {
  return /\r\n/.test(text) ? "\r\n" : "\n";
}

/** The line of a cell with other braces; what stands before and behind them stays. */
export function editCell(file: ChartFile, cell: PlacedCell, braces: string): Edit {
  const lines = linesOf(file.text);
  const line = lines[cell.line - 1] ?? "";
  return {
    file: file.file,
    lines,
    at: cell.line - 1,
    gone: 1,
    put: [line.slice(0, cell.from) + braces + line.slice(cell.to)],
  };
}

/** One more entry at the end of the registry, which need not be there yet. */
export function editSources(registry: ChartFile, source: NewSource): Edit {
  const { text, file } = registry;
  const end = lineEnd(text);
  const lines = linesOf(text);
  const ended = (all: string[]): string[] => all.map((line) => line + end);
  const empty = lines.findIndex((line) => /^sources:\s*\[\s*\]\s*$/.test(line));
  if (empty >= 0) return { file, lines, at: empty, gone: 1, put: ended(["sources:", ...sourceLines(source, "  ")]) };
  if (lines.length === 0)
    return { file, lines, at: 0, gone: 0, put: ended(["sources:", ...sourceLines(source, "  ")]) };
  const indent = /^( *)- /m.exec(text)?.[1] ?? "  ";
  const last = lines[lines.length - 1] ?? "";
  const put = ended(["", ...sourceLines(source, indent)]);
  if (last.endsWith("\n")) return { file, lines, at: lines.length, gone: 0, put };
  return { file, lines, at: lines.length - 1, gone: 1, put: [last + end, ...put] };
}

/** What the file is after the edit. */
export function applied(edit: Edit): string {
  return [...edit.lines.slice(0, edit.at), ...edit.put, ...edit.lines.slice(edit.at + edit.gone)].join("");
}

/** The patch of all edits, at most one a file. */
export function patchOf(edits: readonly Edit[]): string {
  return edits.map(hunk).join("");
}

function hunk(edit: Edit): string {
  const { lines, at, gone, put, file } = edit;
  const from = Math.max(0, at - context);
  const to = Math.min(lines.length, at + gone + context);
  const before = to - from;
  const after = before - gone + put.length;
  const start = (count: number): number => (count === 0 ? from : from + 1); // git counts from 1, an empty side from 0
  return [
    lines.length === 0 ? "--- /dev/null\n" : `--- a/${file}\n`,
    `+++ b/${file}\n`,
    `@@ -${start(before)},${before} +${start(after)},${after} @@\n`,
    ...lines.slice(from, at).map((line) => marked(" ", line)),
    ...lines.slice(at, at + gone).map((line) => marked("-", line)),
    ...put.map((line) => marked("+", line)),
    ...lines.slice(at + gone, to).map((line) => marked(" ", line)),
  ].join("");
}

function marked(mark: string, line: string): string {
  return line.endsWith("\n") ? mark + line : `${mark}${line}\n\\ No newline at end of file\n`;
}
