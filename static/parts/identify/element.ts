// Elements are made by hand: no markup is ever put together from text, so no reading or row name can become markup.

type Child = Node | string | null | undefined | false;

/** Makes an element with attributes and children; absent children are left out. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Record<string, string> = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  for (const child of children) if (child) element.append(child);
  return element;
}

/** Finds a part the script cannot do without, or says which is missing on which page. */
export function part<E extends HTMLElement>(root: ParentNode, hook: string): E {
  const element = root.querySelector<E>(`[data-${hook}]`);
  if (!element) throw new Error(`no element data-${hook} on ${location.pathname}`);
  return element;
}
