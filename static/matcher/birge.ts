// Several measurements of one thing put together: the mean weighted by inverse variance,
// and whether they agree among themselves (R. T. Birge, Phys. Rev. 40, 207 (1932); the
// chi-square test as M. G. Cox gives it, Metrologia 39, 589 (2002), procedure A; both
// recalled from memory). Nothing here knows about joints.
import { birgeLevel } from "./given-measuring";
import { logGamma } from "./gum";

export interface Measurement {
  value: number;
  standard: number; // standard uncertainty, more than 0
  dof: number; // Infinity where nothing was counted
}

export interface Together {
  value: number;
  standard: number; // by the weights; enlarged by the ratio when they disagree
  dof: number; // effective, by Welch and Satterthwaite
  chiSquare: number;
  ratio: number; // of Birge: the scatter found over the scatter expected; 0 for one measurement
  limit: number; // the ratio that chance exceeds once in twenty times; 0 for one measurement
  chance: number; // probability of that much scatter or more by chance
  consistent: boolean;
}

/** together combines independent measurements; there must be one at least. */
export function together(list: readonly Measurement[]): Together {
  const weights = list.map((m) => 1 / (m.standard * m.standard));
  const sum = weights.reduce((a, b) => a + b, 0);
  const value = list.reduce((a, m, i) => a + m.value * (weights[i] ?? 0), 0) / sum;
  const chiSquare = list.reduce((a, m) => a + ((m.value - value) / m.standard) ** 2, 0);
  const free = list.length - 1;
  const ratio = free === 0 ? 0 : Math.sqrt(chiSquare / free);
  const chance = free === 0 ? 1 : chiSquareAbove(chiSquare, free);
  const consistent = chance >= birgeLevel;
  return {
    value,
    standard: (consistent ? 1 : ratio) / Math.sqrt(sum),
    dof: effective(list, weights, sum),
    chiSquare,
    ratio,
    limit: free === 0 ? 0 : Math.sqrt(chiSquareQuantile(1 - birgeLevel, free) / free),
    chance,
    consistent,
  };
}

// Each measurement adds the part (w/sum)² u² = w/sum² to the variance of the mean: JCGM 100 G.4.1.
function effective(list: readonly Measurement[], weights: readonly number[], sum: number): number {
  const bottom = list.reduce((a, m, i) => a + (m.dof === Infinity ? 0 : ((weights[i] ?? 0) / sum) ** 2 / m.dof), 0);
  return bottom === 0 ? Infinity : 1 / bottom;
}

/** Probability that chi-square of that many degrees of freedom is above x. */
export function chiSquareAbove(x: number, dof: number): number {
  return x <= 0 ? 1 : upperGamma(dof / 2, x / 2);
}

/** The chi-square below which the probability is p, 0 < p < 1. */
export function chiSquareQuantile(p: number, dof: number): number {
  let low = 0;
  let high = dof + 10;
  while (chiSquareAbove(high, dof) > 1 - p) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-13 * high; i++) {
    const middle = (low + high) / 2;
    if (chiSquareAbove(middle, dof) > 1 - p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

// Regularised upper incomplete gamma Q(a, x): by the series of P below a + 1 (DLMF 8.11.4),
// by its continued fraction above (DLMF 8.9.2, Lentz's way).
function upperGamma(a: number, x: number): number {
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 10_000 && term > 1e-17 * sum; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return 1 - front * sum;
  }
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < 10_000; n++) {
    const an = n * (a - n);
    b += 2;
    d = 1 / away(an * d + b, tiny);
    c = away(b + an / c, tiny);
    h *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return front * h;
}

function away(x: number, tiny: number): number {
  return Math.abs(x) < tiny ? tiny : x;
}
