// A QR symbol as SVG, black on white in every colour scheme: a camera wants no blueprint.
import { encode } from "../qr/encode";
import { path, pictureSide } from "../qr/path";

const svg = "http://www.w3.org/2000/svg";

/** The picture with a name for screen readers; null when no symbol holds the text. */
export function qrPicture(text: string, name: string): SVGSVGElement | null {
  const symbol = encode(text);
  if (symbol === null) return null;
  const side = String(pictureSide(symbol));
  const make = (tag: string, attributes: Record<string, string>): Element => {
    const element = document.createElementNS(svg, tag);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    return element;
  };
  const picture = make("svg", { viewBox: `0 0 ${side} ${side}`, class: "qr__symbol", role: "img", "aria-label": name });
  picture.append(
    make("rect", { width: side, height: side, fill: "#fff" }),
    make("path", { d: path(symbol), fill: "#000", "shape-rendering": "crispEdges" }),
  );
  return picture as SVGSVGElement;
}
