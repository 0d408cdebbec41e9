// Wear: a cap that reads below its size by more than published play.
import { namedEnd, type MeasuredEnd, type RowFit } from "./agree";
import * as given from "./given";
import type { Size } from "./types";

export interface Worn {
  end: number | undefined; // named only when there are two
  short: number; // how far below the chart's figure the cap reads, mm
  renew: boolean; // by more than every published play
}

/** The caps of the one size left that read small for wear. Half the last printed digit is the chart's own, not wear. */
export function worn(asked: readonly MeasuredEnd[], lead: RowFit): Worn[] {
  return asked.flatMap((end, n) => {
    if (end.yoke !== undefined) return []; // a bore tells nothing of wear in a cap
    const cap = lead.ends[n]?.fits.find((f) => f.quantity === "cap");
    if (cap === undefined) return [];
    const short = cap.figure.mm - (cap.measured.mm + cap.measured.shift);
    const sure = short - cap.figure.half;
    if (sure <= given.playAllowed) return [];
    return [{ end: namedEnd(asked, n), short, renew: sure > given.playRenew }];
  });
}

/** The nearest size, when only its cap is off and a worn cap would explain that. */
export function wouldBeWorn(
  asked: readonly MeasuredEnd[],
  nearest: Size | undefined,
): { name: string; short: number } | undefined {
  const tells = asked.every(
    (e) => e.yoke === undefined && e.cap !== undefined && ["new", "used"].includes(e.cap.how.condition),
  );
  if (!tells || nearest === undefined || nearest.ends.length === 0) return undefined;
  let short = 0;
  for (const end of nearest.ends) {
    if (end.cap === undefined || end.across === undefined) return undefined;
    if (Math.abs(end.across.difference) > end.across.uncertainty) return undefined;
    const below = -end.cap.difference;
    if (below < -end.cap.uncertainty || below - end.cap.uncertainty > given.playRenew) return undefined;
    short = Math.max(short, below);
  }
  return { name: nearest.names[0] ?? "", short };
}
