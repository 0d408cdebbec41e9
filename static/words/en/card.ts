// Every word the card says by itself; labels that never change are in templates/card.html.
import type { Quantity, Unit } from "../../matcher/types";

export const unitWords: Record<Unit, string> = { in: "inches", mm: "millimetres" };

const endWords = (end: number, ends: number): string => (ends < 2 ? "" : end === 0 ? ", first end" : ", the other end");

export const words = {
  progress: (step: number, steps: number) => `Step ${step} of ${steps}`,
  asks: (from: string) => (from ? `${from} asks you to measure a joint` : "You are asked to measure a joint"),
  asked: (quantity: Quantity, end: number, ends: number) =>
    `${quantity === "cap" ? "the diameter of two caps" : "the distance across, twice"}${endWords(end, ends)}`,
  askedHold: (end: number, ends: number) => `how the joint is held, from pictures${endWords(end, ends)}`,
  tool: "What do you measure with?",
  hold: (end: number, ends: number) =>
    `How is ${ends < 2 ? "the joint" : end === 0 ? "the first end" : "the other end"} held?`,
  reading: (quantity: Quantity, turn: number, end: number, ends: number) =>
    `${
      quantity === "cap"
        ? turn === 0
          ? "One cap: its diameter"
          : "The cap opposite: its diameter"
        : turn === 0
          ? "The distance across"
          : "Across once more"
    }${endWords(end, ends)}`,
  readingLabel: (unit: Unit) => `Reading in ${unitWords[unit]}`,
  hint: (quantity: Quantity, turn: number, unit: Unit) => {
    const example = quantity === "cap" ? (unit === "in" ? "1.062" : "27.00") : unit === "in" ? "3.219" : "81.75";
    const again =
      turn === 0 ? "" : quantity === "cap" ? "Two caps can differ: that matters. " : "Take the caliper off first. ";
    return `${again}Write it as you read it, such as ${example}. A fraction is fine too.`;
  },
  missing: "Nothing is written here yet. If you cannot measure this, press Next again to leave it out.",
  start: "Start",
  next: "Next",
  end: "Done. Send it back",
  nothing: "You have left everything out, so there is nothing to send. Go back and measure at least one thing.",
  summary: (quantity: Quantity, end: number, ends: number, readings: string[]) =>
    `${quantity === "cap" ? "Cap diameter" : "Across"}${endWords(end, ends)}: ${readings.length ? readings.join(", ") : "left out"}`,
  check: "Look at this once more:",
  subject: "Readings of a joint",
  message: "Here are the readings. The link opens them:\n",
  whatNow: {
    empty: "This page needs a link",
    broken: "This link is not whole",
    unreadable: "This link does not say what to measure",
  },
  noCore: "A part of this page did not arrive. Reload it where there is signal.",
  noCoreTitle: "This page is not complete",
} as const;
