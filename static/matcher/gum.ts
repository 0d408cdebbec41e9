// The arithmetic of uncertainty: JCGM 100:2008 (the GUM), and the distributions it
// leans on. Nothing here knows about joints.

/** Arithmetic mean, JCGM 100 4.2.1. */
export function mean(xs: readonly number[]): number {
  let sum = 0;
  for (const x of xs) sum += x;
  return sum / xs.length;
}

/** Experimental standard deviation, JCGM 100 4.2.2. One reading has none: 0. */
export function stdev(xs: readonly number[]): number {
  if (xs.length < 2) return 0;
  const m = mean(xs);
  let sum = 0;
  for (const x of xs) sum += (x - m) * (x - m);
  return Math.sqrt(sum / (xs.length - 1));
}

/** Middle value; of an even number, half way between the two. */
export function median(xs: readonly number[]): number {
  const s = [...xs].sort((a, b) => a - b);
  const i = s.length >> 1;
  const high = s[i] ?? NaN;
  return s.length % 2 === 1 ? high : ((s[i - 1] ?? NaN) + high) / 2;
}

/** Standard deviation pooled from earlier experience and these readings, JCGM 100 4.2.4. */
export function pooled(s0: number, dof0: number, s: number, dof: number): number {
  return Math.sqrt((dof0 * s0 * s0 + dof * s * s) / (dof0 + dof));
}

/** Standard uncertainty of a half-width nothing more is known about, JCGM 100 4.3.7. */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Standard uncertainty of a reading's last step, JCGM 100 F.2.2.1. */
export function resolution(step: number): number {
  return step / Math.sqrt(12);
}

export interface Component {
  standard: number;
  dof: number; // Infinity for a limit taken from a standard
}

/** Combined standard uncertainty of a sum, JCGM 100 5.1.2. */
export function combine(parts: readonly Component[]): number {
  let sum = 0;
  for (const p of parts) sum += p.standard * p.standard;
  return Math.sqrt(sum);
}

/** Effective degrees of freedom, JCGM 100 G.4.1. */
export function welchSatterthwaite(parts: readonly Component[]): number {
  const u = combine(parts);
  let sum = 0;
  for (const p of parts) {
    if (p.dof !== Infinity) sum += p.standard ** 4 / p.dof;
  }
  return sum === 0 ? Infinity : u ** 4 / sum;
}

// ---- distributions

/** ln Γ(x) for x > 0: Stirling's series after lifting x to 10 or more (DLMF 5.11.1). */
export function logGamma(x: number): number {
  let lift = 0;
  while (x < 10) {
    lift += Math.log(x);
    x += 1;
  }
  const r = 1 / (x * x);
  const series =
    (1 / x) * (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188 - r * (691 / 360360))))));
  return (x - 0.5) * Math.log(x) - x + 0.9189385332046727 + series - lift; // 0.918... is ln sqrt(2 pi)
}

// ln B(dof / 2, 1 / 2), dear and asked for again and again: a query has a handful of degrees of freedom.
const betas = new Map<number, number>();
const mostBetas = 256;

function logBetaHalf(dof: number): number {
  const before = betas.get(dof);
  if (before !== undefined) return before;
  const found = logGamma(dof / 2) + logGamma(0.5) - logGamma((dof + 1) / 2);
  if (betas.size >= mostBetas) betas.clear();
  betas.set(dof, found);
  return found;
}

/** Regularised incomplete beta I_x(a, b) by its continued fraction (DLMF 8.17.22), Lentz's way; logBeta is ln B(a, b). */
function incompleteBeta(x: number, a: number, b: number, logBeta: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast below the mean only; above it, use the symmetry.
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a, logBeta);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta) / a;
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let f = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guard(1 + even * d, tiny);
    c = guard(1 + even / c, tiny);
    f *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guard(1 + odd * d, tiny);
    c = guard(1 + odd / c, tiny);
    const step = d * c;
    f *= step;
    if (Math.abs(step - 1) < 1e-14) break;
  }
  return front * f;
}

function guard(x: number, tiny: number): number {
  return Math.abs(x) < tiny ? tiny : x;
}

/** ln of Student's t density with that many degrees of freedom. */
export function studentLogPdf(t: number, dof: number): number {
  if (dof === Infinity || dof > 1e7) return -0.5 * t * t - 0.9189385332046727;
  return -logBetaHalf(dof) - 0.5 * Math.log(dof) - ((dof + 1) / 2) * Math.log1p((t * t) / dof);
}

/** Probability below t. */
export function studentCdf(t: number, dof: number): number {
  if (dof === Infinity || dof > 1e7) return normalCdf(t);
  const tail = 0.5 * incompleteBeta(dof / (dof + t * t), dof / 2, 0.5, logBetaHalf(dof));
  return t > 0 ? 1 - tail : tail;
}

