// From a size that is known on to the shaft: the pages of the driveline, filled with what is known here.
import type { Answer } from "../../matcher/types";
import { make } from "./element";
import type { EndState, State } from "./state";
import { titled } from "./verdict-sizes";
import { words } from "words:onto";

/** The ways on; none while nothing is found. */
export function driveline(answer: Answer, state: State, site: string): HTMLElement | null {
  const size = answer.sizes.length === 1 ? answer.sizes[0] : undefined;
  const joins = state.ends.length > 1 && answer.ends.every((end) => end.rows.length > 0) && answer.ends.length > 1;
  if (!size && !joins) return null;
  const name = encodeURIComponent(size?.names[0] ?? "");
  const links = [
    ...(joins ? [["ends", twoEnds(state)] as const] : []),
    ...(size
      ? ([
          ["torque", `row=${name}`],
          ["angles", ""],
          ["clips", ""],
          ["fasteners", `series=${name}`],
        ] as const)
      : []),
  ];
  return titled(
    words.driveline,
    make(
      "ul",
      { class: "onto" },
      ...links.map(([page, fragment]) =>
        make("li", {}, make("a", { href: `${site}driveline/${page}/${fragment && `#${fragment}`}` }, words.onTo[page])),
      ),
    ),
  );
}

/** The readings of two ends as the page that joins them takes them. */
function twoEnds(state: State): string {
  const end = (own: EndState, n: number): [string, string][] => [
    [`hold${n}`, own.hold ?? "unknown"],
    [`taken${n}`, own.taken],
    [`cap${n}`, own.cap.join("; ")],
    [`across${n}`, own.across.join("; ")],
  ];
  const pairs: [string, string][] = [
    ...state.ends.flatMap((own, n) => end(own, n + 1)),
    ["unit", state.unit],
    ["tool", state.tool],
    ["condition", state.condition],
  ];
  return pairs.map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join("&");
}
