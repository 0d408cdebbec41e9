// How long a shaft is, how much it slides, and where to cut its tube.
import type { Finding, Kit, Values } from "./description";
import type * as frame from "./frame";
import { inputs, num } from "./given";
import * as ranges from "./given-ranges";
import { lengthOverTravel, overlapRules, shaftLength } from "./length";
import { length as words, say } from "./speech-length";

declare const CapspanDriveline: typeof frame; // left by driveline.js

function cut(values: Values, kit: Kit): Finding {
  const found = kit.take(
    shaftLength({
      between: num(values, "between"),
      drivingFace: num(values, "drivingface"),
      drivenFace: num(values, "drivenface"),
      drivingYoke: num(values, "drivingyoke"),
      drivenYoke: num(values, "drivenyoke"),
      slip: num(values, "slip"),
      out: num(values, "out"),
      root: num(values, "root"),
    }),
  );
  const line = (id: string, label: string, value: number) => kit.line(id, label, "length", value, "joint-centres", 1);
  return {
    lines: [
      line("centres", say.centres, found.centres),
      line("cut", say.cut, found.cut),
      line("closed", say.closed, found.closed),
      line("open", say.open, found.open),
      line("in", say.inward, found.in),
      line("out-left", say.outward, found.outLeft),
    ],
    limits: num(values, "slip") > 0 ? found.stands.map((s) => kit.span(say.slipOut, "length", found.in, s, 1)) : [],
  };
}

function travel(values: Values, kit: Kit): Finding {
  const found = kit.take(
    lengthOverTravel({
      run: num(values, "run"),
      offset: num(values, "offset"),
      heights: ["stands", "bump", "droop"].map((id) => num(values, id)),
      ahead: [0, num(values, "bumpahead"), num(values, "droopahead")],
    }),
  );
  const position = ["stands", "bump", "droop"] as const;
  return {
    lines: [
      ...position.map((id, n) =>
        kit.line(`length-${id}`, say.lengthAt[id], "length", found.lengths[n] ?? Number.NaN, "length-over-travel", 1),
      ),
      ...position.map((id, n) =>
        kit.line(`slope-${id}`, say.slopeAt[id], "angle", found.inclinations[n] ?? Number.NaN, "length-over-travel"),
      ),
      kit.line("change", say.change, "length", found.change, "length-over-travel", 1),
      kit.line("inward", say.shorter, "length", found.inward, "length-over-travel", 1),
      kit.line("outward", say.longer, "length", found.outward, "length-over-travel", 1),
    ],
    says: [say.ends],
  };
}

function overlap(values: Values, kit: Kit): Finding {
  const tube = num(values, "tube");
  const stands = {
    overlapWorking: num(values, "working"),
    overlapLeast: num(values, "least"),
    leftLeast: num(values, "left"),
  };
  const found = kit.take(overlapRules({ tube, ...stands }));
  return {
    lines: [
      kit.line("share", say.share, "share", found.share, "overlap", 0),
      kit.line("share-least", say.shareLeast, "share", found.shareLeast, "overlap", 0),
    ],
    limits: found.rules.flatMap((rule) =>
      rule.of === "angle" ? [] : [kit.span(say.overlapOf[rule.of], "length", stands[rule.of], rule, 0)],
    ),
    says: found.rules.filter((r) => r.of === "angle").map((r) => say.angleRule(kit.says(r.says), kit.ground(r))),
  };
}

const shaft = inputs("shaft");
const axle = inputs("axle");
const pto = inputs("pto");
const lengths = ["mm", "in"];

CapspanDriveline.add({
  name: "length",
  words,
  example:
    "between=1520mm&drivingface=35mm&drivenface=35mm&drivingyoke=45mm&drivenyoke=180mm&slip=110mm&out=36mm&root=2mm&run=1300mm&stands=150mm&bump=90mm&droop=250mm&droopahead=-6mm&bumpahead=4mm",
  places: {
    between: "between",
    drivingFace: "drivingface",
    drivenFace: "drivenface",
    drivingYoke: "drivingyoke",
    drivenYoke: "drivenyoke",
    slip: "slip",
    out: "out",
    run: "run",
    ahead: "bumpahead",
    heights: "stands",
    overlapWorking: "working",
    overlapLeast: "least",
    tube: "tube",
  },
  inputs: [
    shaft.number("between", "length", ranges.length, lengths),
    shaft.number("drivingface", "length", ranges.yokeLength, lengths, { preset: "0" }),
    shaft.number("drivenface", "length", ranges.yokeLength, lengths, { preset: "0" }),
    shaft.number("drivingyoke", "length", ranges.yokeLength, lengths),
    shaft.number("drivenyoke", "length", ranges.yokeLength, lengths),
    shaft.number("slip", "length", ranges.slip, lengths, { preset: "0" }),
    shaft.number("out", "length", ranges.slip, lengths, { preset: "0" }),
    shaft.number("root", "length", ranges.gap, lengths, { preset: "0" }),
    axle.number("run", "length", ranges.run, lengths),
    axle.number("offset", "length", ranges.rise, lengths, { preset: "0" }),
    axle.number("stands", "length", ranges.height, lengths),
    axle.number("bump", "length", ranges.height, lengths),
    axle.number("droop", "length", ranges.height, lengths),
    axle.number("bumpahead", "length", ranges.height, lengths, { preset: "0" }),
    axle.number("droopahead", "length", ranges.height, lengths, { preset: "0" }),
    pto.number("tube", "length", ranges.length, lengths, { optional: true }),
    pto.number("working", "length", ranges.slip, lengths, { optional: true }),
    pto.number("least", "length", ranges.slip, lengths, { optional: true }),
    pto.number("left", "length", ranges.slip, lengths, { optional: true }),
  ],
  parts: [
    {
      id: "cut",
      needs: ["between", "drivingface", "drivenface", "drivingyoke", "drivenyoke", "slip", "out", "root"],
      reckon: cut,
    },
    { id: "travel", needs: ["run", "offset", "stands", "bump", "droop", "bumpahead", "droopahead"], reckon: travel },
    { id: "overlap", needs: ["tube", "working", "least", "left"], reckon: overlap },
  ],
});
