// What the card holds, and its address: the request as it was sent, the step, and what is typed so far, parted by ";",
// which neither of them holds. A reload, or the link opened on another device, goes on where the reader was.
//
//   #check=..&take=cap,across&say=...;4;hold=outside-clip&cap=1.060in
import { decodeRequest } from "../../matcher/request";
import type { MeasureRequest, OpenedRequest } from "../../matcher/request";
import type { Faces, Hold, Quantity, Query, QueryEnd, Tool, Unit } from "../../matcher/types";

/** Readings asked for of each quantity: two that agree are worth more than one. */
export const turns = 2;

export interface CardEnd {
  hold: Hold | null; // null: not chosen yet
  faces?: Faces;
  cap: string[]; // by turn, "" for one not taken
  across: string[];
}

export interface Card {
  asked: string; // the request's fragment, as it was sent
  request: MeasureRequest;
  step: number;
  ends: CardEnd[];
  tool: Tool;
  unit: Unit;
}

export type Step =
  | { kind: "start" }
  | { kind: "tool" }
  | { kind: "end" }
  | { kind: "hold"; end: number }
  | { kind: "cap" | "across"; end: number; turn: number };

/** The steps a request leads through. */
export function stepsOf(request: MeasureRequest): Step[] {
  const steps: Step[] = [{ kind: "start" }, { kind: "tool" }];
  request.ends.forEach((asked, end) => {
    if (asked.hold === undefined) steps.push({ kind: "hold", end });
    for (const quantity of asked.take) {
      for (let turn = 0; turn < turns; turn++) steps.push({ kind: quantity, end, turn });
    }
  });
  steps.push({ kind: "end" });
  return steps;
}

export type OpenedCard = { ok: true; card: Card } | Extract<OpenedRequest, { ok: false }>;

/** openCard reads the address's fragment. It never throws. */
export function openCard(fragment: string): OpenedCard {
  const [asked = "", step = "", typed = ""] = fragment.replace(/^#/, "").split(";");
  const opened = decodeRequest(asked);
  if (!opened.ok) return opened;
  const { request } = opened;
  const { query } = CapspanCore.decodeAddress(typed);
  const last = stepsOf(request).length - 1;
  return {
    ok: true,
    card: {
      asked,
      request,
      step: /^\d{1,3}$/.test(step) ? Math.min(Number(step), last) : 0,
      ends: request.ends.map((end, n) => cardEnd(end.hold, end.faces, typed === "" ? undefined : query.ends[n])),
      tool: query.tool ?? "digital-caliper",
      unit: query.unit ?? request.unit ?? "in",
    },
  };
}

function cardEnd(hold: Hold | undefined, faces: Faces | undefined, typed: QueryEnd | undefined): CardEnd {
  const end: CardEnd = {
    hold: hold ?? typed?.hold ?? null,
    cap: (typed?.cap ?? []).slice(0, turns),
    across: (typed?.across ?? []).slice(0, turns),
  };
  const between = faces ?? typed?.faces ?? usualFaces(end.hold);
  if (between !== undefined && end.hold !== null && CapspanCore.facesFor(end.hold).includes(between))
    end.faces = between;
  return end;
}

/** Who cannot tell the hold is told to measure over the caps, and the answer says so. */
export function usualFaces(hold: Hold | null): Faces | undefined {
  return hold === "unknown" ? "over-caps" : undefined;
}

/** What the readings ask of the chart. */
export function queryOf(card: Card): Query {
  const ends = card.ends.map((end): QueryEnd => {
    const out: QueryEnd = { hold: end.hold ?? "unknown" };
    if (end.faces !== undefined) out.faces = end.faces;
    for (const quantity of ["cap", "across"] as const) {
      const taken = readingsOf(end, quantity);
      if (taken.length > 0) out[quantity] = taken;
    }
    return out;
  });
  return { ends, unit: card.unit, tool: card.tool };
}

export function readingsOf(end: CardEnd, quantity: Quantity): string[] {
  return end[quantity].filter((text) => text.trim() !== "");
}

/** The fragment that opens the card as it is, with "#". */
export function addressOf(card: Card): string {
  return `#${card.asked};${card.step};${CapspanCore.encodeAddress(queryOf(card))}`;
}
