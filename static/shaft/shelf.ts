// Records kept on the device, one entry each, in what the browser calls local storage. It may be full, forbidden or
// damaged, and another window may write to it: every answer says what became of the record, and nothing here throws,
// writes over what it did not read, or deletes what it cannot read.
import { readRecord, type Complaint } from "./read";
import { recordDocument, type ShaftRecord } from "./record";

/** What is needed of the browser's Storage. */
export interface Store {
  readonly length: number;
  key(n: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

const prefix = "capspan-shaft-";

export interface Entry {
  id: string;
  title: string;
}

/** An entry that cannot be read; its text can still be saved as it is. */
export interface Damaged {
  id: string;
  text: string;
  says: string;
}

export interface Listed {
  able: boolean; // false: the browser keeps nothing here
  entries: Entry[]; // by title
  damaged: Damaged[];
}

export type Taken =
  | { is: "here"; record: ShaftRecord; text: string; complaints: Complaint[] }
  | { is: "damaged"; text: string; says: string }
  | { is: "none" };

export type Kept =
  | { is: "kept"; text: string } // the text as it now stands: the next keep names it
  | { is: "changed" } // another window wrote in between: nothing was written
  | { is: "refused" }; // no room, or forbidden: nothing was written

export interface Shelf {
  list(): Listed;
  take(id: string): Taken;
  /** `known` is the text that was taken or kept last; "" for a new record. */
  keep(id: string, record: ShaftRecord, known: string): Kept;
  /** Removes an entry and hands back its text, with which `putBack` undoes it. */
  remove(id: string): string | null;
  putBack(id: string, text: string): boolean;
  /** The id of a record that an event of the browser is about; null for other entries. */
  idOf(key: string | null): string | null;
}

/** shelfOf opens the shelf; `store` may throw, as browsers do that forbid storage. */
export function shelfOf(store: () => Store, schema: string): Shelf {
  function attempt<T>(work: (s: Store) => T, otherwise: T): T {
    try {
      return work(store());
    } catch {
      return otherwise;
    }
  }
  const idOf = (key: string | null): string | null =>
    key?.startsWith(prefix) && /^[0-9a-z]{1,40}$/.test(key.slice(prefix.length)) ? key.slice(prefix.length) : null;

  function take(id: string): Taken {
    const text = attempt((s) => s.getItem(prefix + id), null);
    if (text === null) return { is: "none" };
    const read = readRecord(text);
    return read.ok
      ? { is: "here", record: read.record, text, complaints: read.complaints }
      : { is: "damaged", text, says: read.says };
  }

  return {
    idOf,
    take,
    list() {
      const ids = attempt<string[] | null>((s) => {
        const found: string[] = [];
        for (let n = 0; n < s.length; n++) {
          const id = idOf(s.key(n));
          if (id !== null) found.push(id);
        }
        return found;
      }, null);
      const listed: Listed = { able: ids !== null, entries: [], damaged: [] };
      for (const id of (ids ?? []).sort()) {
        const taken = take(id);
        if (taken.is === "here") listed.entries.push({ id, title: taken.record.title });
        if (taken.is === "damaged") listed.damaged.push({ id, text: taken.text, says: taken.says });
      }
      listed.entries.sort((a, b) => (a.title < b.title ? -1 : a.title > b.title ? 1 : 0));
      return listed;
    },
    keep(id, record, known) {
      return attempt<Kept>(
        (s) => {
          const there = s.getItem(prefix + id) ?? "";
          // One that was deleted in another window is written again: what is in hand is not to be lost.
          if (there !== "" && there !== known) return { is: "changed" };
          const text = JSON.stringify(recordDocument(record, schema));
          s.setItem(prefix + id, text);
          return s.getItem(prefix + id) === text ? { is: "kept", text } : { is: "refused" };
        },
        { is: "refused" },
      );
    },
    remove(id) {
      return attempt((s) => {
        const text = s.getItem(prefix + id);
        s.removeItem(prefix + id);
        return s.getItem(prefix + id) === null ? text : null;
      }, null);
    },
    putBack(id, text) {
      return attempt((s) => {
        if (s.getItem(prefix + id) !== null) return false;
        s.setItem(prefix + id, text);
        return s.getItem(prefix + id) === text;
      }, false);
    },
  };
}
