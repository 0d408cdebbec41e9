// What the pages of a large chart say, whose chart is fetched in pieces.
const some = (n: number): string => (n === 1 ? "one piece" : `${n} pieces`);

export const words = {
  looking: "Looking in the chart",
  lookingSays: "The chart is large and comes in pieces. Those that your readings touch are looked into.",
  slow: (n: number, size: string) =>
    `Fetching ${some(n)} of the chart, about ${size}. There is no verdict until all are here.`,
  stuck: (n: number, size: string) =>
    `Still waiting for ${some(n)} of the chart, about ${size}. The network is slow, or it is gone.`,
  more: "More of the chart is needed",
  costly: (n: number, size: string) => `These readings touch ${some(n)} of the chart, about ${size} to fetch.`,
  fewer: "With both the cap and the distance across it is far less.",
  fetch: (size: string) => `Fetch them, about ${size}`,
  none: "No verdict",
  unreachable:
    "A piece of the chart could not be fetched, so nothing can be said: what is missing would look as if it did not exist.",
  gone: "A piece of the chart is no longer where this page looks for it: the chart on the site is newer than this page. Reload the page.",
  damaged:
    "A piece of the chart came damaged, also when it was asked for again. It was not used, and nothing can be said without it.",
  joints: "What the chart says of these joints is being fetched. Nothing of it is written until all is here.",
  jointsStuck:
    "Still waiting for what the chart says of these joints. The network is slow, or it is gone. Nothing of it is written until all is here.",
  noJoints: "What the chart says of these joints is missing",
  notFound:
    "The chart could not be asked for that name, so whether it has it is not known. What you wrote stays: press again.",
  retry: "Try again",
  reload: "Reload the page",
  keptReadings: "Your readings stay as they are. You can go on measuring.",

  keep: "Keep the whole chart on this device",
  keepAbout: (size: string) =>
    `This page then identifies without a network, whatever you measured. The chart takes about ${size} to fetch, and a later one only what has changed.`,
  keepIt: (size: string) => `Keep it, about ${size}`,
  keepRest: (size: string) => `Fetch the rest, about ${size}`,
  stop: "Stop",
  letGo: "Remove it from this device",
  keeping: (n: number, of: number) => `${n} of ${of} pieces are on this device.`,
  stopped: (n: number, of: number) => `Stopped. ${n} of ${of} pieces are on this device and stay there.`,
  allKept: "The whole chart is on this device.",
  letGone: "The chart was removed from this device.",
  refused:
    "This browser keeps nothing for this site, so the chart cannot be kept. A private window, or a setting, may be the reason.",
  full: (n: number, of: number) =>
    `There is no room for more on this device. ${n} of ${of} pieces are on it and stay there; make room and try again, or remove them.`,
  cannot: "Keeping needs a page that comes by https; this one does not.",
} as const;
