// Reads JSON that may be cut or damaged. What is whole is read by JSON.parse; of what is not, everything up to the first
// fault is kept and the fault's place is told, which JSON.parse does not do alike in any two browsers.

export interface Rescued {
  value: unknown; // undefined: nothing could be read
  fault?: { line: number; column: number; found: string }; // both from 1; found is "" at the end of the text
}

/** A file nested deeper than any of ours is not read further. */
const deepest = 40;

export function rescue(text: string): Rescued {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    const reader = new Reader(text);
    const value = reader.whole();
    return { value, fault: place(text, reader.at) };
  }
}

function place(text: string, at: number): { line: number; column: number; found: string } {
  const before = text.slice(0, at).split("\n");
  const found = [...text.slice(at, at + 12)][0] ?? "";
  return { line: before.length, column: (before[before.length - 1] ?? "").length + 1, found };
}

/** Stops at the first fault and hands back what it has; `at` is then where the fault is. */
class Reader {
  at = 0;
  private broken = false;
  private depth = 0;

  constructor(private readonly text: string) {}

  whole(): unknown {
    const value = this.value();
    if (!this.broken) this.blank();
    return value;
  }

  private blank(): void {
    while (/[ \t\r\n]/.test(this.text[this.at] ?? "")) this.at++;
  }

  private stop(): undefined {
    this.broken = true;
    return undefined;
  }

  private value(): unknown {
    this.blank();
    const c = this.text[this.at];
    if (c === "{" || c === "[") {
      if (this.depth >= deepest) return this.stop();
      this.depth++;
      const inside = c === "{" ? this.object() : this.array();
      this.depth--;
      return inside;
    }
    if (c === '"') return this.string();
    const plain = /^(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?=[\s,\]}])/.exec(
      this.text.slice(this.at, this.at + 40),
    );
    if (plain === null) return this.stop();
    this.at += plain[0].length;
    return JSON.parse(plain[0]) as unknown;
  }

  private object(): Record<string, unknown> {
    const entries: [string, unknown][] = [];
    const more = (): boolean => {
      this.blank();
      if (this.text[this.at] !== '"') return false;
      const key = this.string();
      this.blank();
      if (key === undefined || this.text[this.at] !== ":") return false;
      this.at++;
      const value = this.value();
      if (value !== undefined) entries.push([key, value]);
      return !this.broken;
    };
    this.list("}", more);
    return Object.fromEntries(entries);
  }

  private array(): unknown[] {
    const out: unknown[] = [];
    this.list("]", () => {
      const value = this.value();
      if (value !== undefined) out.push(value);
      return !this.broken;
    });
    return out;
  }

  // What stands between brackets, parted by commas.
  private list(end: string, one: () => boolean): void {
    this.at++;
    this.blank();
    if (this.text[this.at] === end) {
      this.at++;
      return;
    }
    for (;;) {
      if (!one()) {
        this.stop();
        return;
      }
      this.blank();
      const c = this.text[this.at];
      if (c !== "," && c !== end) {
        this.stop();
        return;
      }
      this.at++;
      if (c === end) return;
    }
  }

  // A text whose end is missing is left out: half a figure is worse than none.
  private string(): string | undefined {
    for (let end = this.at + 1; end < this.text.length; end++) {
      const c = this.text[end] ?? "";
      if (c === "\\") end++;
      else if (c === "\n") break;
      else if (c === '"') {
        try {
          const value = JSON.parse(this.text.slice(this.at, end + 1)) as string;
          this.at = end + 1;
          return value;
        } catch {
          return this.stop();
        }
      }
    }
    return this.stop();
  }
}
