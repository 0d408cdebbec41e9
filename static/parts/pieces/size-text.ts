// How much something weighs, as a reader is told: "62 kB", "4.1 MB".
import { local } from "../../matcher/speech-number";

/** sizeText rounds up; what costs nothing is 0 kB. */
export function sizeText(bytes: number): string {
  if (bytes < 999_500) return `${Math.ceil(bytes / 1000)} kB`;
  return local(`${(Math.ceil(bytes / 100_000) / 10).toFixed(1)} MB`);
}