/** The t below which Student's distribution has probability p, by Newton inside a bracket. */
export function studentQuantile(p: number, dof: number): number {
  if (dof === Infinity || dof > 1e7) return normalQuantile(p);
  if (p === 0.5) return 0;
  if (p < 0.5) return -studentQuantile(1 - p, dof);
  let t = nearNormal(p, dof);
  if (dof >= 500) return t;
  let low = 0;
  let high = Infinity;
  for (let i = 0; i < 200; i++) {
    const miss = studentCdf(t, dof) - p;
    const next = t - miss / Math.exp(studentLogPdf(t, dof));
    if (Math.abs(next - t) <= 1e-10 * Math.abs(t)) return next; // Newton doubles the digits: all are there
    if (miss > 0) high = t;
    else low = t;
    const middle = high === Infinity ? 2 * t : (low + high) / 2;
    t = next > low && next < high ? next : middle;
  }
  return t;
}

// The normal quantile and the first terms of its expansion in 1/dof (Abramowitz and
// Stegun 26.7.5): exact to eleven digits for 500 degrees of freedom or more, a start for less.
function nearNormal(p: number, dof: number): number {
  const z = normalQuantile(p);
  const z2 = z * z;
  const g1 = (z * (z2 + 1)) / 4;
  const g2 = (z * ((5 * z2 + 16) * z2 + 3)) / 96;
  const g3 = (z * (((3 * z2 + 19) * z2 + 17) * z2 - 15)) / 384;
  const g4 = (z * ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945)) / 92160;
  return z + (g1 + (g2 + (g3 + g4 / dof) / dof) / dof) / dof;
}

/** Coverage factor of a two-sided interval, JCGM 100 G.3.4. */
export function coverage(level: number, dof: number): number {
  return studentQuantile((1 + level) / 2, dof);
}

/** Half-width of the interval that holds a share of a sum: of a value that lies anywhere within ±limit (JCGM 100 4.3.7),
 *  and of scale times a Student's t. Found where the distribution of the sum (JCGM 101 5.2) reaches that share, by
 *  Newton inside a bracket. */
export function coverageOfSum(level: number, limit: number, scale: number, dof: number): number {
  const factor = coverage(level, dof);
  if (limit < narrow * scale) return factor * scale;
  const half = limit / scale;
  let low = Math.max(level * half, factor); // what either has by itself
  let high = half + factor;
  let x = Math.min(Math.hypot(low, factor), high);
  for (let i = 0; i < 200; i++) {
    const within = (belowIntegral(x + half, dof) - belowIntegral(x - half, dof)) / (2 * half);
    const miss = within - (1 + level) / 2;
    const next = x - (miss * 2 * half) / (studentCdf(x + half, dof) - studentCdf(x - half, dof));
    if (Math.abs(next - x) <= 1e-9 * x) return next * scale;
    if (miss > 0) high = x;
    else low = x;
    x = next > low && next < high ? next : (low + high) / 2;
  }
  return x * scale;
}

/** Limits so narrow beside the rest of a sum change nothing of it but rounding. */
export const narrow = 1e-3;

// The integral of Student's cumulative distribution from minus infinity to t, for more than one degree of freedom.
function belowIntegral(t: number, dof: number): number {
  const density = Math.exp(studentLogPdf(t, dof));
  const rest = dof === Infinity || dof > 1e7 ? density : (density * (dof + t * t)) / (dof - 1);
  return t * studentCdf(t, dof) + rest;
}

/** Probability below z of the standard normal: erfc by its series near 0, by its
 *  continued fraction further out (DLMF 7.6.1, 7.9.1). */
export function normalCdf(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  let tail: number; // erfc(x) / 2
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 1; n < 200; n++) {
      term *= -(x * x) / n;
      const add = term / (2 * n + 1);
      sum += add;
      if (Math.abs(add) < 1e-17 * Math.abs(sum)) break;
    }
    tail = 0.5 - sum / Math.sqrt(Math.PI);
  } else {
    let f = 0;
    for (let n = 60; n >= 1; n--) f = n / 2 / (x + f);
    tail = Math.exp(-x * x) / (2 * Math.sqrt(Math.PI) * (x + f));
  }
  return z > 0 ? 1 - tail : tail;
}

// A query asks for the quantiles of two or three levels again and again.
const askedBefore = new Map<number, number>();

/** The z below which the standard normal has probability p. */
export function normalQuantile(p: number): number {
  if (p === 0.5) return 0;
  if (p < 0.5) return -normalQuantile(1 - p);
  const before = askedBefore.get(p);
  if (before !== undefined) return before;
  const z = solveNormal(p);
  if (askedBefore.size < 16) askedBefore.set(p, z);
  return z;
}

function solveNormal(p: number): number {
  let low = 0;
  let high = 40;
  let z = 1;
  for (let i = 0; i < 200; i++) {
    const miss = normalCdf(z) - p;
    const next = z - miss * Math.sqrt(2 * Math.PI) * Math.exp(0.5 * z * z);
    if (Math.abs(next - z) <= 1e-10 * Math.abs(z)) return next;
    if (miss > 0) high = z;
    else low = z;
    z = next > low && next < high ? next : (low + high) / 2;
  }
  return z;
}
