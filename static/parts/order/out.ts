// The ways a slip leaves the page: as a link, a text message, a mail, a file for programs, and on paper. Nothing is sent
// from here.
import { encodeSlip, longestLink } from "../../order/address";
import { enquiryDocument } from "../../order/document";
import type { JointFacts } from "../../order/facts";
import type { Slip, SlipJoint } from "../../order/slip";
import { mailSubject, mailText, textMessage } from "../../order/texts";
import { part } from "../identify/element";
import { deliverPart } from "../send/deliver";
import { saveFile } from "./file";
import { words } from "words:order";

export interface OutOptions {
  page: string; // full address of the page, without a fragment
  schema: string;
  version: string;
  back(joint: SlipJoint): string | undefined;
}

export interface OutPart {
  show(slip: Slip, facts: JointFacts[]): void;
}

export function outPart(root: HTMLElement, options: OutOptions): OutPart {
  const section = part(root, "out");
  const ready = part(section, "ready-link");
  const long = part(section, "too-long");
  const message = part<HTMLTextAreaElement>(section, "as-message");
  const mail = part<HTMLTextAreaElement>(section, "as-mail");
  const said = part(section, "copied");
  const deliver = deliverPart(section);
  let now: { slip: Slip; facts: JointFacts[] } | null = null;

  part(section, "print").addEventListener("click", () => window.print());
  part(section, "file").addEventListener("click", () => {
    if (now === null) return;
    const link = linkOf(now.slip);
    const document = enquiryDocument(now.slip, now.facts, options.version, {
      schema: options.schema,
      ...(link.length > longestLink ? {} : { link }),
      identification: options.back,
    });
    saveFile(words.fileName, `${JSON.stringify(document, null, 2)}\n`);
  });
  for (const [hook, field] of [
    ["copy-message", message],
    ["copy-mail", mail],
  ] as const) {
    part(section, hook).addEventListener("click", async () => {
      try {
        await navigator.clipboard.writeText(field.value);
        said.textContent = words.copied;
      } catch {
        field.focus();
        field.select();
        said.textContent = words.copyByHand;
      }
    });
  }

  function linkOf(slip: Slip): string {
    return `${options.page}#${encodeSlip(slip)}`;
  }

  return {
    show(slip, facts) {
      now = { slip, facts };
      section.hidden = slip.joints.length === 0;
      const link = linkOf(slip);
      const fits = link.length <= longestLink;
      long.hidden = fits;
      long.textContent = fits ? "" : words.tooLong(link.length, longestLink);
      ready.hidden = !fits;
      const text = textMessage(slip, facts);
      const letter = mailText(slip, facts, options.version);
      message.value = fits ? `${text}${link}\n` : text;
      mail.value = fits ? `${letter}${link}\n` : letter;
      if (fits) deliver.show({ link, subject: mailSubject(slip, facts), message: letter, text });
    },
  };
}
