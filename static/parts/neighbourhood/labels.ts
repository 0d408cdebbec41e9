// Where the name of each mark goes so that it covers neither a mark nor another name.

export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const gap = 10; // from a mark's middle to its name
const high = 14; // of a line

/** How wide a name is about, in the letters of the picture. */
function nameWidth(name: string): number {
  return 8 * name.length + 2;
}

/** The box for a name beside the mark at x, y: the first of twelve places that is free and lies within bounds, or the
 *  one that covers least. */
export function placeName(name: string, x: number, y: number, bounds: Box, taken: Box[]): Box {
  const wide = nameWidth(name);
  let best: Box | null = null;
  let least = Infinity;
  for (const down of [0, -1, 1, -2, 2]) {
    for (const side of [1, -1, 0]) {
      if (side === 0 && down === 0) continue;
      const left = side === 1 ? x + gap : side === -1 ? x - gap - wide : x - wide / 2;
      const top = y - high / 2 + down * (high + 1);
      const box = { left, top, right: left + wide, bottom: top + high };
      const outside = Math.max(0, bounds.left - box.left) + Math.max(0, box.right - bounds.right);
      const above = Math.max(0, bounds.top - box.top) + Math.max(0, box.bottom - bounds.bottom);
      const cost = 50 * (outside + above) + taken.reduce((sum, t) => sum + common(box, t), 0) + Math.abs(down);
      if (cost < least) [best, least] = [box, cost];
    }
  }
  return best ?? { left: x, top: y, right: x + wide, bottom: y + high };
}

function common(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const tall = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && tall > 0 ? wide * tall : 0;
}
