// Short ways to say what a constant or formula rests on.
import type { SourceKey } from "./sources";
import type { Formula, Ground, Limit, Si } from "./types";

export function published(source: SourceKey, at?: string): Ground {
  return at === undefined ? { basis: "published", source } : { basis: "published", source, at };
}

export const memory: Ground = { basis: "memory", source: "" };
export const practice: Ground = { basis: "common-practice", source: "" };
export const derived: Ground = { basis: "derived", source: "" };

/** Limits of one number of a result, by source. */
export function limits(
  of: string,
  bound: "least" | "most",
  unit: Si,
  list: readonly (readonly [key: string, value: number, ground: Ground, says: string])[],
): Limit[] {
  return list.map(([key, value, ground, says]) => ({
    id: `${of}-${bound}-${key}`,
    of,
    bound,
    unit,
    value,
    says,
    ...ground,
  }));
}

export function formula(id: string, text: string, ground: Ground, valid: string): Formula {
  return { id, text, valid, ...ground };
}
