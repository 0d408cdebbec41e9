// How numbers, formulas and what they rest on are put into print. Small, for every calculation's script carries it.
import { local } from "../matcher/speech-number";
import type { Ground } from "./types";

/** A number with a true minus, no minus before nothing, and the decimal sign of the language. */
export function number(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return local(Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−"));
}

/** What a formula, limit or constant rests on, and nothing else of it. */
export function groundOf({ basis, source, at }: Ground): Ground {
  return at === undefined ? { basis, source } : { basis, source, at };
}

/** A formula with the signs of print in the place of those of a keyboard. */
export function pretty(text: string): string {
  return text
    .replace(/\bsqrt *\(/g, "√(")
    .replace(/\bsqrt /g, "√")
    .replace(/\+-/g, "±")
    .replace(/-\+/g, "∓")
    .replace(/\^2\b/g, "²")
    .replace(/\^4\b/g, "⁴")
    .replace(/\bpi\b/g, "π")
    .replace(/\btau\b/g, "τ")
    .replace(/\bsigma\b/g, "σ")
    .replace(/\brho\b/g, "ρ")
    .replace(/\bmu\b/g, "µ")
    .replace(/([\w)²⁴]) x (?=[\w(])/g, "$1 × ")
    .replace(/ - /g, " − ")
    .replace(/\(-/g, "(−")
    .replace(/= -/g, "= −")
    .replace(/\.\.\./g, "…");
}
