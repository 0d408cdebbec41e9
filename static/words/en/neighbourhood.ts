// The words of the picture.
import type { Kind } from "../../parts/neighbourhood/places";

export const kindWords: Record<Kind, string> = {
  left: "a size left",
  same: "same figures, other hold",
  part: "not matching as a whole, though this end agrees",
  near: "not matching",
};

export const words = {
  title: "Where your readings lie",
  close: "Close up",
  around: "Round about",
  about:
    "Each mark is a size; readings inside its dashed box agree with it. The box round the cross is how far off your readings may be.",
  pick: "Tap a mark, or go through them with the Tab key, to read how far off it is.",
  you: "Your readings",
  youShort: "you",
  scale: (wide: string, high: string) => `The picture is ${wide} wide${high ? ` and ${high} high` : ""}.`,
  table: "The same as a table",
  caption: "Sizes beside your readings",
  size: "Size",
  chart: "chart",
  offBy: "off by",
  larger: "larger than yours",
  smaller: "smaller than yours",
  same: "the same as yours",
} as const;
