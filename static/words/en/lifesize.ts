// What the life-size drawing says of its scale; labels are in templates/words/en/joint.yaml.
const scale = (perMm: number): string => `${perMm.toFixed(2)} pixels to the millimetre`;

export const words = {
  scale,
  toScale: (perMm: number, kept: boolean) =>
    `Life size on this screen, by your card: ${scale(perMm)}.${
      kept ? "" : " This browser does not remember it for the next page."
    }`,
  pinched: "Not to scale while the page is pinched larger or smaller: bring it back first.",
  otherScreen: "Not to scale: the screen or the zoom is another than when the card was laid.",
  notYet: "Not to scale yet: lay a bank card on the screen first.",
} as const;
