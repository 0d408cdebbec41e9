// A slip as a text message and as a mail. Both say what is settled and what is not, and carry no line to fill in: what
// is open is asked.
import type { Unit } from "../matcher/types";
import { facesWords, toolWords } from "../matcher/speech-words";
import { evidence, figure, measured, printings, whole } from "./figures";
import type { JointFacts } from "./facts";
import type { Slip, SlipJoint } from "./slip";
import {
  extraWords,
  greaseWords,
  joined,
  mailWords,
  messageWords as short,
  notChecked,
  openWords,
  slipWords as say,
  standing,
} from "words:order";

/** The unit the readings lead with. */
export function leadOf(joint: SlipJoint): Unit {
  const first = (joint.query?.ends ?? []).flatMap((end) => [...(end.cap ?? []), ...(end.across ?? [])])[0];
  return joint.query?.unit ?? (first !== undefined && /mm\s*$/i.test(first) ? "mm" : "in");
}

/** The size in few words: "1350", or that it is open. */
export function sizeOf(facts: JointFacts): string {
  const [size] = facts.sizes;
  return size !== undefined && facts.sizes.length === 1 && facts.more === 0
    ? size.row.id
    : short.unsettled(standing[facts.settled]);
}

/** textMessage is a few lines for a phone; the link comes behind it. */
export function textMessage(slip: Slip, facts: readonly JointFacts[]): string {
  const lines = [short.head];
  slip.joints.forEach((joint, n) => {
    const f = facts[n];
    if (f === undefined) return;
    lines.push(short.line(joint.count, shortJoint(joint, f)));
  });
  if (slip.job !== undefined) lines.push(`${say.job}: ${slip.job}`);
  lines.push(short.ask);
  if (slip.from !== undefined) lines.push([slip.from, slip.fromReach].filter((t) => t !== undefined).join(", "));
  lines.push(short.link, "");
  return lines.join("\n");
}

function shortJoint(joint: SlipJoint, facts: JointFacts): string {
  const [size] = facts.sizes;
  const out: string[] = [];
  if (size !== undefined && facts.sizes.length === 1) {
    const others = size.names.slice(1);
    out.push(`${size.row.id}${others.length > 0 ? short.also(joined(others)) : ""}`);
    for (const end of size.row.ends) {
      out.push(`${end.hold.text}, ${short.cap} ${figure(end.cap)}, ${short.across} ${figure(end.across)}`);
    }
    if (facts.settled !== "identified") out.push(standing[facts.settled]);
  } else {
    out.push(sizeOf(facts));
  }
  const lead = leadOf(joint);
  for (const m of facts.measured) {
    if (m.estimate.quantity === "clip") continue;
    out.push(`${short.measured} ${short[m.estimate.quantity]} ${measured(m.estimate, lead)}`);
  }
  if (facts.notThese.length > 0) {
    out.push(short.not(joined(facts.notThese.map((o) => o.names[0] ?? ""))).replace(/\.$/, ""));
  }
  out.push(joint.grease === undefined ? `${say.grease}: ${say.greaseOpen}?` : greaseWords[joint.grease]);
  if (joint.extras.length > 0) out.push(`${say.extras.toLowerCase()} ${wantedOf(joint)}`);
  return `${out.join("; ")}.`;
}

/** Things to order with a joint: "4 clips, straps with their bolts". */
export function wantedOf(joint: SlipJoint): string {
  return joined(joint.extras.map((w) => `${w.count === undefined ? "" : `${w.count} `}${extraWords[w.item]}`));
}

/** The subject of the mail. */
export function mailSubject(slip: Slip, facts: readonly JointFacts[]): string {
  return mailWords.subject(joined([...new Set(facts.map(sizeOf))]), slip.job ?? "");
}

/** mailText is everything on the slip as lines. */
export function mailText(slip: Slip, facts: readonly JointFacts[], version: string): string {
  const lines = [mailWords.greeting, ""];
  const put = (label: string, text: string): void => {
    if (text !== "") lines.push(`${label}: ${text}`);
  };
  slip.joints.forEach((joint, n) => {
    const f = facts[n];
    if (f === undefined) return;
    const place = joint.place === undefined ? "" : `, ${say.forPlace(joint.place)}`;
    lines.push(`${say.joint(n, slip.joints.length)}: ${say.wanted(joint.count)}${place}`);
    lines.push(`${standing[f.settled]}. ${f.says}`);
    for (const size of f.sizes) {
      put(f.sizes.length > 1 ? say.oneOf : say.soldAs, joined(size.names));
      for (const p of printings(size.rows).slice(1)) lines.push(`  ${joined(p.names)}: ${p.line}`);
      for (const end of size.row.ends) {
        const at = size.row.ends.length > 1 ? `${end.title}: ` : "";
        put(`${at}${say.hold}`, whole(end.hold));
        put(`${at}${say.cap}`, whole(end.cap));
        put(`${at}${say.across}`, whole(end.across));
      }
      for (const v of size.row.values) put(v.label, whole(v));
      if (size.confirm) lines.push(say.confirmMemory);
    }
    if (f.more > 0) lines.push(say.moreSizes(f.more));
    putMeasured(lines, joint, f);
    for (const o of f.notThese) {
      put(say.notThese, `${joined(o.names)}: ${o.line}${o.otherHold ? ` (${say.otherHold})` : ""}`);
    }
    for (const t of f.fasteners) put(say.threads, `${t.label} ${t.text}${evidence(t) ? ` [${evidence(t)}]` : ""}`);
    put(say.grease, joint.grease === undefined ? `${say.greaseOpen}?` : greaseWords[joint.grease]);
    put(say.extras, wantedOf(joint));
    const open = f.open.filter((o) => o !== "grease").map((o) => openWords[o]);
    if (open.length > 0) lines.push(`? ${joined(open)}`);
    lines.push("");
  });
  put(say.job, slip.job ?? "");
  put(say.note, slip.note ?? "");
  put(say.from, [slip.from, slip.fromReach].filter((t) => t !== undefined).join(", "));
  put(say.notChecked, joined(notChecked));
  lines.push(say.defers, say.expanded, mailWords.chart(version), "", mailWords.link, "");
  return lines.join("\n");
}

function putMeasured(lines: string[], joint: SlipJoint, facts: JointFacts): void {
  const lead = leadOf(joint);
  const ends = joint.query?.ends.length ?? 1;
  for (const { estimate: e, taken } of facts.measured) {
    const label = e.quantity === "clip" ? openWords["clip-thickness"] : say[e.quantity];
    const faces = e.quantity === "across" ? facesOf(facts, e.end) : "";
    const at = ends > 1 ? `${e.end + 1}. ` : "";
    const how = [say.readings(e.used.length, e.setAside.length), taken === "yoke" ? say.bare : ""];
    lines.push(
      `${say.measured}, ${at}${label}: ${measured(e, lead)}${faces ? `, ${faces}` : ""} (${how.filter((t) => t !== "").join(", ")})`,
    );
  }
  if (facts.tool !== undefined && facts.condition !== undefined) {
    lines.push(say.readWith(toolWords[facts.tool], say.conditions[facts.condition]));
  }
}

/** The faces somebody said they measured between, in words; "" where nobody said. */
export function facesOf(facts: JointFacts, end: number): string {
  const faces = facts.looked[end]?.faces;
  return faces === undefined || faces === "unknown" ? "" : facesWords[faces];
}
