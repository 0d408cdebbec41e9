// Threads as people write them: 5/16-24, .375-24, 1 1/8-12, M10, M10x1.25.
import { coarsePitch, nearSixteenth } from "./given-fasteners";
import { inch } from "./units";

export interface Thread {
  metric: boolean;
  diameter: number; // m
  pitch: number; // m
  area: number; // tensile stress area, m²
  coarse: boolean; // the pitch was not given: it is the coarse one
}

const metricForm = /^M\s*(\d{1,2}(?:[.,]\d{1,2})?)(?:\s*[x×*-]\s*(\d(?:[.,]\d{1,3})?))?$/i;
const inchForm =
  /^(?:(\d)[\s-])?(?:(\d{1,2})\/(\d{1,2})|(\d?[.,]\d{1,4})|(\d))\s*(?:in|")?\s*[-x]\s*(\d{1,2})(?:\s*UN[CF])?$/i;

/** A thread, or null for text that names none of plausible size. */
export function parseThread(text: string): Thread | null {
  const t = text.trim();
  const thread = metric(t) ?? unified(t);
  // The core under the thread is at least half as thick as the bolt.
  return thread !== null && thread.area > (Math.PI / 16) * thread.diameter ** 2 ? thread : null;
}

function metric(text: string): Thread | null {
  const m = metricForm.exec(text);
  if (m === null) return null;
  const size = decimal(m[1]);
  const pitch = m[2] === undefined ? coarsePitch.get(size) : decimal(m[2]);
  if (pitch === undefined || !(size >= 3 && size <= 64) || !(pitch >= 0.3 && pitch <= 6)) return null;
  const diameter = size / 1000;
  const p = pitch / 1000;
  return {
    metric: true,
    diameter,
    pitch: p,
    area: (Math.PI / 4) * (diameter - 0.9382 * p) ** 2,
    coarse: m[2] === undefined,
  };
}

function unified(text: string): Thread | null {
  const m = inchForm.exec(text);
  if (m === null) return null;
  const whole = m[1] === undefined ? 0 : Number(m[1]);
  const part = m[2] !== undefined ? Number(m[2]) / Number(m[3]) : m[4] !== undefined ? decimal(m[4]) : Number(m[5]);
  const diameter = sixteenth((whole + part) * inch);
  const perInch = Number(m[6]);
  if (!(diameter >= 0.12 * inch && diameter <= 3 * inch) || !(perInch >= 4 && perInch <= 80)) return null;
  const pitch = inch / perInch;
  return { metric: false, diameter, pitch, area: (Math.PI / 4) * (diameter - 0.9743 * pitch) ** 2, coarse: false };
}

function sixteenth(diameter: number): number {
  const near = (Math.round((diameter / inch) * 16) / 16) * inch;
  return Math.abs(near - diameter) <= nearSixteenth.value ? near : diameter;
}

function decimal(text: string | undefined): number {
  return Number((text ?? "").replace(",", "."));
}
