// The verdict in <joint-finder>: all that the identify page says, without its pictures.
import type { Answer, Unit } from "../../matcher/types";
import { make, part } from "../identify/element";
import { toQuery } from "../identify/state";
import type { VerdictOptions, VerdictPart } from "../identify/verdict";
import { slips } from "../identify/verdict-doubts";
import { because, caution, next, readings, stamp } from "../identify/verdict-parts";
import { otherSizes, rowsAt, rowsOf, sizes, titled } from "../identify/verdict-sizes";
import type { Asker } from "../pieces/ask";
import { showWaiting } from "../pieces/verdict";
import { words } from "words:identify";
import { verdictWords } from "words:terms";

export function verdictPart(options: VerdictOptions & { asks?: Asker | undefined }): VerdictPart {
  const { root, site } = options;
  const head = part(root, "verdict-head");
  const body = part(root, "verdict-body");
  let rows = rowsOf(site);

  function parts(answer: Answer, lead: Unit): HTMLElement[] {
    const list: (HTMLElement | null)[] = [
      slips(answer, options),
      because(answer),
      next(answer, rows),
      sizes(answer, lead, rows),
      enquiry(answer),
      answer.conversions.length ? titled(words.conversions, rows(answer.conversions)) : null,
      otherSizes(words.sameFigures, answer.sameFigures, rows, words.sameFiguresAbout),
      otherSizes(answer.sizes.length ? words.nearMatched : words.near, answer.near, rows),
      readings(answer),
      caution(answer),
    ];
    return list.filter((p) => p !== null);
  }

  function enquiry(answer: Answer): HTMLElement | null {
    if (answer.sizes.length !== 1) return null;
    const href = `${site}order/#${CapspanCore.encodeAddress(toQuery(options.state()), answer.chart.version)}`;
    return make("p", {}, make("a", { class: "btn btn--plain", href }, words.enquiry));
  }

  return {
    show(answer, lead) {
      if (capspanInPieces) {
        const section = head.parentElement ?? root;
        section.tabIndex = -1; // where the focus goes when a button of the waiting is used up
        if (showWaiting(section, head, body, options.asks)) return;
        rows = rowsAt(site, answer?.at);
      }
      const stamped = answer
        ? stamp(answer.verdict, verdictWords[answer.verdict], answer.says.head)
        : stamp(null, words.waiting, words.start);
      // Setting the same words again would make a screen reader say them again.
      if (stamped.textContent !== head.textContent) head.replaceChildren(stamped);
      body.replaceChildren(...(answer ? parts(answer, lead) : [make("p", { class: "hint" }, words.startMore)]));
    },
  };
}
