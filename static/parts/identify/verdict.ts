// The verdict: a stamp and one sentence, then the reasons, the numbers, and what to do. Never a bare list: every
// size says why it is here, every near row says that it does not match.
import type { Answer, SlipFound, Unit } from "../../matcher/types";
import type { Drawings } from "./drawings";
import { make, part } from "./element";
import { drawn } from "./late";
import { type State, toQuery } from "./state";
import { slips, ways } from "./verdict-doubts";
import { because, caution, ends, next, readings, stamp } from "./verdict-parts";
import { otherSizes, rowsAt, rowsOf, sizes, titled } from "./verdict-sizes";
import { words } from "words:identify";
import { verdictWords } from "words:terms";
import { showWaiting } from "../pieces/verdict";

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
  let rows = rowsOf(site);

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
      if (capspanInPieces && showWaiting(section, head, body)) return;
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
      if (capspanInPieces) rows = rowsAt(site, answer.at);
      body.replaceChildren(...parts(answer, lead));
      options.drawings.fill(body);
    },
  };
}
