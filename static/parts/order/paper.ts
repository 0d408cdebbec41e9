// The slip as it is printed and shown: who asks whom, one block for each joint, what was not checked. What nobody said
// is a line to fill in by hand. The blank slip of templates/order.html has the same parts.
import { toolWords } from "../../matcher/speech-words";
import type { LabelledCell, SlipEnd } from "../../order/chart";
import type { JointFacts, NamedSize } from "../../order/facts";
import { evidence, figure, lineOf, measured, printings } from "../../order/figures";
import type { Slip, SlipJoint } from "../../order/slip";
import { facesOf, leadOf } from "../../order/texts";
import { make } from "../identify/element";
import { qrPicture } from "../send/picture";
import { extraWords, greaseWords, joined, notChecked, slipWords as say, standing } from "words:order";
import { holdWords } from "words:terms";

type Part = HTMLElement | string | null | false;

/** A line to write on. */
export function line(): HTMLElement {
  return make("span", { class: "slip__line" });
}

function labelled(label: string, ...parts: Part[]): HTMLElement {
  return make("p", { class: "slip__said" }, make("span", { class: "slip__label" }, label), " ", ...parts);
}

/** The whole slip; `back` is the full address that leads back to a joint's identification or row. */
export function slipPaper(
  slip: Slip,
  facts: readonly JointFacts[],
  version: string,
  back: (joint: SlipJoint) => string | undefined,
): HTMLElement[] {
  const who = (name?: string, reach?: string): string => [name, reach].filter((t) => t !== undefined).join(", ");
  const field = (label: string, text: string): HTMLElement =>
    make("div", {}, make("dt", {}, label), make("dd", {}, text || line()));
  return [
    make("h2", { class: "slip__title" }, say.title),
    make(
      "dl",
      { class: "slip__who" },
      field(say.shop, who(slip.shop, slip.shopReach)),
      field(say.from, who(slip.from, slip.fromReach)),
      field(say.job, slip.job ?? ""),
      field(say.date, ""),
    ),
    ...slip.joints.map((joint, n) => {
      const f = facts[n];
      return f === undefined ? make("div") : jointBlock(joint, f, n, slip.joints.length, back(joint));
    }),
    ...(slip.note === undefined ? [] : [labelled(say.note, slip.note)]),
    make(
      "p",
      { class: "slip__foot" },
      make("strong", {}, `${say.notChecked}: ${joined(notChecked)}. `),
      `${say.defers} ${say.expanded} ${say.version} ${version}.`,
    ),
  ];
}

function jointBlock(joint: SlipJoint, facts: JointFacts, n: number, of: number, back: string | undefined): HTMLElement {
  const place = joint.place === undefined ? "" : ` · ${say.forPlace(joint.place)}`;
  const picture = back === undefined ? null : qrPicture(back, say.qr(n));
  return make(
    "section",
    { class: "slip__joint" },
    make("h3", { class: "slip__head" }, `${say.joint(n, of)} · ${say.wanted(joint.count)}${place}`),
    picture !== null &&
      make(
        "figure",
        { class: "slip__qr" },
        picture,
        make("figcaption", {}, joint.query === undefined ? say.backRow : say.back),
      ),
    make(
      "p",
      { class: "slip__standing" },
      make("strong", {}, `${standing[facts.settled]}. `),
      // Where the size is named below, the sentence says it once more.
      make(
        "span",
        { class: facts.settled === "identified" || facts.settled === "chosen" ? "slip__more" : "" },
        facts.says,
      ),
    ),
    ...names(facts),
    table(joint, facts),
    facts.tool !== undefined &&
      facts.condition !== undefined &&
      make("p", { class: "slip__said" }, say.readWith(toolWords[facts.tool], say.conditions[facts.condition])),
    facts.notThese.length > 0 &&
      labelled(
        say.notThese,
        ...facts.notThese.flatMap((o, i): Part[] => [
          i > 0 ? " · " : "",
          joined(o.names),
          make("span", { class: "slip__more" }, ` (${o.line}${o.otherHold ? `; ${say.otherHold}` : ""})`),
        ]),
      ),
    facts.fasteners.length > 0 && labelled(say.threads, facts.fasteners.map(thread).join(" · ")),
    ordered(joint),
  );
}

function names(facts: JointFacts): HTMLElement[] {
  const only = facts.sizes.length === 1 && facts.more === 0;
  if (facts.sizes.length === 0) return [labelled(say.soldAs, line())];
  const confirm = facts.sizes.some((s) => s.confirm) ? make("strong", {}, ` ${say.confirmMemory}`) : null;
  if (only) {
    return facts.sizes.map((s) => labelled(say.soldAs, ...called(s), confirm));
  }
  const list = facts.sizes.map((s: NamedSize) => `${joined(s.names)} (${lineOf(s.row)})`).join(" · ");
  return [labelled(say.oneOf, `${list}${facts.more > 0 ? ` ${say.moreSizes(facts.more)}` : ""}`, confirm)];
}

