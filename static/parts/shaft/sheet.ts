// The sheet of a record for the wall of the workshop: one page. The figures are those that stood on the pages when they
// were kept; where a calculation has more lines than there is room for, the sheet says so.
import type { JointFacts } from "../../order/facts";
import { lineOf, measured } from "../../order/figures";
import { leadOf } from "../../order/texts";
import type { KeptCalculation, ShaftJoint, ShaftRecord } from "../../shaft/record";
import { make } from "../identify/element";
import { qrPicture } from "../send/picture";
import { slipJoint } from "./joints";
import { sheetWords as say } from "words:shaft";
import { slipWords, standing } from "words:order";

/** How much one page holds, counted in lines of one of its two columns of results: the page without its head and foot,
 *  what a joint takes of it, what a calculation takes beside its figures, and what a figure and a limit take. A line of
 *  words across the page takes two. */
const room = { page: 140, joint: 24, result: 4, line: 1.3, limit: 2.3, letters: 100 };

/** How many of those lines each calculation has for its figures. */
function roomFor(record: ShaftRecord): number {
  const words = [
    record.notes ?? "",
    record.figures.map((f) => `${f.label}: ${f.value}`).join(" · "),
    ...record.joints.map((j) => j.note ?? ""),
  ];
  const across = words.reduce((sum, text) => sum + Math.ceil(text.length / room.letters), 0);
  const left = room.page - room.joint * record.joints.length - 2 * across;
  return left / Math.max(1, record.calculations.length) - room.result;
}

export interface SheetOptions {
  facts: (JointFacts | null)[];
  version: string;
  address: (joint: ShaftJoint) => string | undefined; // full, for the code
}

export function recordSheet(record: ShaftRecord, options: SheetOptions): HTMLElement[] {
  const field = (label: string, text: string | undefined): HTMLElement =>
    make("div", {}, make("dt", {}, label), make("dd", {}, text || make("span", { class: "slip__line" })));
  const each = roomFor(record);
  return [
    make("h2", { class: "slip__title" }, record.title),
    make(
      "dl",
      { class: "slip__who" },
      field(say.job, record.job),
      field(say.by, record.by),
      field(say.date, record.date),
      field(say.chart, record.chart ?? options.version),
    ),
    ...record.joints.map((joint, n) => jointLine(joint, n, options)),
    ...figures(record),
    make("div", { class: "sheet__results" }, ...record.calculations.map((c) => result(c, each))),
    ...(record.notes === undefined
      ? []
      : [make("p", { class: "sheet__notes" }, make("span", { class: "slip__label" }, say.notes), " ", record.notes)]),
    make("p", { class: "slip__foot" }, make("strong", {}, say.notChecked), ` ${say.cautions}`),
  ];
}

function jointLine(joint: ShaftJoint, n: number, options: SheetOptions): HTMLElement {
  const facts = options.facts[n] ?? null;
  const address = options.address(joint);
  const picture = address === undefined ? null : qrPicture(address, slipWords.qr(n));
  const names = facts === null ? (joint.found?.names ?? []) : facts.sizes.flatMap((s) => s.names);
  const settled = facts?.settled ?? joint.found?.settled;
  const size = facts?.sizes.length === 1 ? facts.sizes[0]?.row : undefined;
  const lead = leadOf(slipJoint(joint));
  const said = (label: string, text: string | undefined): HTMLElement | null =>
    text === undefined || text === ""
      ? null
      : make("p", { class: "slip__said" }, make("span", { class: "slip__label" }, label), ` ${text}`);
  return make(
    "section",
    { class: "slip__joint" },
    make(
      "h3",
      { class: "slip__head" },
      [say.joint(n), joint.place, names.join(", ")].filter((t) => t !== undefined && t !== "").join(" · "),
    ),
    picture !== null && make("figure", { class: "slip__qr" }, picture),
    settled !== undefined && make("p", { class: "slip__standing" }, `${standing[settled]}.`),
    said(slipWords.chart, size === undefined ? undefined : lineOf(size)),
    said(
      slipWords.measured,
      facts?.measured
        .filter((m) => m.estimate.quantity !== "clip")
        .map((m) => `${m.estimate.quantity === "cap" ? slipWords.cap : slipWords.across} ${measured(m.estimate, lead)}`)
        .join("; "),
    ),
    make(
      "p",
      { class: "slip__said slip__fill" },
      make("span", { class: "slip__label" }, say.clips),
      joint.clips ?? make("span", { class: "slip__line" }),
    ),
    said(say.note, joint.note),
  );
}

function figures(record: ShaftRecord): HTMLElement[] {
  if (record.figures.length === 0) return [];
  return [
    make(
      "p",
      { class: "slip__said" },
      make("span", { class: "slip__label" }, say.figures),
      ` ${record.figures.map((f) => `${f.label}: ${f.value}`).join(" · ")}`,
    ),
  ];
}

function result(kept: KeptCalculation, space: number): HTMLElement {
  const lines = kept.lines.map((l) => {
    const value = l.unit === "°" ? `${l.value}°` : [l.value, l.unit].join(" ").trim();
    return { takes: room.line, text: `${l.label}: ${value}${l.also ? ` (${l.also})` : ""}` };
  });
  const limits = kept.limits.map((l) => {
    const stands = l.stands.map((s) => [s.of, s.value, s.met].filter((t) => t !== "").join(" ")).join(", ");
    return { takes: room.limit, text: `${l.of}, ${l.limit}: ${stands} [${l.source.join("; ")}]` };
  });
  const all = [...lines, ...limits];
  let taken = 0;
  const shown = all.filter(({ takes }, n) => {
    taken += takes;
    return n < 2 || taken <= space;
  });
  const left = all.length - shown.length;
  const unchecked = space > 8 ? 3 : 1;
  return make(
    "section",
    { class: "sheet__result" },
    make("h3", { class: "slip__head" }, kept.title),
    make("ul", {}, ...shown.map(({ text }) => make("li", {}, text))),
    left > 0 && make("p", { class: "slip__said" }, say.more(left)),
    kept.unchecked.length > 0 &&
      make(
        "p",
        { class: "slip__said" },
        `${slipWords.notChecked}: ${kept.unchecked.slice(0, unchecked).join(" ")}`,
        kept.unchecked.length > unchecked ? say.moreUnchecked(kept.unchecked.length - unchecked) : "",
      ),
  );
}
