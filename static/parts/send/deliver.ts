// The ways a link leaves the page: as text to copy, as mail, as a text message, and by what the device offers. Nothing
// is sent from here: each way opens a program of the reader's. Markup: the template "deliver" in templates/send.html.
import { part } from "../identify/element";
import { deliverWords } from "words:send";

export interface Parcel {
  link: string;
  subject: string;
  message: string; // what stands before the link
  text?: string | undefined; // the same in a text message, where it is another
  mail?: string | undefined; // to whom; left out: the reader chooses
  dial?: string | undefined;
}

export interface DeliverPart {
  show(parcel: Parcel): void;
}

export function deliverPart(root: ParentNode): DeliverPart {
  const field = part<HTMLTextAreaElement>(root, "link");
  const mail = part<HTMLAnchorElement>(root, "mail");
  const sms = part<HTMLAnchorElement>(root, "sms");
  const share = part<HTMLButtonElement>(root, "share");
  const note = part(root, "note");
  let parcel: Parcel | null = null;

  field.addEventListener("focus", () => field.select());
  part(root, "copy").addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(field.value);
      note.textContent = deliverWords.copied;
    } catch {
      field.focus();
      field.select();
      note.textContent = deliverWords.copyByHand;
    }
  });
  share.hidden = typeof navigator.share !== "function";
  share.addEventListener("click", async () => {
    if (parcel === null) return;
    try {
      await navigator.share({ title: parcel.subject, text: parcel.message.trim(), url: parcel.link });
      note.textContent = deliverWords.shared;
    } catch {
      note.textContent = ""; // the reader closed the list of apps
    }
  });

  return {
    show(now) {
      parcel = now;
      field.value = now.link;
      const body = (message: string): string => encodeURIComponent(`${message}${now.link}\n`);
      mail.href = `mailto:${now.mail ?? ""}?subject=${encodeURIComponent(now.subject)}&body=${body(now.message)}`;
      // RFC 5724 says "?body="; the empty pair before it is for phones that look for "&body=".
      sms.href = `sms:${now.dial ?? ""}?&body=${body(now.text ?? now.message)}`;
      mail.hidden = false;
      sms.hidden = false;
      note.textContent = "";
    },
  };
}
