// A joint that is put into a record of a large chart before anything of it is looked up, and gets what the chart says of
// it when that is here.
import type { SlipJoint } from "../../order/slip";
import type { ShaftJoint } from "../../shaft/record";
import { doneJoints, sayJoints } from "../order/joints-said";
import type { Known } from "../order/known";
import { inPieces } from "../order/looked-up";
import { recordJoint, slipJoint } from "./joints";

const bare = new WeakSet<ShaftJoint>();

/** The joint for the record, with nothing that the chart says of it. */
export function bareJoint({ place, query, row }: SlipJoint): ShaftJoint {
  const out: ShaftJoint = {};
  if (place !== undefined) out.place = place;
  if (query !== undefined) out.identification = CapspanCore.encodeAddress(query);
  if (row !== undefined) out.row = row;
  bare.add(out);
  return out;
}

export interface Page {
  show(): void;
  changed(): void; // the record has changed, and is kept
  note: HTMLElement; // what is missing is said behind it
}

/** lookedUp is the chart once all is here that it says of the joints, else null; then the page is shown again in time. */
export function lookedUp(joints: readonly ShaftJoint[], known: Known | null, page: Page): Known | null {
  if (known === null) return null;
  if (!inPieces(known.chart).isHere(joints.map(slipJoint), page.show)) {
    sayJoints(page.note);
    return null;
  }
  doneJoints(page.note);
  const lacking = joints.filter((joint) => bare.has(joint));
  for (const joint of lacking) {
    bare.delete(joint);
    const { found } = recordJoint(slipJoint(joint), known);
    if (found !== undefined) joint.found = found;
  }
  if (lacking.length > 0) queueMicrotask(page.changed);
  return known;
}
