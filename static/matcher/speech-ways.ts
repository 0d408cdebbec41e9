// What is said of a way to join two ends that no listed joint joins.

export interface WaySaid {
  joint: string; // name of the joint to buy
  conversion: boolean;
  keeps: number; // the measured end whose yoke stays
  to: string; // name of the size the other yoke must take
  caps: boolean; // the changed yoke takes the same caps as before
  held: boolean; // and holds them the same way
  recalled: boolean; // that such a joint exists is from memory
}

export function way(w: WaySaid): string {
  const [stays, goes] = w.keeps === 0 ? ["first", "second"] : ["second", "first"];
  const joint = w.conversion ? `the conversion joint ${w.joint}` : `a plain ${w.joint}`;
  const same =
    w.caps && w.held ? " Caps and hold stay as they are." : w.caps ? " The caps stay as thick as they are." : "";
  const recalled = w.recalled
    ? " That joint is recalled, not published: ask whether it can be had before changing a yoke."
    : "";
  return `Keep the yoke of the ${stays} end, change that of the ${goes} to one that takes the ${w.to}, and fit ${joint}.${same}${recalled}`;
}

export const wayOut = (): string =>
  "Or change one yoke, so that a listed joint fits: the ways to do that are listed with this answer. A driveline shop fits and balances a yoke.";
