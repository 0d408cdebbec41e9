// One end's section, made from the template in templates/identify.html: hold strip, faces with their drawing, and
// the readings of cap and across.
import type { Answer, Faces, Hold } from "../../matcher/types";
import { renameIds, showFaces } from "./drawing";
import { part } from "./element";
import { readingsPart, type ReadingsOptions } from "./readings";
import { quantities } from "./state";
import { words } from "./words";

export interface EndPart {
  section: HTMLElement;
  show(answer: Answer | null): void;
  focus(): void;
}

export interface EndOptions extends Pick<ReadingsOptions, "end" | "state" | "complaint" | "changed"> {
  template: HTMLTemplateElement;
  removed: () => void;
}

export function endPart(options: EndOptions): EndPart {
  const { end, state } = options;
  const copy = options.template.content.cloneNode(true) as DocumentFragment;
  renameIds(copy, `-${end}`);
  const section = part(copy, "end");
  const head = part(section, "end-head");
  const remove = part(section, "remove-end");
  part(section, "end-title").textContent = words.endTitle(end);
  remove.hidden = end === 0;
  remove.addEventListener("click", options.removed);

  const readings = quantities.map((quantity) => {
    const field = part(section, `quantity="${quantity}"`);
    return readingsPart({ ...options, field, quantity });
  });

  section.addEventListener("change", (event) => {
    const input = event.target;
    const own = state().ends[end];
    if (!(input instanceof HTMLInputElement) || input.type !== "radio" || !own) return;
    if (input.matches("[data-hold]")) {
      own.hold = input.value as Hold;
      delete own.faces; // faces of another hold would make no sense
      delete own.taken; // only an address can say yoke; a choice made here is of the joint
    } else if (input.matches("[data-faces]")) {
      own.faces = input.value as Faces;
    }
    options.changed("");
  });

  return {
    section,
    show(answer) {
      const own = state().ends[end];
      if (!own) return;
      head.hidden = state().ends.length < 2;
      for (const radio of section.querySelectorAll<HTMLInputElement>("[data-hold]"))
        radio.checked = radio.value === own.hold;
      showFaces(section, own);
      for (const r of readings) r.show(answer);
    },
    focus: () => (section.querySelector<HTMLElement>("[data-hold]:checked") ?? part(section, "hold")).focus(),
  };
}
