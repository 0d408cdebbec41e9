// The picture of where the readings lie among the sizes round them, and the same as a table. Every mark can be
// reached by keyboard and tells its name and how far off it is; shapes and words tell the kinds apart, not colour.
import type { Answer, Quantity, Unit } from "../../matcher/types";
import { make } from "../identify/element";
import { bothUnits, difference, length, other } from "../identify/lengths";
import { endTitle, quantityWords } from "words:terms";
import { picture } from "./picture";
import { spotsOf, viewsOf, type Place, type Spot, type View } from "./places";
import { kindWords, words } from "words:neighbourhood";

/** One section for each end that can be set beside something. */
export function neighbourhood(answer: Answer, lead: Unit): HTMLElement[] {
  const spots = spotsOf(answer);
  return spots.map((spot) => {
    const name = spots.length > 1 ? `${words.title}: ${endTitle(spot.end).toLowerCase()}` : words.title;
    const views = viewsOf(spot);
    const told = make("p", { class: "hood__told" }, words.pick);
    const says = (place: Place | null) => tell(spot, place, lead);
    return make(
      "section",
      { class: "verdict-part hood", "data-hood": "" },
      make("h2", {}, name),
      make("p", { class: "hint" }, words.about),
      make(
        "div",
        { class: "hood__pictures" },
        ...views.map((view, n) => {
          const title = views.length > 1 ? (n === 0 ? words.close : words.around) : null;
          const label = title ? `${name}, ${title.toLowerCase()}` : name;
          return make(
            "figure",
            { class: "figure hood__figure-box" },
            title && make("p", { class: "label" }, title),
            picture({ spot, view, lead, label, says, told: (text) => told.replaceChildren(text) }),
            make("figcaption", {}, caption(view, lead)),
          );
        }),
      ),
      told,
      make(
        "details",
        { class: "byhand" },
        make("summary", { class: "byhand__summary" }, words.table),
        table(spot, lead),
      ),
    );
  });
}

function caption(view: View, lead: Unit): string {
  const both = (half = 0) => `${length(2 * half, lead)} (≈ ${length(2 * half, other(lead))})`;
  const { cap, across } = view;
  return across === undefined ? words.scale(both(cap), "") : words.scale(both(across), cap ? both(cap) : "");
}

// "1330, not matching: cap 0.0003 in (≈ 0.01 mm) larger than yours, across ..."
function tell(spot: Spot, place: Place | null, lead: Unit): string {
  const both = (mm: number) => `${length(mm, lead)} (≈ ${length(mm, other(lead))})`;
  const each = (say: (q: Quantity) => string) => spot.quantities.map((q) => `${quantityWords[q]} ${say(q)}`).join(", ");
  if (!place) {
    return `${words.you}: ${each((q) => `${both(spot.read[q]?.value ?? 0)} ± ${both(spot.read[q]?.uncertainty ?? 0)}`)}.`;
  }
  const off = each((q) => {
    const chart = -(place.at[q]?.difference ?? 0);
    if (Math.abs(chart) < 0.005) return words.same;
    return `${both(Math.abs(chart))} ${chart > 0 ? words.larger : words.smaller}`;
  });
  return `${place.names.join(" = ")}, ${kindWords[place.kind]}: ${off}.`;
}

function table(spot: Spot, lead: Unit): HTMLElement {
  const head = (title: string, kind = "") => make("th", { scope: "col", class: kind }, title);
  const rows = spot.places.map((place) =>
    make(
      "tr",
      {},
      make("th", { scope: "row" }, place.names.join(" = "), make("span", { class: "note" }, kindWords[place.kind])),
      ...spot.quantities.flatMap((q) => {
        const c = place.at[q];
        return c ? [bothUnits(c.chart, lead, undefined, c.chartText), bothUnits(c.difference, lead, difference)] : [];
      }),
    ),
  );
  return make(
    "div",
    { class: "scroll", role: "region", tabindex: "0", "aria-label": words.caption },
    make(
      "table",
      { class: "compare" },
      make("caption", {}, words.caption),
      make(
        "thead",
        {},
        make(
          "tr",
          {},
          head(words.size),
          ...spot.quantities.flatMap((q) => [
            head(`${quantityWords[q]}, ${words.chart}`, "num"),
            head(`${quantityWords[q]}, ${words.offBy}`, "num"),
          ]),
        ),
      ),
      make("tbody", {}, ...rows),
    ),
  );
}
