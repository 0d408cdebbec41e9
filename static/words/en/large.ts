// What pages of a large chart say, and no others.
export const words = {
  // search
  looking: "Looking through the rows…",
  many: "Too many rows have these words in their names: type more of one of them.",
  noRows: "The rows with such names did not arrive, so the list may lack what you look for.",
  again: "Try again",

  // a newer chart
  taken: "A newer chart was taken in another window. What you see here is still the one before.",
} as const;
