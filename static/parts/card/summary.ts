// The card's last step: what was taken, what the core has against it, and the one link that carries all of it. Markup:
// templates/card.html.
import { local } from "../../matcher/speech-number";
import type { Chart } from "../../matcher/types";
import { make, part } from "../identify/element";
import { deliverPart } from "../send/deliver";
import { queryOf, readingsOf, type Card } from "./state";
import { words } from "words:card";

// Readings are checked for sense by the core without a chart: the verdict is for the page that opens the link.
const noChart: Chart = { format: 1, version: "", rows: [] };

/** complaintOf is what the core has against one reading, null when it is understood. */
export function complaintOf(text: string, quantity: "cap" | "across", card: Card): string | null {
  const { complaints } = CapspanCore.identify(noChart, {
    ends: [{ hold: "unknown", [quantity]: [text] }],
    unit: card.unit,
  });
  return complaints.find((c) => c.quantity === quantity)?.says ?? null;
}

export interface SummaryPart {
  show(card: Card): void;
}

export function summaryPart(root: HTMLElement): SummaryPart {
  const list = part(root, "summary");
  const remarks = part(root, "remarks");
  const deliver = deliverPart(root);
  return {
    show(card) {
      const ends = card.ends.length;
      list.replaceChildren(
        ...card.request.ends.flatMap((asked, n) =>
          asked.take.map((quantity) => {
            const end = card.ends[n];
            return make(
              "li",
              {},
              words.summary(quantity, n, ends, end ? readingsOf(end, quantity).map((t) => said(t, card)) : []),
            );
          }),
        ),
      );
      const query = queryOf(card);
      const { complaints } = CapspanCore.identify(noChart, query);
      const taken = card.ends.some((end) => readingsOf(end, "cap").length + readingsOf(end, "across").length > 0);
      const says = taken ? complaints.map((c) => c.says) : [words.nothing];
      remarks.replaceChildren(
        ...(says.length > 0
          ? [make("p", { class: "label" }, words.check), make("ul", {}, ...says.map((s) => make("li", {}, s)))]
          : []),
      );
      const page = new URL(root.dataset.identify ?? "", location.href).href;
      deliver.show({
        link: `${page}#${CapspanCore.seal(CapspanCore.encodeAddress(query, root.dataset.version))}`,
        subject: words.subject,
        message: words.message,
        mail: root.dataset.mail,
        dial: root.dataset.dial,
      });
    },
  };
}

/** A reading in its canonical form, with its unit and the decimal sign of the language. */
function said(text: string, card: Card): string {
  const reading = CapspanCore.parseReading(text, card.unit);
  return reading.ok ? local(reading.text) : text;
}
