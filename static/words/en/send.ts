// What the send page says by itself; labels are in templates/send.html. The card has words of its own, but for those
// of the way a link leaves the page.
import type { Quantity } from "../../matcher/types";

export const quantityWords: Record<Quantity, string> = { cap: "cap diameter", across: "distance across" };

export const words = {
  nothing: "Tick at least one thing to measure, then the link is here.",
  tooLong: (length: number, most: number) =>
    `The link has ${length} characters; some messengers cut links of more than ${most}. Shorten the question.`,
  subject: (from: string) => (from ? `Please measure a joint for ${from}` : "Please measure a joint"),
  message: (question: string) =>
    `${question ? `${question}\n\n` : ""}This link leads you through it, one step at a time:\n`,
  qr: "The link as a QR code",
} as const;

export const deliverWords = {
  copied: "Copied. Paste it into a message.",
  copyByHand: "Copying is not allowed here. The link is selected: copy it yourself.",
  shared: "Handed over.",
} as const;
