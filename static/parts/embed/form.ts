// The form and the verdict of <joint-finder>: the parts of the identify page, in a shadow root. It runs behind the core
// in one script (build/embed.go), which hands over what this file exports. Markup: templates/embed.html.
//
// It asks for one joint of like ends. Bare yokes and joints whose ends differ are for the full page, to which every
// state has a link.
import type { Answer, Chart, Hold, Query, Unit } from "../../matcher/types";
import { again } from "../identify/again";
import type { Drawings } from "../identify/drawings";
import { part } from "../identify/element";
import { endPart, type EndPart } from "../identify/end";
import { settingsPart } from "../identify/settings";
import { emptyState, hasReadings, toQuery } from "../identify/state";
import { type Asker, asker } from "../pieces/ask";
import { type PiecedChart, take as takePieces } from "../pieces/held";
import type { Edition } from "./edition";
import { verdictPart } from "./verdict";
import { words } from "words:embed";
import { holdWords } from "words:terms";

declare const capspanMarkup: string; // written in front by build/embed.go
declare const capspanSheet: string;

/** What the event tells. `answer` is null while there are no readings, and while pieces of a large chart are missing. */
export interface Answered {
  answer: Answer | null;
  query: Query;
  address: string; // of the full page, with these readings in it
  whole: boolean; // false: known slips of measuring could not be looked for
}

export interface FormOptions {
  root: ShadowRoot;
  chart: unknown;
  edition: Edition;
  unit: string;
  hold: string;
  answered: (detail: Answered) => void;
}

export interface Form {
  set(attributes: { unit?: string; hold?: string }): void;
}

// The drawings of the identify page weigh more than the form; the words beside them say the same.
const noDrawings: Drawings = { fill() {}, sheet: () => null };

/** learn gives the core its late part, which wants the core by its name. */
export function learn(late: unknown): void {
  (late as (core: typeof CapspanCore) => void)(CapspanCore);
}

export function openForm(options: FormOptions): Form {
  const { root, edition, answered } = options;
  const chart = options.chart as Chart | PiecedChart;
  // Code that a page has pinned may be older than the chart.
  if (capspanInPieces ? chart.format !== 3 : chart.format !== 1 || !Array.isArray(chart.rows))
    throw new Error("another format");
  let asks: Asker | undefined; // another finder in the same page asks by itself
  if (capspanInPieces) {
    takePieces(chart as PiecedChart, edition.pieces ?? "");
    asks = asker();
  }
  dress(root);
  const finder = part(root, "finder");
  finder.lang = edition.language;
  finder.dir = edition.direction;
  const note = part(root, "note");
  const full = part<HTMLAnchorElement>(root, "full");
  const template = part<HTMLTemplateElement>(root, "end-template");
  part(root, "version").textContent = words.chart(chart.version);
  let state = emptyState();
  let end: EndPart;
  let partMissing = false;

  const settings = settingsPart(
    finder,
    () => state,
    () => changed(""),
  );
  const verdict = verdictPart({
    root: finder,
    site: edition.site,
    ...(capspanInPieces ? { asks } : {}),
    drawings: noDrawings,
    state: () => state,
    again(slip) {
      const own = state.ends[0];
      if (!own) return;
      changed(again(own, slip.look));
      if (slip.look === "unit") settings.focusUnit();
      else end.focus(slip.look);
    },
  });

  function show(): Answered {
    const query = toQuery(state);
    if (capspanInPieces && !hasReadings(state)) asks?.forget();
    const answer = !hasReadings(state)
      ? null
      : capspanInPieces && asks
        ? asks.answer(chart, query, () => {
            const now = show(); // the late part may still be on its way
            if (now.whole || now.answer === null || partMissing) answered(now);
          })
        : CapspanCore.identify(chart, query);
    const address = `${edition.site}identify/#${CapspanCore.encodeAddress(query, chart.version)}`;
    end.show(answer);
    settings.show();
    verdict.show(answer, state.unit);
    full.href = address;
    for (const link of finder.querySelectorAll("a")) {
      link.target = "_top"; // out of a frame too
      link.rel = "noopener";
    }
    return { answer, query, address, whole: CapspanCore.learned() !== undefined };
  }

  // An answer is told when it is whole: before slips have been looked for it may be another.
  function changed(said: string): void {
    note.textContent = said;
    const now = show();
    if (now.whole || now.answer === null) {
      answered(now);
      if (!capspanInPieces || now.whole || !hasReadings(state)) return;
    }
    void edition.late().then((came) => {
      partMissing = !came;
      if (partMissing) note.textContent = words.partMissing;
      answered(show());
    });
  }

  function rebuild(): void {
    end = endPart({ template, drawings: noDrawings, end: 0, state: () => state, complaint, changed, removed() {} });
    part(root, "ends").replaceChildren(end.section);
  }

  function complaint(reading: string): string | null {
    const read = CapspanCore.parseReading(reading, state.unit);
    return read.ok ? null : read.says;
  }

  function take({ unit, hold }: { unit?: string; hold?: string }): void {
    if (unit === "in" || unit === "mm") state.unit = unit as Unit;
    const own = state.ends[0];
    if (own && hold !== undefined && Object.keys(holdWords).includes(hold)) {
      own.hold = hold as Hold;
      delete own.faces; // faces of another hold would make no sense
    }
  }

  part(root, "form").addEventListener("submit", (event) => event.preventDefault());
  part(root, "over").addEventListener("click", () => {
    const { unit, tool, condition } = state; // the bench stays the same
    state = { ...emptyState(), unit, tool, condition };
    rebuild();
    changed(words.startedOver);
    end.focus("hold");
  });
  rebuild();
  take(options);
  show();
  return {
    set(attributes) {
      take(attributes);
      changed("");
    },
  };
}

// Markup of our own, from the build; a page that wants trusted types lets a policy of this name make it.
interface Maker {
  createHTML(markup: string): string;
}

let maker: Maker | undefined;
let sheet: CSSStyleSheet | undefined;

/** Puts the markup and the style sheet into the root. A constructed sheet is no inline style, so a policy without
 *  'unsafe-inline' lets it be; where a browser cannot make one, an element does it if the page allows. */
function dress(root: ShadowRoot): void {
  const types = (window as unknown as { trustedTypes?: { createPolicy(name: string, rules: Maker): Maker } })
    .trustedTypes;
  maker ??= types?.createPolicy("joint-finder-form", { createHTML: () => capspanMarkup }) ?? {
    createHTML: () => capspanMarkup,
  };
  root.innerHTML = maker.createHTML("");
  if ("adoptedStyleSheets" in root && "replaceSync" in CSSStyleSheet.prototype) {
    if (!sheet) {
      sheet = new CSSStyleSheet();
      sheet.replaceSync(capspanSheet);
    }
    root.adoptedStyleSheets = [sheet];
  } else {
    const style = document.createElement("style");
    style.textContent = capspanSheet;
    (root as ShadowRoot).append(style);
  }
}
