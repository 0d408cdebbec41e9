// A person with an instrument at a joint: true lengths in, typed readings out.
import type { Condition, Faces, Hold, Quantity, Tool, Unit } from "../types";
import * as given from "./given";
import type { Chance } from "./random";

/** One end as it really is, mm. */
export interface TrueEnd {
  hold: Hold;
  faces: Faces;
  cap: number | null;
  across: number | null;
}

export interface Habit {
  tool: Tool;
  condition: Condition;
  unit: Unit;
  readings: number;
}

export interface ReadEnd {
  hold: Hold;
  faces: Faces;
  cap: number[]; // mm, as the instrument shows them
  across: number[];
}

export function measure(end: TrueEnd, habit: Habit, dice: Chance): ReadEnd {
  return {
    hold: end.hold,
    faces: end.faces,
    cap: end.cap === null ? [] : readings("cap", end.cap, end.faces, habit, dice),
    across: end.across === null ? [] : readings("across", end.across, end.faces, habit, dice),
  };
}

function readings(quantity: Quantity, length: number, faces: Faces, habit: Habit, dice: Chance): number[] {
  const tool = instrument(habit.tool);
  const groove = quantity === "across" && habit.tool !== "steel-rule" && faces.startsWith("groove");
  const limit = (length <= 100 ? tool.limit : tool.limitAbove) + (groove ? given.grooveLimit : 0);
  const worn = given.wear[habit.condition][quantity];
  let shift = dice.between(-limit, limit) + dice.between(worn.low, worn.high);
  if (quantity === "across" && dice.happens(given.unseated.often)) shift += longer(given.unseated, dice);
  const out: number[] = [];
  for (let i = 0; i < habit.readings; i++) {
    let one = length + shift + tool[quantity] * dice.normal();
    if (dice.happens(given.dirt.often)) one += longer(given.dirt, dice);
    if (dice.happens(given.outlier.often)) {
      one += (dice.happens(0.5) ? 1 : -1) * dice.between(given.outlier.low, given.outlier.high);
    }
    const step = habit.unit === "in" ? tool.stepInch : tool.step;
    out.push(Math.max(Math.round(one / step), 1) * step);
  }
  return out;
}

function longer(by: { mean: number; most: number }, dice: Chance): number {
  return Math.min(by.mean * dice.exponential(), by.most);
}

function instrument(tool: Tool): given.Instrument {
  const found = given.instruments[tool];
  if (found === undefined) throw new Error(`the error model has no ${tool}`);
  return found;
}

/** typed writes a reading as the person does: a rule in inches as a fraction. */
export function typed(mm: number, habit: Habit): string {
  if (habit.unit === "mm") return `${mm.toFixed(habit.tool === "steel-rule" ? 1 : 2)} mm`;
  if (habit.tool !== "steel-rule") return `${(mm / 25.4).toFixed(4)} in`;
  return fraction(Math.round((mm / 25.4) * 64));
}

function fraction(parts: number): string {
  const whole = Math.floor(parts / 64);
  let top = parts % 64;
  let bottom = 64;
  while (top % 2 === 0 && bottom > 2) {
    top /= 2;
    bottom /= 2;
  }
  return top === 0 || top === bottom
    ? `${whole + (top > 0 ? 1 : 0)} in`
    : `${whole > 0 ? `${whole} ` : ""}${top}/${bottom} in`;
}
