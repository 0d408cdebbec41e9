// What stands round the sentences about a link that was made with another chart; those are the core's.
export const words = {
  title: "Since this link was made",
  missing: "The record of changes could not be fetched, so what has changed since is not told here.",
  all: "All changes of the chart",
} as const;
