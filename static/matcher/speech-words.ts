// Numbers and trade words as they are said. Everything else that speaks is built on these.
import type { Basis, Faces, Hold, Quantity, Tool, Unit } from "./types";
import { inch } from "./reading";

export const holdWords: Record<Hold, string> = {
  "outside-clip": "outside clips",
  "inside-clip": "inside clips",
  plate: "bearing plates",
  strap: "straps or U-bolts",
  wing: "bolt-on wings",
  injected: "injected plastic",
  staked: "staking",
  unknown: "a hold nobody has noted",
};

export const facesWords: Record<Faces, string> = {
  "over-caps": "over the caps",
  "groove-inner": "between the inner groove faces",
  "groove-outer": "between the outer groove faces",
  "under-plates": "under the plates",
  "hole-centres": "between hole centres",
  "wing-outer": "over the wings",
  unknown: "between faces not noted",
};

export const basisWords: Record<Basis, string> = {
  published: "published",
  measured: "measured",
  "common-practice": "common practice, with no source named",
  memory: "recalled, not published",
};

export const toolWords: Record<Tool, string> = {
  "digital-caliper": "a digital caliper",
  "dial-caliper": "a dial caliper",
  "vernier-caliper": "a vernier caliper",
  "vernier-caliper-coarse": "a vernier caliper of 0.05 mm",
  micrometer: "a micrometer",
  "steel-rule": "a steel rule",
  tape: "a tape",
};

/** A length in both units, the leading one in front: "26.93 mm (1.060 in)"; below a thousandth of an inch one digit more. */
export function both(mm: number, lead: Unit): string {
  const inches = `${(mm / inch).toFixed(Math.abs(mm) < inch / 1000 ? 4 : 3)} in`;
  const millimetres = `${mm.toFixed(2)} mm`;
  return lead === "in" ? `${inches} (${millimetres})` : `${millimetres} (${inches})`;
}

/** How one length lies to another: "0.05 mm (0.002 in) smaller". */
export function offBy(mm: number, quantity: Quantity, lead: Unit): string {
  const way = quantity === "cap" ? (mm > 0 ? "larger" : "smaller") : mm > 0 ? "wider" : "narrower";
  return `${both(Math.abs(mm), lead)} ${way}`;
}

/** Small enough to be nothing when written with two decimals of a millimetre. */
export function isNothing(mm: number): boolean {
  return Math.abs(mm) < 0.005;
}

export function list(words: readonly string[], last = "and"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1] ?? ""}`;
}

/** Which end, where there are two: " of the first end". */
export function ofEnd(n: number | undefined): string {
  return n === undefined ? "" : n === 0 ? " of the first end" : " of the second end";
}

/** A size by all its names: "the 1350 size, also called 30.2x92". */
export function sizeCalled(names: readonly string[], conversion: boolean): string {
  const [first, ...rest] = [...new Set(names)];
  return `the ${first ?? ""} ${conversion ? "conversion joint" : "size"}${rest.length === 0 ? "" : `, also called ${list(rest)}`}`;
}

/** The first few names, and how many more: "1300, 1310, 1330 and 2 more". */
export function some(names: readonly string[], most: number, last = "and"): string {
  if (names.length <= most) return list(names, last);
  return `${names.slice(0, most).join(", ")} and ${names.length - most} more`;
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
