// The least step from where one stands that brings a function down to a level, or as low
// as it goes nearby.
//
//   level reached     the crossing nearest to 0
//   level not reached the lowest of all hollows; of equally low ones the nearest
//
// The function is looked at on a grid, and every hollow of the grid is then followed
// down, since a hollow may be narrower than the grid.

const steps = 40; // each way: half a degree of an angle

/** x with |x| <= far, or null when f lies at the level already. f is steady and 0 or more. */
export function search(f: (x: number) => number, far: number, level: number): number | null {
  if (level > 0 && f(0) <= level) return null;
  const grid = Array.from({ length: 2 * steps + 1 }, (_, i) => ((i - steps) / steps) * far);
  const values = grid.map(f);
  if (Math.max(...values) - Math.min(...values) < alike * alike) return null; // it changes nothing
  let best: { x: number; value: number } | null = null;
  for (let i = 0; i < grid.length; i++) {
    const here = values[i] as number;
    if (here > (values[i - 1] ?? Infinity) || here > (values[i + 1] ?? Infinity)) continue;
    const x = lowest(f, grid[Math.max(0, i - 1)] as number, grid[Math.min(grid.length - 1, i + 1)] as number);
    const found = level > 0 && f(x) <= level ? { x: crossing(f, x, level), value: level } : { x, value: f(x) };
    if (best === null || better(found, best)) best = found;
  }
  return best?.x ?? null;
}

// Values this near are one: rad, far below what anybody can set.
const alike = 1e-6;

function better(a: { x: number; value: number }, b: { x: number; value: number }): boolean {
  if (Math.abs(a.value - b.value) > alike) return a.value < b.value;
  return Math.abs(a.x) < Math.abs(b.x);
}

// Golden section.
function lowest(f: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let c = b - golden * (b - a);
  let d = a + golden * (b - a);
  let [fc, fd] = [f(c), f(d)];
  for (let i = 0; i < 80 && b - a > 1e-10; i++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

// From 0, where f is above the level, towards x, where it is not: f is above it at `above`
// and at most at it at `below`, so the point kept is one that reaches the level.
function crossing(f: (x: number) => number, x: number, level: number): number {
  let above = 0;
  let below = x;
  for (let i = 0; i < 34; i++) {
    const middle = (above + below) / 2;
    if (f(middle) > level) above = middle;
    else below = middle;
  }
  return below;
}
