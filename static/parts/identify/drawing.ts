// Shows the faces that go with the chosen hold and the drawing of the ones in use.
import type { EndState } from "./state";

/** Shows the group of the end's hold, checks the faces in use and shows their drawing. */
export function showFaces(section: HTMLElement, end: EndState): void {
  for (const group of section.querySelectorAll<HTMLElement>("[data-faces-of]")) {
    group.hidden = group.dataset.facesOf !== (end.hold ?? "unknown");
    if (!group.hidden) showDrawing(group, end.faces);
  }
}

function showDrawing(group: HTMLElement, chosen: string | undefined): void {
  const figures = [...group.querySelectorAll<HTMLElement>("[data-faces-figure]")];
  const inUse = figures.find((f) => f.dataset.facesFigure === chosen) ?? figures[0];
  for (const figure of figures) figure.hidden = figure !== inUse;
  for (const radio of group.querySelectorAll<HTMLInputElement>("[data-faces]")) {
    radio.checked = radio.value === inUse?.dataset.facesFigure;
  }
}

/** Gives a copy of the end's markup ids and names of its own: drawings name their titles by id. */
export function renameIds(section: ParentNode, suffix: string): void {
  const renamed = new Map<string, string>();
  for (const element of section.querySelectorAll("[id]")) {
    renamed.set(element.id, element.id + suffix);
    element.id += suffix;
  }
  for (const element of section.querySelectorAll("*")) {
    for (const { name, value } of [...element.attributes]) {
      if (name === "name") element.setAttribute(name, value + suffix);
      if (/^(for|aria-(labelledby|describedby|controls))$/.test(name)) {
        element.setAttribute(
          name,
          value
            .split(" ")
            .map((id) => renamed.get(id) ?? id)
            .join(" "),
        );
      }
      const reference = /^(url\()?#([^)]+)\)?$/.exec(value);
      const target = reference && renamed.get(reference[2] ?? "");
      if (target) element.setAttribute(name, reference[1] ? `url(#${target})` : `#${target}`);
    }
  }
}
