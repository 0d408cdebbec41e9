// What to change so that less unevenness is left: one change at a time, each the least
// that will do.
//
//   wedge     a taper under the driving or the driven end: the change of its angle is the wedge's own
//   shim      under one mount, `base` from the other: base times tan of the change
//   bearing   the hanger between two shafts up or down: both shafts turn
//   yokes     the yokes of a shaft turned against each other
//
// The joint centres are taken to stay where they are; after a change the angles are to be
// measured again.
import { answer, check, refuse } from "./check";
import { chainFormula } from "./given-angles";
import * as range from "./given-ranges";
import { derived, formula } from "./ground";
import type { Attitude, Direction } from "./inclination";
import { search } from "./search";
import type { ShaftInput } from "./shaft";
import { type Chain, chainOf, checkShaft, residualOf } from "./shaft-chain";
import type { Outcome, Ranges } from "./types";
import { degree } from "./units";
import { directionOf, unit } from "./vector";

const most = 20 * degree; // no wedge or mount takes more
const nothing = 5e-5; // rad: a residual angle that is as good as none, 0.003 degrees
const mostYokes = 90 * degree; // a quarter turn either way is all there is

export interface CorrectInput extends Omit<ShaftInput, "speed" | "inertia"> {
  most: number; // residual angle that may be left, rad; 0 asks for the least there is
  bases: (number | null)[]; // for each member: between its two mounts or along its spring seat, m; null: not known, or a shaft
  lengths: (number | null)[]; // for each member: a shaft's length between joint centres, m; null: not known
}

export interface Change {
  kind: "side" | "plan" | "yokes" | "bearing";
  at: number; // member, the first or the last (side, plan), shaft with two joints (yokes, counted from 0), or hanger (bearing, from 0)
  from: number; // rad; of a bearing 0
  to: number; // rad; of a bearing m, down is positive
  change: number; // to - from, rad or m
  shim: number | null; // height over the base for that change, m; null without a base, or for yokes and bearing
  residual: number; // angle left after it, rad
  reaches: boolean; // residual is at most what was asked for, or zero when zero was asked
  angles: number[]; // of the joints after it, rad
}

export interface Corrections {
  residual: number; // as it stands, rad
  changes: Change[]; // those that reach it first, each kind's least change
}

export const correctionsRanges: Ranges<CorrectInput> = {
  members: null,
  yokes: { ...range.yokeTurn, count: [0, 2] },
  most: range.jointAngle,
  bases: null,
  lengths: null,
};

const shimFormula = formula(
  "shim",
  "height = base x tan(change)",
  derived,
  "The joint centres are taken to stay where they are. Set the change, then measure all angles again.",
);

/** Each single change within 20 degrees (yokes: 90) that brings the residual down to `most`, or as low as it goes. */
export function corrections(input: CorrectInput): Outcome<Corrections> {
  const wrong = checkShaft(input);
  const n = wrong.some((c) => c.input === "members") ? null : input.members.length;
  const each = n === null ? ([0, 4] as const) : ([n, n] as const);
  wrong.push(
    ...check(input, {
      ...correctionsRanges,
      yokes: null,
      bases: { ...range.base, count: each, none: true },
      lengths: { ...range.length, count: each, none: true },
    }),
  );
  if (wrong.length > 0) return refuse(wrong);
  const residual = residualOf(chainOf(input.members.map(directionOf), input.yokes));
  const changes = kindsOf(input)
    .map((k) => least(k, input, residual))
    .filter((c): c is Change => c !== null)
    .sort((a, b) => Number(b.reaches) - Number(a.reaches) || (a.reaches ? 0 : a.residual - b.residual));
  return answer({ residual, changes }, [chainFormula, shimFormula]);
}

// One sort of change: how the chain looks after it, and how far it can go.
interface Kind {
  kind: Change["kind"];
  at: number;
  from: number;
  far: number;
  after: (x: number) => Chain;
  base: number | null;
}

function kindsOf(input: CorrectInput): Kind[] {
  const { members, yokes, bases, lengths } = input;
  const directions = members.map(directionOf);
  const kinds: Kind[] = [];
  // Only the ends can be tilted by themselves: a shaft lies where its joints are.
  for (const at of [0, members.length - 1]) {
    const member = members[at] as Attitude;
    for (const kind of ["side", "plan"] as const) {
      const after = (x: number): Chain => {
        const moved: Attitude = { ...member, [kind]: member[kind] + x };
        return chainOf(replaced(directions, at, directionOf(moved)), yokes);
      };
      kinds.push({ kind, at, from: member[kind], far: most, after, base: bases[at] ?? null });
    }
  }
  for (const [at, from] of yokes.entries()) {
    const after = (x: number): Chain => chainOf(directions, replaced(yokes, at, from + x));
    kinds.push({ kind: "yokes", at, from, far: mostYokes, after, base: null });
  }
  for (let at = 0; at + 3 < members.length; at++) {
    const first = lengths[at + 1];
    const second = lengths[at + 2];
    if (first == null || second == null) continue;
    const after = (x: number): Chain => {
      const down = lowered(directions[at + 1] as Direction, first, x);
      const up = lowered(directions[at + 2] as Direction, second, -x);
      return chainOf(replaced(replaced(directions, at + 1, down), at + 2, up), yokes);
    };
    kinds.push({ kind: "bearing", at, from: 0, far: Math.tan(most) * Math.min(first, second), after, base: null });
  }
  return kinds;
}

// The direction of a shaft whose driven end goes down by x.
function lowered(u: Direction, length: number, x: number): Direction {
  return unit([u[0] * length, u[1] * length, u[2] * length + x]);
}

function replaced<T>(list: readonly T[], at: number, value: T): T[] {
  return list.map((x, i) => (i === at ? value : x));
}

function least(k: Kind, input: CorrectInput, now: number): Change | null {
  const x = search((x) => residualOf(k.after(x)), k.far, input.most);
  if (x === null) return null;
  const chain = k.after(x);
  const residual = residualOf(chain);
  // What lowers nothing is no remedy.
  if (residual >= now) return null;
  return {
    kind: k.kind,
    at: k.at,
    from: k.from,
    to: k.from + x,
    change: x,
    shim: k.base === null ? null : k.base * Math.tan(x),
    residual,
    reaches: residual <= Math.max(input.most, nothing),
    angles: chain.angles,
  };
}
