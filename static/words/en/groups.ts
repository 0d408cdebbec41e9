// What the search of a table in groups says.
export const words = {
  ask: "Say what to look for: a word or a size, a hold, or a span.",
  noLength: (text: string) => `“${text}” is no length. Write it as 27, 1.062 or 1 1/16.`,
  reading: (groups: number) => (groups === 1 ? "Reading 1 group." : `Reading ${groups} groups.`),
  noGroup: "No group of this table can hold that.",
  none: (groups: number) => (groups === 1 ? "No size fits, in 1 group." : `No size fits, in ${groups} groups.`),
  found: (sizes: number) => (sizes === 1 ? "1 size fits." : `${sizes} sizes fit.`),
  first: (shown: number, sizes: number) =>
    `${sizes} sizes fit; the first ${shown} by cap are shown. Ask for less to see the others.`,
  unread: (groups: number) =>
    `${groups === 1 ? "1 group" : `${groups} groups`} could not be read, so sizes may be missing here. Look whether there is a network, then try again.`,
  caption: "Sizes that fit",
} as const;
