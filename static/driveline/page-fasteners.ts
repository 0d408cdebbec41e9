// What the page on fasteners explains.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "The torque of a bolt: what is published for the thread, and what the general formula gives.",
  purpose: [
    "A bolt holds by being stretched, and a wrench measures that badly: most of the torque goes into friction. So what a maker prints for this very bolt comes first, and the formula only where nothing is printed.",
    "Straps, lock straps and self-locking bolts are used once.",
  ],
  groups: { bolt: "The bolt" },
  hints: {
    thread: "As on the box: 3/8-24, .375-24, M10 or M10x1.25.",
    grade: "By the marks on its head.",
    condition: "Oil on the thread counts as oiled, and so does grease.",
    series: "Such as 1710: rows for that series come first.",
  },
  example: "An invented rail inspection trolley with bearing plates of a 1710 joint.",
};
