// From what a caliper can reach on a ring of holes to the circle they lie on.
//
//   edge to edge  ->  centre to centre   outer edges: less a hole's diameter; inner edges: and one
//   centre to centre  ->  bolt circle    chord = D sin(pi k / n), k holes on round a circle of n
//
// With k = 1 that is the table of chords in machinists' handbooks: of a circle of diameter
// 1 the chord is 0.86603 for 3 holes, 0.70711 for 4, 0.58779 for 5, 0.5 for 6, 0.38268 for 8.
import type { Between, Edges } from "./part-types";

/** The chord from one hole to another of a circle of diameter 1. */
export function chordFactor(holes: number, between: Between): number {
  const on = between === "next" ? 1 : Math.floor(holes / 2);
  return Math.sin((Math.PI * on) / holes);
}

/** What a hole's diameter adds to a distance between edges to make it one between centres. */
export function holeSign(edges: Edges): -1 | 0 | 1 {
  switch (edges) {
    case "outer":
      return -1;
    case "inner":
      return 1;
    case "same":
    case "centres":
      return 0;
  }
}
