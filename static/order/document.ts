// A slip as a document for programs, after static/schemas/enquiry-1.json.
import type { Cell } from "./chart";
import type { JointFacts } from "./facts";
import { lineOf } from "./figures";
import type { Slip, SlipJoint } from "./slip";
import { notChecked } from "words:order";

/** Where the site is, for the addresses in the document. */
export interface Places {
  schema: string; // full address of the schema
  link?: string; // of the slip; left out when it is too long to send
  identification(joint: SlipJoint): string | undefined;
}

/** enquiryDocument is plain data for JSON.stringify; `version` is the chart's that the figures are from. */
export function enquiryDocument(slip: Slip, facts: readonly JointFacts[], version: string, at: Places): unknown {
  const party = (name?: string, reach?: string): unknown =>
    name === undefined && reach === undefined ? undefined : { name, reach };
  return {
    $schema: at.schema,
    kind: "enquiry",
    format: 1,
    chart: version,
    link: at.link,
    shop: party(slip.shop, slip.shopReach),
    from: party(slip.from, slip.fromReach),
    job: slip.job,
    note: slip.note,
    joints: slip.joints.map((joint, n) => jointDocument(joint, facts[n], at)),
    notChecked,
  };
}

function jointDocument(joint: SlipJoint, facts: JointFacts | undefined, at: Places): unknown {
  if (facts === undefined) return { count: joint.count };
  return {
    count: joint.count,
    place: joint.place,
    settled: facts.settled,
    says: facts.says,
    identification: at.identification(joint),
    sizes: facts.sizes.map((size) => ({
      names: size.names,
      rows: size.rows.map((r) => r.id),
      basis: size.row.basis,
      confirm: size.confirm,
      ends: size.row.ends.map((end) => ({
        like: end.like,
        hold: cell(end.hold),
        cap: cell(end.cap),
        across: cell(end.across),
      })),
      twins: size.rows.slice(1).map((r) => ({ row: r.id, line: lineOf(r) })),
      values: size.row.values.map((v) => ({ label: v.label, ...cell(v) })),
    })),
    looked: facts.looked.map((end) => ({ hold: end.hold, faces: end.faces, taken: end.taken ?? "joint" })),
    measured: facts.measured.map(({ estimate: e }) => ({
      end: e.end,
      quantity: e.quantity,
      value: round(e.value),
      uncertainty: round(e.uncertainty),
      unit: e.unit,
      used: e.used,
      setAside: e.setAside,
    })),
    tool: facts.tool,
    condition: facts.condition,
    notThese: facts.notThese.map((o) => ({ names: o.names, line: o.line, otherHold: o.otherHold })),
    threads: facts.fasteners.map((f) => ({ label: f.label, ...cell(f) })),
    grease: joint.grease,
    extras: joint.extras,
    open: facts.open,
  };
}

function cell(c: Cell): Cell {
  const { text, converted, note, basis, from, others } = c;
  const out: Cell = { text };
  if (converted !== undefined) out.converted = converted;
  if (note !== undefined) out.note = note;
  if (basis !== undefined) out.basis = basis;
  if (from !== undefined) out.from = from;
  if (others !== undefined) out.others = others.map(cell);
  return out;
}

/** A tenth of a micrometre is beyond any caliper, and keeps the file readable. */
function round(mm: number): number {
  return Math.round(mm * 1e4) / 1e4;
}
