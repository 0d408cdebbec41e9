// Slips: what a person does wrong, and what the core should call it. Each works on the
// joint before it is measured or on the readings as they are typed.
import type { ChartRow, Faces, Hold } from "../types";
import type { TrueEnd } from "./measure";
import type { Chance } from "./random";

export interface Texts {
  hold: Hold;
  faces: Faces;
  cap: string[];
  across: string[];
}

export interface Slip {
  id: string; // as the core names it
  alike: string[]; // other names for the very same effect on the readings
  least: number; // share the core should name rightly; 0: no figure was set
  says: string;
  can: (end: TrueEnd) => boolean;
  joint?: (end: TrueEnd, dice: Chance) => TrueEnd; // the wrong thing is measured
  typed?: (texts: Texts, dice: Chance) => Texts | undefined; // undefined: this set cannot show the slip
  unit?: "in" | "mm"; // how the instrument is read
  rule?: boolean; // read as a fraction of an inch
}

const held =
  (...holds: Hold[]) =>
  (end: TrueEnd): boolean =>
    holds.includes(end.hold);
const any = (): boolean => true;

/** Clips of 1.2 to 2.1 mm, one or two: 1.2 to 4.2 mm in all (published sets of selective clips). */
const clips = (dice: Chance): number => (dice.happens(0.5) ? 2 : 1) * dice.between(1.2, 2.1);

const longer =
  (by: (dice: Chance) => number) =>
  (end: TrueEnd, dice: Chance): TrueEnd => ({ ...end, across: end.across === null ? null : end.across + by(dice) });

const both = (texts: Texts, change: (text: string) => string): Texts => ({
  ...texts,
  cap: texts.cap.map(change),
  across: texts.across.map(change),
});

// One quantity, the same in all its readings.
function one(texts: Texts, dice: Chance, change: (list: string[]) => string[] | undefined): Texts | undefined {
  const quantity = dice.happens(0.5) ? "cap" : "across";
  const list = change(texts[quantity]);
  return list === undefined ? undefined : { ...texts, [quantity]: list };
}

export const slips: readonly Slip[] = [
  {
    id: "millimetres-for-inches",
    alike: [],
    least: 0.98,
    says: "read in millimetres, written as inches",
    can: any,
    unit: "mm",
    typed: (t) => both(t, (x) => x.replace("mm", "in")),
  },
  {
    id: "inches-for-millimetres",
    alike: [],
    least: 0.98,
    says: "read in inches, written as millimetres",
    can: any,
    unit: "in",
    typed: (t) => both(t, (x) => x.replace("in", "mm")),
  },
  {
    id: "cap-across-exchanged",
    alike: [],
    least: 0.98,
    says: "cap and across in each other's place",
    can: any,
    typed: (t) => ({ ...t, cap: t.across, across: t.cap }),
  },
  {
    id: "decimal-point",
    alike: [],
    least: 0,
    says: "decimal point one place off in one quantity",
    can: any,
    typed: (t, dice) => {
      const by = dice.happens(0.5) ? 10 : 0.1;
      return one(t, dice, (list) => list.map((x) => moved(x, by)));
    },
  },
  {
    id: "digits-exchanged",
    alike: [],
    least: 0,
    says: "two neighbouring unlike digits exchanged in all readings of one quantity",
    can: any,
    typed: (t, dice) => one(t, dice, (list) => exchanged(list, dice)),
  },
  {
    id: "sixteenth",
    alike: [],
    least: 0,
    says: "a rule's fraction of one quantity misread by 1/16 in",
    can: any,
    rule: true,
    joint: (end, dice) => misread(end, 25.4 / 16, dice),
  },
  {
    id: "thirty-second",
    alike: [],
    least: 0,
    says: "a rule's fraction of one quantity misread by 1/32 in",
    can: any,
    rule: true,
    joint: (end, dice) => misread(end, 25.4 / 32, dice),
  },
  {
    id: "groove-outer-faces",
    alike: ["clips-included"],
    least: 0.85,
    says: "inside clips: over the outer groove faces, or inner faces and clips (1.2 to 4.2 mm longer)",
    can: held("inside-clip", "injected"),
    joint: longer(clips),
  },
  {
    id: "clips-included",
    alike: [],
    least: 0.85,
    says: "outside clips: over the clips (1.2 to 4.2 mm longer)",
    can: held("outside-clip"),
    joint: longer(clips),
  },
  {
    id: "centre-to-cap",
    alike: [],
    least: 0,
    says: "one cap's end to the middle of the cross: half of the across",
    can: any,
    joint: (end) => ({ ...end, across: end.across === null ? null : end.across / 2 }),
  },
  {
    id: "radius-for-diameter",
    alike: [],
    least: 0,
    says: "half of the cap",
    can: any,
    joint: (end) => ({ ...end, cap: end.cap === null ? null : end.cap / 2 }),
  },
  {
    id: "wrong-hold",
    alike: [],
    least: 0,
    says: "outside clips taken for straps or the reverse, figures right",
    can: held("outside-clip", "strap"),
    joint: (end) => ({ ...end, hold: end.hold === "strap" ? "outside-clip" : "strap" }),
  },
];

/** Rows a slip can be made on: one end, both figures, hold and faces known. */
export function slippery(row: ChartRow): boolean {
  const end = row.ends[0];
  return (
    row.ends.length === 1 &&
    end !== undefined &&
    end.cap !== null &&
    end.across !== null &&
    end.hold !== "unknown" &&
    end.faces !== "unknown"
  );
}

function misread(end: TrueEnd, by: number, dice: Chance): TrueEnd {
  const off = dice.happens(0.5) ? by : -by;
  if (dice.happens(0.5)) return { ...end, cap: end.cap === null ? null : end.cap + off };
  return { ...end, across: end.across === null ? null : end.across + off };
}

function moved(text: string, by: number): string {
  const [number = "", unit = ""] = text.split(" ");
  const digits = number.split(".")[1]?.length ?? 0;
  return `${(Number(number) * by).toFixed(by > 1 ? Math.max(digits - 1, 0) : digits + 1)} ${unit}`;
}

// The leading digits, which all readings share, up to the first decimal.
function exchanged(list: readonly string[], dice: Chance): string[] | undefined {
  const first = list[0] ?? "";
  const point = first.indexOf(".");
  const places: [number, number][] = [];
  for (let i = 0; i <= point; i++) {
    const j = i + 1 === point ? i + 2 : i + 1;
    if (i === point || first[i] === first[j]) continue;
    if (list.every((x) => x[i] === first[i] && x[j] === first[j])) places.push([i, j]);
  }
  if (places.length === 0) return undefined;
  const [i, j] = dice.pick(places);
  return list.map((x) => {
    const c = [...x];
    [c[i], c[j]] = [c[j] ?? "", c[i] ?? ""];
    return c.join("");
  });
}
