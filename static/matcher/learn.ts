// Where the core finds what the first answer can do without: what looks for slips, for
// ways to join two ends, for sizes the readings would be between other faces, and for what
// parts the sizes that are left. That is a script of its own (late.ts): a page answers the
// first reading before it is here, and asks again when it has come. The command and the
// tests load both at once.
import type * as Slips from "./slips";
import type * as SaySlips from "./speech-slips";
import type * as SayWays from "./speech-ways";
import type * as TellApart from "./tell-apart";
import type * as Ways from "./ways";

export interface Late {
  findSlips: typeof Slips.findSlips;
  otherByFaces: typeof Slips.otherByFaces;
  head: typeof SaySlips.head;
  tellApart: typeof TellApart.tellApart;
  ways: typeof Ways.ways;
  wayOut: typeof SayWays.wayOut;
}

let late: Late | undefined;

/** learn gives the core its late part. */
export function learn(part: Late): void {
  late = part;
}

/** The late part; undefined until it is here. */
export function learned(): Late | undefined {
  return late;
}
