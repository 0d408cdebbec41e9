// Numbers as the tables write them, compared exactly: 0.938, 28.50, and of inches 1 3/16. The loader's twin is
// tables/quantity.go; what both take is held alike by a test of package build.

/** Any number of any unit as a whole number: no rounding between it and what was written. */
export type Exact = bigint;

const mostDigits = 12;
const finest = 128;

// 128ths of an inch, twelve decimals, and a pound-force foot of 1.3558179483314004 N.m are all whole numbers of this.
const one = 10n ** 32n * 128n;

const factors: Record<string, [top: bigint, bottom: bigint]> = {
  in: [254n, 10n],
  mm: [1n, 1n],
  "lbf.ft": [13558179483314004n, 10n ** 16n],
  "N.m": [1n, 1n],
  "": [1n, 1n],
};

/** The exact size of what is written; null when it is no number of that unit. */
export function exact(text: string, unit: string): Exact | null {
  const factor = factors[unit];
  const value = decimal(text) ?? (unit === "in" ? fraction(text) : null);
  return value === null || factor === undefined ? null : (value * factor[0]) / factor[1];
}

function decimal(text: string): bigint | null {
  const parts = /^(0|[1-9][0-9]*)(?:\.([0-9]+))?$/.exec(text);
  if (parts === null || text.length > mostDigits) return null;
  const digits = parts[2] ?? "";
  return (BigInt(`${parts[1] ?? "0"}${digits}`) * one) / 10n ** BigInt(digits.length);
}

function fraction(text: string): bigint | null {
  const parts = /^(?:([1-9][0-9]{0,5}) )?([1-9][0-9]{0,2})\/([1-9][0-9]{0,2})$/.exec(text);
  if (parts === null) return null;
  const [whole, top, bottom] = [Number(parts[1] ?? "0"), Number(parts[2]), Number(parts[3])];
  if (top >= bottom || bottom > finest || (bottom & (bottom - 1)) !== 0) return null;
  return (BigInt(whole * bottom + top) * one) / BigInt(bottom);
}

/** Whether it is a whole number. */
export function whole(value: Exact): boolean {
  return value % one === 0n;
}

/** 0.3 mm. */
export const slack: Exact = (one * 3n) / 10n;

/** Both ends of what a cell says: the same twice for one number. */
export interface Figure {
  from: Exact;
  to: Exact;
}

/** A number, or a rising range where the column allows one; null for anything else. */
export function figure(text: string, unit: string, range: boolean): Figure | null {
  const ends = /^([0-9.]+)-([0-9.]+)$/.exec(text);
  if (ends === null) {
    const value = exact(text, unit);
    return value === null ? null : { from: value, to: value };
  }
  const from = exact(ends[1] ?? "", unit);
  const to = exact(ends[2] ?? "", unit);
  return range && from !== null && to !== null && from < to ? { from, to } : null;
}

/** A printed figure as the core compares with it: its ends and half its last digit, in mm; null when it is none. */
export function printedOf(
  text: string,
  unit: string,
  range: boolean,
): { text: string; least: number; greatest: number; half: number } | null {
  const ends = figure(text, unit, range);
  if (ends === null) return null;
  const mm = (value: Exact): number => Number(value) / Number(one);
  const last = text.includes("/")
    ? 1 / Number(/\/(\d+)/.exec(text)?.[1])
    : 10 ** -(/\.(\d+)/.exec(text)?.[1] ?? "").length;
  return {
    text: `${text} ${unit}`,
    least: mm(ends.from),
    greatest: mm(ends.to),
    half: (last / 2) * (unit === "in" ? 25.4 : 1),
  };
}
