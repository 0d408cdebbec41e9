// Makes nodes of a result's elements and, with every keystroke, changes only what differs: what is unfolded stays
// unfolded, what has the focus keeps it. No markup is put together from text.
import type { Element as Tree } from "../../driveline/description";

const svgNamespace = "http://www.w3.org/2000/svg";

/** Brings the children of a node to those of the tree. */
export function patch(node: Element, tree: Tree): void {
  patchAttributes(node, tree.attributes ?? {});
  const wanted = tree.children ?? [];
  let at: ChildNode | null = node.firstChild;
  for (const child of wanted) {
    if (at !== null && same(at, child)) {
      if (typeof child === "string") {
        if (at.nodeValue !== child) at.nodeValue = child;
      } else patch(at as Element, child);
      at = at.nextSibling;
    } else {
      const made = create(child, node);
      if (at === null) node.append(made);
      else {
        // What has another name or place gives way; a section is found again by its id.
        at.replaceWith(made);
        at = made.nextSibling;
      }
    }
  }
  while (at !== null) {
    const next: ChildNode | null = at.nextSibling;
    at.remove();
    at = next;
  }
}

function same(node: ChildNode, child: Tree | string): boolean {
  if (typeof child === "string") return node.nodeType === Node.TEXT_NODE;
  return node instanceof Element && node.localName === child.tag && node.id === (child.attributes?.["id"] ?? "");
}

function create(child: Tree | string, parent: Element): ChildNode {
  if (typeof child === "string") return document.createTextNode(child);
  const inSvg = child.tag === "svg" || parent.namespaceURI === svgNamespace;
  const element = inSvg ? document.createElementNS(svgNamespace, child.tag) : document.createElement(child.tag);
  patch(element, child);
  return element;
}

function patchAttributes(node: Element, wanted: Record<string, string>): void {
  for (const { name } of [...node.attributes]) if (!(name in wanted) && name !== "open") node.removeAttribute(name);
  for (const [name, value] of Object.entries(wanted))
    if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}
