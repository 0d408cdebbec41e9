// From the directions of gearbox, shafts and axle to joints, planes and the matrices of
// the chain.
import { check, conflict, counted } from "./check";
import * as range from "./given-ranges";
import * as hooke from "./hooke";
import { type Attitude, type Direction, directionRanges } from "./inclination";
import type { Complaint } from "./types";
import { angleBetween, cross, directionOf, dot, norm } from "./vector";

export interface Chain {
  angles: number[]; // of each joint, rad
  between: number[]; // from the plane of each joint to that of the next, rad, within a quarter turn
  planes: (number | null)[]; // the same, null where either joint is straight; of each shaft with two joints, rad
  matrices: hooke.Matrix[]; // of each joint, turned by what comes between it and the one before
}

// Below this a joint is straight: it has no plane.
const straight = 1e-12;

/** Puts the joints between directions together; `yokes` as in ShaftInput. */
export function chainOf(directions: readonly Direction[], yokes: readonly number[]): Chain {
  const angles: number[] = [];
  const bent: boolean[] = [];
  const normals: Direction[] = [];
  for (let i = 1; i < directions.length; i++) {
    const before = directions[i - 1] as Direction;
    const after = directions[i] as Direction;
    const normal = cross(before, after);
    angles.push(angleBetween(before, after));
    bent.push(norm(normal) >= straight);
    // A straight joint passes on any turn as it is, so any plane will do, as long as the joints before and behind
    // are counted from the same one.
    normals.push(bent[i - 1] ? normal : squareTo(after));
  }
  const between = yokes.map((_, i) =>
    planeAngle(normals[i] as Direction, normals[i + 1] as Direction, directions[i + 1] as Direction),
  );
  // The driven yoke of a joint stands square to the next driving yoke's zero when planes
  // and yokes are in line: hence the quarter turn.
  const matrices = angles.map((b, i) => {
    if (i === 0) return hooke.joint(b);
    return hooke.chain(hooke.joint(b), hooke.turned(Math.PI / 2 + (yokes[i - 1] ?? 0) - (between[i - 1] ?? 0)));
  });
  return { angles, between, planes: between.map((x, i) => (bent[i] && bent[i + 1] ? x : null)), matrices };
}

// Any direction square to one that points ahead.
function squareTo(u: Direction): Direction {
  return cross(u, [0, 0, 1]);
}

// From the plane of one joint to that of the next about the shaft between, which may as
// well be turned by half a turn: a plane has no front.
function planeAngle(first: Direction, second: Direction, shaft: Direction): number {
  return quarter(Math.atan2(dot(cross(first, second), shaft), dot(first, second)));
}

/** The same angle within a quarter turn either way, where half a turn makes no difference. */
export function quarter(angle: number): number {
  const halves = Math.round(angle / Math.PI);
  const rest = angle - halves * Math.PI;
  return rest <= -Math.PI / 2 ? rest + Math.PI : rest;
}

/** The product of joints `from` up to, not including, `to`. */
export function product(chain: Chain, from: number, to: number): hooke.Matrix {
  return chain.matrices.slice(from, to).reduce((m, next) => hooke.chain(next, m), hooke.turned(0));
}

/** What is left of the unevenness, rad. */
export function residualOf(chain: Chain): number {
  return hooke.residualAngle(product(chain, 0, chain.matrices.length));
}

/** The shop's root of squares: each square a vector turned by twice the angles before it. Rad. */
export function rootOfSquares(chain: Chain, yokes: readonly number[]): number {
  let x = 0;
  let y = 0;
  let turn = 0;
  for (const [i, b] of chain.angles.entries()) {
    if (i > 0) turn += Math.PI + 2 * ((chain.between[i - 1] ?? 0) - (yokes[i - 1] ?? 0));
    x += b * b * Math.cos(turn);
    y += b * b * Math.sin(turn);
  }
  return Math.sqrt(Math.hypot(x, y));
}

/** What is wrong with the members and yokes of a shaft. */
export function checkShaft(input: { members: Attitude[]; yokes: number[] }): Complaint[] {
  const found: Complaint[] = [];
  if (!counted(found, "members", input?.members, 2, 4)) return found;
  for (const [i, m] of input.members.entries()) found.push(...check(m, directionRanges, `members[${i}].`));
  const shafts = input.members.length - 2;
  const yokes = { ...range.yokeTurn, count: [shafts, shafts] as const };
  found.push(...check({ yokes: input.yokes }, { yokes }));
  if (found.length > 0) return found;
  const { angles } = chainOf(input.members.map(directionOf), input.yokes);
  for (const [i, b] of angles.entries()) {
    if (b > range.jointAngle.most)
      found.push(conflict(`members[${i + 1}]`, `members[${i}]`, { bound: range.jointAngle.most, unit: "rad" }));
  }
  return found;
}
