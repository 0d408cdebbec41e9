// The verdict: a stamp and one sentence, then the reasons, the numbers, and what to do. Never a bare list: every
// size says why it is here, every near row says that it does not match.
import { local } from "../../matcher/speech-number";
import type { Answer, SlipFound, Unit } from "../../matcher/types";
import type { Drawings } from "./drawings";
import { make, part } from "./element";
import { drawn } from "./late";
import { type State, toQuery } from "./state";
import { slips, ways } from "./verdict-doubts";
import { otherSizes, rowsOf, sizes, titled, type Rows } from "./verdict-sizes";
import { words } from "words:identify";
import { endTitle, quantityWords, verdictWords } from "words:terms";

export interface VerdictPart {
  show(answer: Answer | null, lead: Unit): void;
}

export interface VerdictOptions {
  root: HTMLElement;
  site: string; // where the site lies, with both slashes
  drawings: Drawings;
  state: () => State;
  again: (slip: SlipFound) => void; // measure again what the slip names
}

export function verdictPart(options: VerdictOptions): VerdictPart {
  const { root, site } = options;
  const section = part(root, "verdict");
  const head = part(section, "verdict-head");
  const body = part(section, "verdict-body");
  const pin = part<HTMLButtonElement>(root, "pin");
  pin.addEventListener("click", () => {
    section.scrollIntoView({ block: "start" });
    section.focus({ preventScroll: true });
  });
  const rows = rowsOf(site);

  function parts(answer: Answer, lead: Unit): HTMLElement[] {
    const list: (HTMLElement | null)[] = [
      slips(answer, options),
      because(answer),
      next(answer, rows),
      sizes(answer, lead, rows),
      enquiry(answer),
      ends(answer, rows),
      ways(answer, rows),
      ...(drawn()?.neighbourhood(answer, lead) ?? []),
      answer.conversions.length ? titled(words.conversions, rows(answer.conversions)) : null,
      otherSizes(words.sameFigures, answer.sameFigures, rows, words.sameFiguresAbout),
      otherSizes(answer.sizes.length ? words.nearMatched : words.near, answer.near, rows),
      readings(answer),
      drawn()?.driveline(answer, options.state(), site) ?? null,
      caution(answer),
    ];
    return list.filter((p) => p !== null);
  }

  // A size that is named can be asked for at a counter.
  function enquiry(answer: Answer): HTMLElement | null {
    if (answer.sizes.length !== 1) return null;
    const href = `${site}order/#${CapspanCore.encodeAddress(toQuery(options.state()), answer.chart.version)}`;
    return make("p", {}, make("a", { class: "btn btn--plain", href }, words.enquiry));
  }

  return {
    show(answer, lead) {
      pin.hidden = answer === null;
      if (answer === null) {
        head.replaceChildren(stamp(null, words.waiting, words.start));
        body.replaceChildren(make("p", { class: "hint" }, words.startMore));
        return;
      }
      // Setting the same words again would make a screen reader say them again.
      const stamped = stamp(answer.verdict, verdictWords[answer.verdict], answer.says.head);
      if (stamped.textContent !== head.textContent || !head.querySelector(`.verdict--${answer.verdict}`)) {
        head.replaceChildren(stamped);
      }
      pin.replaceChildren(
        make("span", { class: "pin__stamp" }, `${verdictWords[answer.verdict]} · ${words.toDetails}`),
        answer.says.head,
      );
      body.replaceChildren(...parts(answer, lead));
      options.drawings.fill(body);
    },
  };
}

function stamp(verdict: Answer["verdict"] | null, word: string, sentence: string): HTMLElement {
  return make(
    "div",
    { class: verdict ? `verdict verdict--${verdict}` : "verdict" },
    make("p", { class: "verdict__stamp" }, word),
    make("p", { class: "verdict__head" }, sentence),
  );
}

// What a slip says stands above, beside its button.
function because(answer: Answer): HTMLElement | null {
  const says = answer.says.because.filter((s) => !answer.slips.some((slip) => slip.says === s));
  return says.length === 0 ? null : titled(words.because, make("ul", {}, ...says.map((s) => make("li", {}, s))));
}

// What parts the sizes left comes first, with the way to their rows.
function next(answer: Answer, rows: Rows): HTMLElement | null {
  const told = [...answer.slips.map((s) => s.next), ...answer.tellApart.map((t) => t.says)];
  const steps = [
    ...answer.tellApart.map((t) => make("li", {}, t.says, rows(t.between))),
    ...answer.says.next.filter((s) => !told.includes(s)).map((s) => make("li", {}, s)),
  ];
  return steps.length === 0 ? null : titled(words.next, make("ol", {}, ...steps));
}

function ends(answer: Answer, rows: Rows): HTMLElement | null {
  if (answer.ends.length < 2) return null;
  return titled(
    words.ends,
    ...answer.ends.map((end, n) =>
      make(
        "div",
        { class: "size" },
        make("p", { class: "label" }, endTitle(n)),
        make("p", {}, end.says),
        end.rows.length ? rows(end.rows) : null,
      ),
    ),
  );
}

function readings(answer: Answer): HTMLElement | null {
  if (answer.readings.length === 0) return null;
  const items = answer.readings.map((r) => {
    const title = `${answer.readings.some((o) => o.end > 0) ? `${endTitle(r.end)}, ` : ""}${quantityWords[r.quantity]}`;
    return make(
      "li",
      {},
      make("strong", {}, `${title}: `),
      `${words.used} ${local(r.used.join(", "))}. `,
      ...r.setAside.flatMap((text) => [make("s", { class: "off" }, local(text)), ` ${words.setAside}. `]),
      r.why,
    );
  });
  return titled(words.readings, make("ul", {}, ...items));
}

function caution(answer: Answer): HTMLElement | null {
  if (answer.verdict === "measure-again") return null;
  const recalled = answer.sizes.some((s) => s.basis === "memory");
  return make(
    "div",
    { class: "caution", role: "note" },
    make("p", {}, make("strong", {}, words.cautionTitle), ` ${words.caution}`),
    recalled && make("p", {}, words.cautionMemory),
    make("p", {}, words.cautionFit),
  );
}
