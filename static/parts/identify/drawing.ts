// Shows the faces that go with the chosen hold, or the distance of its bare yoke, with the drawing of what is in use.
import type { Faces, Hold } from "../../matcher/types";

/** What of an end decides which drawing it shows. */
export interface Drawn {
  hold: Hold | null;
  faces?: Faces;
  taken?: "joint" | "yoke";
}

/** Shows the group of the end's hold, checks the faces in use and shows their drawing. Before a hold is chosen there is
 *  nothing to show. */
export function showFaces(section: HTMLElement, end: Drawn): void {
  const yoke = end.taken === "yoke";
  for (const group of section.querySelectorAll<HTMLElement>("[data-faces-of]")) {
    group.hidden = yoke || group.dataset.facesOf !== end.hold;
    if (!group.hidden) showDrawing(group, end.faces);
  }
  for (const group of section.querySelectorAll<HTMLElement>("[data-yoke-of]")) {
    group.hidden = !yoke || group.dataset.yokeOf !== end.hold;
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
