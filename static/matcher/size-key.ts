// Where a joint of a large chart has its page: with all that are written with the same figures. The build makes the same
// address of the same row (sizeKey in build/scale.go), and a test holds both to it.
import type { KnownRow, KnownValue } from "./prepared";

/** "size/outside-clip-27.0x81.8/#kit-17", below the site's root. */
export function addressOf({ row, ends }: KnownRow): string {
  const key = ends.map(({ hold, cap, across }) => `${hold}-${tenths(cap)}x${tenths(across)}`).join("--");
  return `size/${key}/#${row.name}`;
}

// In tenths of a millimetre; "u" is unknown, or none.
function tenths(value: KnownValue | null): string {
  return value === null ? "u" : (Math.floor(value.mm * 10 + 0.5) / 10).toFixed(1);
}
