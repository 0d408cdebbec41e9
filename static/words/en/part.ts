// What the page of identifying a part says by itself. What the verdict says is the core's own text.
import type { Basis } from "../../matcher/types";
import { basisWords } from "./terms";

export const words = {
  start: "Count what is to be counted, put in a measure, and read the verdict here.",
  startMore: "Two or three readings of each length tell more than one: a slip stands out.",
  noTable: "The table could not be fetched, so nothing can be identified here yet. How to do it by hand is below.",
  between: "Between rows",
  rowLeft: "The row",
  rowsLeft: "Rows left",
  rowsLeftAbout: "These readings cannot separate them.",
  basis: (basis: Basis) => `Basis of what was compared: ${basisWords[basis]}.`,
  shareTitle: "Readings of a part",
  next: (label: string) => `Next reading: ${label}`,
  counted: (label: string, count: string) => `${label}: ${count}.`,
} as const;
