// A shaft from the side and from above, to the angles entered: a driving member, one or more shafts and a driven
// member, joined end to end. Angles are true; lengths are not, but for their proportions.
import type { Element, Picture } from "./description";
import { el, px } from "./element";
import { line, text } from "./plot";

/** One member: its slope in rad, front end high positive, as seen from the side, and its heading as seen from above. */
export interface Member {
  name: string; // "gearbox"
  side: number;
  plan: number;
}

export interface ShaftWords {
  title: string;
  side: string;
  above: string;
  angle: (radians: number) => string;
}

const width = 360;
const height = 300;
const margin = 18;
const stub = 0.45; // length of the outer members beside a shaft

/** Two views, one below the other, at one scale. */
export function shaftDrawing(members: readonly Member[], words: ShaftWords): Picture {
  const lengths = members.map((_, n) => (n === 0 || n === members.length - 1 ? stub : 1));
  const scale = (width - 2 * margin) / lengths.reduce((sum, length) => sum + length, 0);
  const view = (middle: number, title: string, angleOf: (m: Member) => number): Element[] => {
    const points: [number, number][] = [[0, 0]];
    members.forEach((member, n) => {
      const [x, y] = points[n] ?? [0, 0];
      const along = (lengths[n] ?? 1) * scale;
      // A front end that is high falls toward the rear: down on the screen.
      points.push([x + along * Math.cos(angleOf(member)), y + along * Math.sin(angleOf(member))]);
    });
    const xs = points.map((p) => p[0]);
    const ys = points.map((p) => p[1]);
    const shiftX = width / 2 - (Math.min(...xs) + Math.max(...xs)) / 2;
    const shiftY = middle - (Math.min(...ys) + Math.max(...ys)) / 2;
    const placed = points.map(([x, y]): [number, number] => [x + shiftX, y + shiftY]);
    const drawn: Element[] = [text(margin, middle - 52, title, "s", "start")];
    drawn.push(line(margin / 2, middle, width - margin / 2, middle, "c"));
    members.forEach((member, n) => {
      const from = placed[n];
      const to = placed[n + 1];
      if (!from || !to) return;
      const outer = n === 0 || n === members.length - 1;
      drawn.push(line(from[0], from[1], to[0], to[1], outer ? "member member--end" : "member"));
      const up = Math.min(from[1], to[1], middle) - 14;
      drawn.push(text((from[0] + to[0]) / 2, up, words.angle(angleOf(member)), "v", "middle"));
      drawn.push(text((from[0] + to[0]) / 2, Math.max(from[1], to[1], middle) + 24, member.name, "s", "middle"));
    });
    for (const [x, y] of placed.slice(1, -1)) drawn.push(el("circle", { class: "b", cx: px(x), cy: px(y), r: "5" }));
    return drawn;
  };
  const tree = el(
    "svg",
    { class: "drawing plot", viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": words.title },
    ...view(80, words.side, (m) => m.side),
    ...view(228, words.above, (m) => m.plan),
  );
  return { id: "shaft", title: words.title, tree };
}
