// Where a joint of a large chart has its page: with all that are written with the same figures. The build makes the same
// address of the same row (sizeKey in build/scale.go), and a test holds both to it.
import type { Box } from "./candidates";
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

/** Where an end of a row with that address lies: the first that has a figure. */
export function boxOf(address: string): Box {
  const key = address.split("/")[1] ?? "";
  const boxes = key.split("--").map((end): Box => {
    const [, cap = "u", across = "u"] = /-([\d.]+|u)x([\d.]+|u)$/.exec(end) ?? [];
    return { ...round("cap", cap), ...round("across", across) };
  });
  return boxes.find((box) => box.cap !== undefined && box.across !== undefined) ?? boxes[0] ?? {};
}

// What is rounded to a tenth of a millimetre lies within half of one.
function round(quantity: "cap" | "across", tenths: string): Box {
  const mm = Number.parseFloat(tenths);
  return Number.isNaN(mm) ? {} : { [quantity]: [mm - 0.051, mm + 0.051] };
}
