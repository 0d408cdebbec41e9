// What the page on speed explains.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "At what speed a tube begins to whirl, how fast it really runs, and how long it may be.",
  purpose: [
    "A tube that turns fast enough bends out like a skipping rope: its first bending critical speed. It falls with the square of the length, so a long shaft is a slow shaft; the wall hardly matters.",
    "How much of that speed may be used is a matter of rules that differ. All that are known here stand side by side.",
  ],
  groups: { shaft: "The shaft", running: "How fast it runs" },
  hints: {
    outside: "Across the tube, clear of welds and weights.",
    wall: "Of the tube, as bought; a solid bar has half its diameter.",
    material: "Steel and aluminium come out nearly alike.",
    length: "From joint centre to joint centre, or from a joint to the middle of the hanger bearing.",
    from: "Take the greatest speed it can reach, downhill and in the highest gear too.",
    speed: "At its greatest.",
    engine: "The greatest it reaches, not where its power peaks.",
    gear: "Engine over gearbox output: 1 for direct drive, less for an overdrive.",
    transfer: "In high range; 1 without one.",
    road: "The greatest, downhill too.",
    tyre: "From the ground to the middle of the wheel, loaded. With an engine speed it tells the road speed besides.",
    axle: "Turns of the shaft for one of the wheel.",
  },
  example:
    "An invented rail inspection trolley: a tube of 3 in between a car gearbox in its overdrive gear and a tractor axle.",
};