// All names of a size. Rows that a caliper cannot tell apart may print it with other digits: those stand beside them.
function called(size: NamedSize): Part[] {
  return printings(size.rows).flatMap((p, n): Part[] => [
    n > 0 ? " · " : "",
    make("strong", {}, joined(p.names)),
    n > 0 ? ` (${p.line})` : "",
  ]);
}

function thread(t: LabelledCell): string {
  const why = evidence(t);
  return `${t.label} ${t.text}${why ? ` [${why}]` : ""}`;
}

// The figures: the chart's beside the readings, a line where there is neither.
function table(joint: SlipJoint, facts: JointFacts): HTMLElement {
  const size = facts.sizes.length === 1 ? facts.sizes[0]?.row : undefined;
  const ends = Math.max(size?.ends.length ?? 0, facts.looked.length, 1);
  const rows: HTMLElement[] = [];
  for (let n = 0; n < ends; n++) {
    const end = size?.ends[size.ends.length === 1 ? 0 : n];
    rows.push(...endRows(joint, facts, end, n, ends > 1 ? endTitle(end, n) : say.hold));
  }
  for (const v of size?.values ?? []) {
    rows.push(make("tr", {}, make("th", { scope: "row" }, v.label), chartCell(v), make("td", {}, line())));
  }
  return make(
    "table",
    { class: "slip__table" },
    make(
      "thead",
      {},
      make("tr", {}, make("td"), make("th", { scope: "col" }, say.chart), make("th", { scope: "col" }, say.measured)),
    ),
    make("tbody", {}, ...rows),
  );
}

function endTitle(end: SlipEnd | undefined, n: number): string {
  const like = end?.like ? ` (${end.like})` : "";
  return `${n + 1}. ${end?.title ?? ""}${like}`;
}

// The first row says how the end is held; of a joint with two ends it says which end, too.
function endRows(
  joint: SlipJoint,
  facts: JointFacts,
  end: SlipEnd | undefined,
  n: number,
  title: string,
): HTMLElement[] {
  const looked = facts.looked[n];
  const hold = looked === undefined || looked.hold === "unknown" ? line() : holdWords[looked.hold];
  const row = (label: string, cell: HTMLElement, measuredCell: HTMLElement): HTMLElement =>
    make("tr", {}, make("th", { scope: "row" }, label), cell, measuredCell);
  return [
    row(title, chartCell(end?.hold), make("td", {}, hold)),
    row(say.cap, chartCell(end?.cap), measuredCell(joint, facts, n, "cap")),
    row(say.across, chartCell(end?.across), measuredCell(joint, facts, n, "across")),
  ];
}

function chartCell(cell: SlipEnd["cap"] | undefined): HTMLElement {
  if (cell === undefined) return make("td", {}, line());
  const others = (cell.others ?? []).map((o) => `${say.elsewhere} ${figure(o)}${why(evidence(o))}`).join("; ");
  return make(
    "td",
    {},
    make("strong", {}, figure(cell)),
    [cell.note ? `, ${cell.note}` : "", why(evidence(cell)), others ? `; ${others}` : ""].join(""),
  );
}

function why(evidence: string): string {
  return evidence ? ` [${evidence}]` : "";
}

function measuredCell(joint: SlipJoint, facts: JointFacts, end: number, quantity: "cap" | "across"): HTMLElement {
  const found = facts.measured.find((m) => m.estimate.end === end && m.estimate.quantity === quantity);
  if (found === undefined) return make("td", {}, line());
  const { estimate, taken } = found;
  const faces = quantity === "across" ? facesOf(facts, end) : "";
  const how = [
    faces,
    taken === "yoke" ? say.bare : "",
    say.readings(estimate.used.length, estimate.setAside.length),
  ].filter((t) => t !== "");
  return make("td", {}, make("strong", {}, measured(estimate, leadOf(joint))), `, ${how.join(", ")}`);
}

// Grease and what goes with it; what nobody chose has a box or a line. What belongs together does not part at the end
// of a line.
function ordered(joint: SlipJoint): HTMLElement {
  const group = (...parts: Part[]): HTMLElement => make("span", { class: "slip__group" }, ...parts);
  const label = (text: string): HTMLElement => make("span", { class: "slip__label" }, text);
  const box = (text: string): HTMLElement => group(make("span", { class: "slip__box" }), text);
  const wanted = joint.extras.flatMap((w): HTMLElement[] => [
    w.count === undefined ? group(line(), extraWords[w.item]) : group(`${w.count} ${extraWords[w.item]}`),
    ...(w.item === "clips" ? [group(say.thickness, line())] : []),
  ]);
  return make(
    "p",
    { class: "slip__said slip__fill" },
    label(say.grease),
    ...(joint.grease === undefined ? [box(greaseWords.fitting), box(greaseWords.sealed)] : [greaseWords[joint.grease]]),
    label(say.extras),
    ...(wanted.length > 0 ? wanted : [say.noExtras]),
    group(label(say.part), line()),
    group(label(say.price), line()),
  );
}
