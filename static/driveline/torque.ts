// The torque a shaft sees: what the engine can send in the lowest gear, and what the
// tyres can hold before they slip.
import { answer, check, refuse } from "./check";
import * as range from "./given-ranges";
import * as given from "./given-torque";
import type { Ground, Outcome, Ranges } from "./types";

export interface LowGearInput {
  engine: number; // greatest torque, N·m
  rated: "net" | "gross"; // how that torque is stated
  gearbox: "automatic" | "manual";
  gear: number; // ratio of the lowest gear
  stall: number; // torque ratio of a converter at stall, 1 for a clutch
  transfer: number | null; // ratio of the transfer case in low, null without one
}

/** The torque by one source's factors. */
export interface TorqueBy extends Ground {
  id: string;
  says: string;
  torque: number; // N·m
  factors: { id: "rating" | "gearbox" | "transfer"; value: number }[];
}

export const lowGearTorqueRanges: Ranges<LowGearInput> = {
  engine: range.torque,
  rated: { words: ["net", "gross"] },
  gearbox: { words: ["automatic", "manual"] },
  gear: range.ratio,
  stall: range.stall,
  transfer: { ...range.ratio, none: true },
};

/** The torque at the shaft in the lowest gear, by the factors of each source. */
export function lowGearTorque(input: LowGearInput): Outcome<{ by: TorqueBy[] }> {
  const wrong = check(input, lowGearTorqueRanges);
  if (wrong.length > 0) return refuse(wrong);
  const { transfer } = input;
  const bare = input.engine * input.gear * input.stall * (transfer ?? 1);
  const by = given.lowGear.map(({ net, gross, automatic, manual, transfer: kept, ...rest }) => {
    const factors: TorqueBy["factors"] = [
      { id: "rating", value: input.rated === "net" ? net : gross },
      { id: "gearbox", value: input.gearbox === "automatic" ? automatic : manual },
      { id: "transfer", value: transfer === null ? 1 : kept },
    ];
    return { ...rest, factors, torque: factors.reduce((t, f) => t * f.value, bare) };
  });
  return answer({ by }, [given.lowGearFormula, given.chooseFormula]);
}

export interface WheelSlipInput {
  load: number; // on the driven axle, N
  tyre: number; // rolling radius, m
  axle: number; // ratio of the axle
  friction: number; // of tyre on road; the published form takes 0.71
  efficiency: number; // of the axle; the published form takes 0.95
}

export const wheelSlipTorqueRanges: Ranges<WheelSlipInput> = {
  load: range.axleLoad,
  tyre: range.tyre,
  axle: range.ratio,
  friction: range.friction,
  efficiency: range.efficiency,
};

/** The torque at which the wheels slip, N·m, and the same with the published factors. */
export function wheelSlipTorque(input: WheelSlipInput): Outcome<{ torque: number; published: number; ground: Ground }> {
  const wrong = check(input, wheelSlipTorqueRanges);
  if (wrong.length > 0) return refuse(wrong);
  const bare = (input.load * input.tyre) / input.axle;
  const { value, says: _, ...ground } = given.slipFriction;
  return answer(
    {
      torque: (bare * input.friction) / input.efficiency,
      published: (bare * value) / given.axleEfficiency.value,
      ground,
    },
    [given.slipFormula, given.chooseFormula],
  );
}

export interface PowerInput {
  power: number; // W
  speed: number; // rad/s
}

export const torqueFromPowerRanges: Ranges<PowerInput> = { power: range.power, speed: range.turning };

/** Torque from power and speed, N·m: P / w. */
export function torqueFromPower(input: PowerInput): Outcome<{ torque: number }> {
  const wrong = check(input, torqueFromPowerRanges);
  return wrong.length > 0 ? refuse(wrong) : answer({ torque: input.power / input.speed }, [given.powerFormula]);
}

export interface PowerFromTorqueInput {
  torque: number; // N·m
  speed: number; // rad/s
}

export const powerFromTorqueRanges: Ranges<PowerFromTorqueInput> = { torque: range.torque, speed: range.speed };

/** Power from torque and speed, W. */
export function powerFromTorque(input: PowerFromTorqueInput): Outcome<{ power: number }> {
  const wrong = check(input, powerFromTorqueRanges);
  return wrong.length > 0 ? refuse(wrong) : answer({ power: input.torque * input.speed }, [given.powerFormula]);
}
