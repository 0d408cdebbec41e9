// What the bar says.
export const words = {
  label: "A newer chart",
  waiting: (mine: string, newer: string, others: number) =>
    (mine === newer
      ? `Newer pages are here, with the same chart ${mine}. You keep the ones you began with until you say so.`
      : `Chart ${newer} is here. You keep chart ${mine}, which you began with, until you say so.`) +
    (others > 0
      ? ` ${others === 1 ? "Another open page" : `${others} other open pages`} will follow with the next step.`
      : ""),
  taken: (mine: string) => `A newer chart was taken in another window. What you see here is still chart ${mine}.`,
  noRoom: (mine: string) =>
    `A newer chart is there, but this device has no room to keep it beside chart ${mine}. ` +
    "Without a kept copy the site needs a network until there is room.",
  use: "Use it now",
  reload: "Load this page again",
  drop: "Drop the kept copy",
  later: "Later",
} as const;
