// How tight: what is printed for the very bolt first, then the general formula.
//
//   T = K d F,   F = share of proof x proof strength x stress area
import { answer, check, complaint, conflict, counted, refuse } from "./check";
import * as given from "./given-fasteners";
import { parseThread, type Thread } from "./thread";
import type { Formula, Ground, Outcome, Ranges } from "./types";

export type Grade = "SAE-5" | "SAE-8" | "8.8" | "10.9" | "12.9";
export type ThreadCondition = "dry" | "oiled";

/** A row of the chart's table of fasteners. */
export interface PublishedTorque {
  id: string;
  item: string;
  series: string;
  thread: string; // as printed: "5/16-24", "M10"
  least: number; // N·m
  most: number; // N·m; the same as least where one figure is printed
  ground: { basis: string; source: string[] };
}

/** A rule of what may be used again. */
export interface Reuse extends Ground {
  id: string;
  says: string;
}

export interface TighteningInput {
  thread: string; // "5/16-24", "M10x1.5", ".375-24"
  grade: Grade;
  condition: ThreadCondition;
  series: string; // joint series the bolt holds, empty: any
  published: PublishedTorque[]; // all rows of the chart
}

export interface Tightening {
  published: PublishedTorque[]; // rows of the same thread, those of the series first. They come before the formula
  torque: number; // by the formula, N·m
  preload: number; // N
  diameter: number; // m
  pitch: number; // m
  pitchGround: Ground | null; // of a coarse pitch that was not given; null: it was
  area: number; // tensile stress area, m²
  proof: number; // proof strength, Pa
  proofGround: Ground;
  factor: number; // K
  share: number; // of proof
  reuse: readonly Reuse[];
}

export const tighteningRanges: Ranges<TighteningInput> = {
  thread: null,
  grade: { words: ["SAE-5", "SAE-8", "8.8", "10.9", "12.9"] },
  condition: { words: ["dry", "oiled"] },
  series: null,
  published: null,
};

/** Published torques of a thread, and what the general formula gives. */
export function tightening(input: TighteningInput): Outcome<Tightening> {
  const wrong = check(input, tighteningRanges);
  counted(wrong, "published", input?.published, 0, 1000);
  const text = input?.thread;
  const thread = typeof text === "string" ? parseThread(text) : null;
  if (text === undefined || text === null || text === "") wrong.push(complaint("thread", "missing", "give-it"));
  else if (thread === null) wrong.push(complaint("thread", "unknown", "choose-from-list"));
  else if (wrong.length === 0 && thread.metric !== !input.grade.startsWith("SAE"))
    wrong.push(conflict("grade", "thread"));
  if (wrong.length > 0 || thread === null) return refuse(wrong);
  const { value: proof, says: _, ...proofGround } = proofOf(input.grade, thread.diameter);
  const factor = given.nutFactor[input.condition].value;
  const share = given.proofShare.value;
  const preload = share * proof * thread.area;
  const formulas: Formula[] = [given.torqueFormula, thread.metric ? given.metricAreaFormula : given.inchAreaFormula];
  return answer(
    {
      published: published(input, thread),
      torque: factor * thread.diameter * preload,
      preload,
      diameter: thread.diameter,
      pitch: thread.pitch,
      pitchGround: thread.coarse ? given.coarseGround : null,
      area: thread.area,
      proof,
      proofGround,
      factor,
      share,
      reuse: given.reuse,
    },
    formulas,
  );
}

function proofOf(grade: Grade, diameter: number) {
  return grade === "8.8" && diameter > given.smallUpTo.value ? given.proofLarge : given.proof[grade];
}

// Rows of the same thread; those of the series in hand first.
function published(input: TighteningInput, thread: Thread): PublishedTorque[] {
  const rows = input.published.filter((row) => {
    const other = typeof row?.thread === "string" ? parseThread(row.thread) : null;
    return other !== null && same(other.diameter, thread.diameter) && same(other.pitch, thread.pitch);
  });
  const series = (input.series ?? "").trim();
  const hits = (row: PublishedTorque) => series !== "" && row.series.split(/[ ,]+/).includes(series);
  return [...rows.filter(hits), ...rows.filter((row) => !hits(row))];
}

function same(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-6;
}
