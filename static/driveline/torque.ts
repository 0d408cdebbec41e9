// The torque a shaft sees: what the engine can send in the lowest gear, and what the
// tyres can hold before they slip.
import type { Ground, Outcome } from "./types";
import { unwritten } from "./unwritten";

export interface LowGearInput {
  engine: number; // greatest torque, N·m
  rated: "net" | "gross"; // how that torque is stated
  gearbox: "automatic" | "manual";
  gear: number; // ratio of the lowest gear
  stall: number; // torque ratio of a converter at stall, 1 for a clutch
  transfer: number; // ratio of the transfer case in low, 1 without one
  transferFitted: boolean;
}

/** The torque by one source's factors. */
export interface TorqueBy extends Ground {
  id: string;
  says: string;
  torque: number; // N·m
  factors: { id: "rating" | "gearbox" | "transfer"; value: number }[];
}

export function lowGearTorque(input: LowGearInput): Outcome<{ by: TorqueBy[] }> {
  return unwritten(input);
}

export interface WheelSlipInput {
  load: number; // on the driven axle, N
  tyre: number; // rolling radius, m
  axle: number; // ratio of the axle
  friction: number; // of tyre on road; the published form takes 0.71
  efficiency: number; // of the axle; the published form takes 0.95
}

/** The torque at which the wheels slip, N·m, and the same with the published factors. */
export function wheelSlipTorque(input: WheelSlipInput): Outcome<{ torque: number; published: number; ground: Ground }> {
  return unwritten(input);
}

export interface PowerInput {
  power: number; // W
  speed: number; // rad/s
}

/** Torque from power and speed, N·m: P / w. */
export function torqueFromPower(input: PowerInput): Outcome<{ torque: number }> {
  return unwritten(input);
}

export interface PowerFromTorqueInput {
  torque: number; // N·m
  speed: number; // rad/s
}

/** Power from torque and speed, W. */
export function powerFromTorque(input: PowerFromTorqueInput): Outcome<{ power: number }> {
  return unwritten(input);
}
