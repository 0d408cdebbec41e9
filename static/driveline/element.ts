// Elements as plain data. One description of a result serves two readers: the build writes it into the page as text
// (driveline.go), the browser makes nodes of it (static/parts/driveline/patch.ts). Neither takes markup from a text.
import type { Element } from "./description";

export type Child = Element | string | null | undefined | false;

/** An element with its children; those that are absent are left out. */
export function el(tag: string, attributes: Record<string, string> = {}, ...children: Child[]): Element {
  const made: Element = { tag };
  if (Object.keys(attributes).length > 0) made.attributes = attributes;
  const kept = children.filter((child): child is Element | string =>
    typeof child === "object" ? child !== null : Boolean(child),
  );
  if (kept.length > 0) made.children = kept;
  return made;
}

/** A number as SVG takes it: a hundredth of a pixel is enough. */
export function px(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded); // never "-0"
}
