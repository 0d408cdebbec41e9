// What stands between the readings and an order: slips that would explain them, and the ways out when no joint joins
// two ends. The sentences are the core's.
import type { Answer, Faces, SlipFound } from "../../matcher/types";
import { make } from "./element";
import type { EndState } from "./state";
import type { VerdictOptions } from "./verdict";
import { titled, type Rows } from "./verdict-sizes";
import { words } from "words:identify";

export function slips(answer: Answer, options: VerdictOptions): HTMLElement | null {
  if (answer.slips.length === 0) return null;
  return titled(
    words.slips,
    make("p", { class: "hint" }, words.slipsAbout),
    ...answer.slips.map((slip) => slipCard(slip, options)),
  );
}

function slipCard(slip: SlipFound, options: VerdictOptions): HTMLElement {
  const button = make(
    "button",
    { type: "button", class: "btn btn--main", "data-again": slip.slip },
    words.startAgain(slip.look),
  );
  button.addEventListener("click", () => options.again(slip));
  const sheet = drawingOf(slip, options);
  return make(
    "article",
    { class: "size slip", "data-slip": slip.slip },
    make("p", { class: "slip__says" }, slip.says),
    make("p", {}, slip.next),
    sheet && make("figure", { class: "figure" }, sheet),
    make(
      "p",
      { class: "row" },
      button,
      slip.guide &&
        make("a", { class: "btn btn--plain btn--main", href: options.site + slip.guide.slice(1) }, words.showHow),
    ),
  );
}

// Where the jaws should go, when that is what the slip is about.
function drawingOf(slip: SlipFound, options: VerdictOptions): SVGElement | null {
  const end = options.state().ends[slip.end];
  if (slip.look !== "across" || end?.taken !== "joint") return null;
  return options.drawings.sheet(facesSheet(end));
}

function facesSheet(end: EndState): string {
  const hold = end.hold ?? "unknown";
  const faces: Faces = CapspanCore.facesFor(hold)[0] ?? "unknown";
  return `faces-${hold}-${faces}`;
}

export function ways(answer: Answer, rows: Rows): HTMLElement | null {
  if (answer.ways.length === 0) return null;
  return titled(
    words.ways,
    make("p", { class: "hint" }, words.waysAbout),
    make(
      "ol",
      { class: "outs" },
      ...answer.ways.map((way) =>
        make(
          "li",
          { class: "size" },
          make("p", {}, way.says),
          make("p", { class: "label" }, words.wayJoint),
          rows([way.joint]),
          way.to.length > 0 && make("p", { class: "label" }, words.wayTo(way.change)),
          way.to.length > 0 && rows(way.to),
        ),
      ),
    ),
  );
}
