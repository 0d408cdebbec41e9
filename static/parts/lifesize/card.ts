// How many of the page's pixels are a millimetre on this screen, by a bank card laid on it. No browser can know this
// by itself. Pure functions, and the store that remembers the answer on the device.

/** Edges of an ID-1 card in mm, ISO/IEC 7810:2019: bank cards, driving licences, most travel cards. */
export const cardLong = 85.6;
export const cardShort = 53.98;

export interface Calibration {
  perMm: number; // CSS pixels to the millimetre
  ratio: number; // device pixels to the CSS pixel when the card was laid: the zoom of the page changes it
  screen: string; // the screen it was laid on
}

export interface Screen {
  devicePixelRatio: number;
  screen: { width: number; height: number };
}

/** Names a screen by its size, whichever way up it is held. */
function nameOf({ screen }: Screen): string {
  return `${Math.max(screen.width, screen.height)}x${Math.min(screen.width, screen.height)}`;
}

/** A card whose long edge covers so many CSS pixels, on this screen at this zoom. */
export function calibrate(longEdge: number, on: Screen): Calibration {
  return { perMm: longEdge / cardLong, ratio: on.devicePixelRatio, screen: nameOf(on) };
}

/** A calibration says nothing about another screen or another zoom. */
export function holds(calibration: Calibration, on: Screen): boolean {
  return calibration.screen === nameOf(on) && Math.abs(calibration.ratio - on.devicePixelRatio) < 0.001;
}

const key = "capspan-card";

/** What was remembered; null also when nothing can be read or somebody wrote nonsense there. */
export function recall(): Calibration | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
    return isCalibration(kept) ? kept : null;
  } catch {
    return null;
  }
}

/** Remembers, or forgets when given null. False where the browser keeps nothing. */
export function remember(calibration: Calibration | null): boolean {
  try {
    if (calibration) localStorage.setItem(key, JSON.stringify(calibration));
    else localStorage.removeItem(key);
    return true;
  } catch {
    return false;
  }
}

function isCalibration(kept: unknown): kept is Calibration {
  if (typeof kept !== "object" || kept === null) return false;
  const { perMm, ratio, screen } = kept as Record<string, unknown>;
  return inRange(perMm, 0.5, 40) && inRange(ratio, 0.1, 20) && typeof screen === "string";
}

function inRange(value: unknown, least: number, greatest: number): boolean {
  return typeof value === "number" && value >= least && value <= greatest;
}
