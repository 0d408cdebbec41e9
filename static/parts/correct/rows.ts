// What the page of corrections is told of a large chart, row by row: build/correct_rows.go writes it. Of a table there are
// its columns, and the one row that is to be corrected with the lines of the file round it.
import { drawersOf, type DrawerList, fetchDirectory, keyEnd } from "../late/drawers";
import { lineEnd } from "./patch";
import type { Row, SourceFacts, TableFacts } from "./facts";

interface FactsDirectory {
  format: number;
  sources: string;
  tables: Record<string, string>;
}

interface TableInDrawers extends Omit<TableFacts, "text" | "rows"> {
  rows: DrawerList;
}

interface RowInDrawer extends Row {
  text: string; // some lines of the file
  before: number; // how many lines come before them
}

export interface FactsByRow {
  sources(): Promise<SourceFacts>;
  /** The table with that row, or with none where it has no such row or no table has that name. */
  table(id: string, row: string): Promise<TableFacts>;
}

const opened = new Map<string, FactsByRow>(); // by address

/** open is what the directory at an address leads to. It is read when it is first needed, and anew when something it names does not come. */
export function open(address: string): FactsByRow {
  const facts = opened.get(address) ?? reader(address);
  opened.set(address, facts);
  return facts;
}

function reader(address: string): FactsByRow {
  const whole = new Map<string, Promise<unknown>>(); // files of their own, by address
  let directory: Promise<FactsDirectory> | null = null;

  function read<T>(at: string): Promise<T> {
    const before = whole.get(at);
    if (before !== undefined) return before as Promise<T>;
    const coming = fetch(at).then((got) => {
      if (!got.ok) throw new Error(`${at}: ${got.status}`);
      return got.json() as Promise<T>;
    });
    whole.set(at, coming);
    coming.catch(() => whole.delete(at));
    return coming;
  }

  async function tried<T>(ask: (of: FactsDirectory) => Promise<T>): Promise<T> {
    directory ??= fetchDirectory<FactsDirectory>(address);
    try {
      return await ask(await directory);
    } catch {
      directory = fetchDirectory<FactsDirectory>(address);
    }
    try {
      return await ask(await directory);
    } catch (error) {
      directory = null;
      throw error;
    }
  }

  return {
    sources: () => tried((of) => read<SourceFacts>(of.sources)),
    table: (id, row) =>
      tried(async ({ tables }) => {
        const { rows, ...head } = await read<TableInDrawers>(new Map(Object.entries(tables)).get(id) ?? "");
        const found = (await drawersOf<RowInDrawer>(rows).open(row + keyEnd)).find((r) => r.id === row);
        if (found === undefined) return { ...head, text: "", rows: [] };
        const { text, before, ...own } = found;
        return { ...head, text: lineEnd(text).repeat(before) + text, rows: [own] }; // the lines before are not here, but counted
      }),
  };
}
