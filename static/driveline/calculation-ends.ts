// Joining two ends: what the identification core says of the two, the joints that fit both, and where none does, the
// chains of one joint and one changed yoke, in the core's order: those that leave most in place first.
import type * as core from "../matcher/index";
import type * as pieces from "../matcher/pieces";
import type { AnyChart } from "../matcher/prepared";
import type { Answer, Condition, Hold, Query, QueryEnd, Tool, Unit } from "../matcher/types";
import { conditions, holds, tools } from "../matcher/words";
import type { Finding, Kit, Line, Values } from "./description";
import type * as frame from "./frame";
import { inputs, word } from "./given";
import { ends as words, say } from "./speech-ends";
import type { Ground } from "./types";

declare const CapspanDriveline: typeof frame; // left by driveline.js
declare const CapspanCore: typeof core; // left by matcher.js
declare const CapspanPieces: typeof pieces; // left by pieces.js
declare const capspanInPieces: boolean; // put in by static/bundle.go

const readings = (text: string): string[] =>
  text
    .split(/;|,\s/)
    .map((one) => one.trim())
    .filter((one) => one !== "");

function endOf(values: Values, n: "1" | "2"): QueryEnd {
  const end: QueryEnd = { hold: word(values, `hold${n}`) as Hold };
  if (word(values, `taken${n}`) === "yoke") end.taken = "yoke";
  for (const key of ["cap", "across"] as const) end[key] = readings(word(values, `${key}${n}`));
  return end;
}

function queryOf(values: Values): Query {
  return {
    ends: [endOf(values, "1"), endOf(values, "2")],
    unit: word(values, "unit") as Unit,
    tool: word(values, "tool") as Tool,
    condition: word(values, "condition") as Condition,
  };
}

// The three parts ask the same; the core is asked once.
let last: { values: Values; chart: AnyChart; answer: Answer } | undefined;

function ask(values: Values, kit: Kit): Answer | null {
  const { chart } = kit.chart;
  if (chart === undefined) return null;
  if (last?.values !== values || last.chart !== chart)
    last = { values, chart, answer: CapspanCore.identify(chart, queryOf(values)) };
  if (capspanInPieces) last.answer.at ??= CapspanPieces.placesOf(chart, last.answer);
  return last.answer;
}

const id = (ref: string): string => ref.slice(ref.indexOf("/") + 1);

const ground = (basis: string): Ground[] => [
  { basis: basis === "measured" ? "published" : (basis as Ground["basis"]), source: "" },
];

// Where rows of a large chart have their pages.
function at(answer: Answer, refs: readonly string[]): Pick<Line, "at"> {
  return { at: Object.fromEntries(refs.map((ref) => [id(ref), answer.at?.[ref] ?? ""])) };
}

function each(values: Values, kit: Kit): Finding {
  const answer = ask(values, kit);
  if (answer === null) return { lines: [], says: [say.noChart] };
  const lines = answer.ends.map(
    (end, n): Omit<Line, "part"> => ({
      id: `end-${n + 1}`,
      label: say.end(n),
      value: end.rows.length === 0 ? say.none : "",
      unit: "",
      formula: end.says,
      source: [],
      rows: end.rows.map(id),
      ...(capspanInPieces ? at(answer, end.rows) : {}),
    }),
  );
  return { lines, says: [answer.says.head, ...answer.complaints.map((c) => c.says)] };
}

function joints(values: Values, kit: Kit): Finding {
  const answer = ask(values, kit);
  if (answer === null) return { lines: [] };
  const lines = answer.sizes.map(
    (size, n): Omit<Line, "part"> => ({
      id: `joint-${n + 1}`,
      label: say.joint(answer.verdict),
      value: "",
      unit: "",
      formula: size.because,
      source: ground(size.basis),
      rows: size.rows.map(id),
      ...(capspanInPieces ? at(answer, size.rows) : {}),
    }),
  );
  return { lines, says: lines.length === 0 ? [say.noJoint] : answer.says.next };
}

function chains(values: Values, kit: Kit): Finding {
  const answer = ask(values, kit);
  if (answer === null) return { lines: [] };
  const lines = answer.ways.map(
    (way, n): Omit<Line, "part"> => ({
      id: `way-${n + 1}`,
      label: say.way(n + 1),
      value: "",
      unit: "",
      formula: way.says,
      source: [],
      rows: [...new Set([way.joint, ...way.to].map(id))],
      ...(capspanInPieces ? at(answer, [...new Set([way.joint, ...way.to])]) : {}),
    }),
  );
  return { lines, says: [lines.length === 0 ? say.noWay(answer.sizes.length > 0) : say.shop] };
}

const one = inputs("one");
const two = inputs("two");
const bench = inputs("bench");
const known = holds.filter((hold) => hold !== "staked");

CapspanDriveline.add({
  name: "ends",
  words,
  example:
    "hold1=outside-clip&cap1=27.00%20mm&across1=81.80%20mm&hold2=outside-clip&cap2=34.90%20mm&across2=106.50%20mm",
  places: {},
  inputs: [
    one.choice("hold1", known),
    one.choice("taken1", ["joint", "yoke"]),
    one.text("cap1", 80),
    one.text("across1", 80),
    two.choice("hold2", known),
    two.choice("taken2", ["joint", "yoke"]),
    two.text("cap2", 80),
    two.text("across2", 80),
    bench.choice("unit", ["mm", "in"]),
    bench.choice("tool", [...tools]),
    bench.choice("condition", ["used", ...conditions.filter((c) => c !== "used")]),
  ],
  parts: [
    { id: "each", needs: ["cap1", "across1", "cap2", "across2"], reckon: each },
    { id: "joints", needs: ["cap1", "across1", "cap2", "across2"], reckon: joints },
    { id: "chains", needs: ["cap1", "across1", "cap2", "across2"], reckon: chains },
  ],
});
