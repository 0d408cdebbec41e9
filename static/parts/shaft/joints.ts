// A joint of the record between its page and the core: what is put in, and what the chart says of it now.
import { factsOf, type JointFacts } from "../../order/facts";
import { emptyJoint, type SlipJoint } from "../../order/slip";
import type { ShaftJoint } from "../../shaft/record";
import type { Known } from "../order/known";

/** The joint as a slip has it, for the core and for an enquiry. */
export function slipJoint(joint: ShaftJoint): SlipJoint {
  const out = emptyJoint();
  if (joint.place !== undefined) out.place = joint.place;
  if (joint.row !== undefined) out.row = joint.row;
  if (joint.identification !== undefined) out.query = CapspanCore.decodeAddress(joint.identification).query;
  return out;
}

/** A joint for the record, with what the chart says of it today. */
export function recordJoint(joint: SlipJoint, known: Known): ShaftJoint {
  const facts = factsOf(joint, known.chart, known.slips);
  const out: ShaftJoint = {};
  if (joint.place !== undefined) out.place = joint.place;
  if (joint.query !== undefined) out.identification = CapspanCore.encodeAddress(joint.query);
  if (joint.row !== undefined) out.row = joint.row;
  out.found = {
    settled: facts.settled,
    names: namesOf(facts),
    says: facts.says,
    chart: known.chart.version,
  };
  return out;
}

export function namesOf(facts: JointFacts): string[] {
  return facts.sizes.flatMap((s) => s.names);
}
