// One end's section, made from the template in templates/identify.html: joint or bare yoke, hold strip, faces with
// their drawing, and the readings of each quantity.
import type { Answer, Faces, Hold, Measurand } from "../../matcher/types";
import { renameIds, showFaces } from "./drawing";
import type { Drawings } from "./drawings";
import { part } from "./element";
import { readingsPart, type ReadingsOptions } from "./readings";
import { hasClips, measurands, type EndState } from "./state";
import { words } from "words:identify";
import { endTitle } from "words:terms";

export interface EndPart {
  section: HTMLElement;
  show(answer: Answer | null): void;
  focus(on?: Measurand | "hold" | "taken"): void;
}

export interface EndOptions extends Pick<ReadingsOptions, "end" | "state" | "complaint" | "changed"> {
  template: HTMLTemplateElement;
  drawings: Drawings;
  removed: () => void;
}

export function endPart(options: EndOptions): EndPart {
  const { end, state } = options;
  const copy = options.template.content.cloneNode(true) as DocumentFragment;
  renameIds(copy, `-${end}`);
  const section = part(copy, "end");
  const head = part(section, "end-head");
  const remove = part(section, "remove-end");
  const instead = part(section, "instead");
  const clips = part(section, 'quantity="clip"');
  part(section, "end-title").textContent = endTitle(end);
  remove.hidden = end === 0;
  remove.addEventListener("click", options.removed);

  const readings = measurands.map((quantity) => {
    const field = part(section, `quantity="${quantity}"`);
    return { quantity, part: readingsPart({ ...options, field, quantity }) };
  });

  section.addEventListener("change", (event) => {
    const input = event.target;
    const own = state().ends[end];
    if (!(input instanceof HTMLInputElement) || input.type !== "radio" || !own) return;
    if (input.matches("[data-hold]")) {
      own.hold = input.value as Hold;
      delete own.faces; // faces of another hold would make no sense
    } else if (input.matches("[data-faces]")) {
      own.faces = input.value as Faces;
    } else if (input.matches("[data-taken]")) {
      own.taken = input.value as EndState["taken"];
    }
    options.changed("");
  });

  function check(hook: string, value: string | null): void {
    for (const radio of section.querySelectorAll<HTMLInputElement>(`[data-${hook}]`))
      radio.checked = radio.value === value;
  }

  return {
    section,
    show(answer) {
      const own = state().ends[end];
      if (!own) return;
      head.hidden = state().ends.length < 2;
      check("hold", own.hold);
      check("taken", own.taken);
      for (const said of section.querySelectorAll<HTMLElement>("[data-when]"))
        said.hidden = said.dataset.when !== own.taken;
      showFaces(section, own);
      instead.textContent = whatInstead(own);
      instead.hidden = instead.textContent === "";
      clips.hidden = !hasClips(own);
      options.drawings.fill(section);
      for (const r of readings) r.part.show(answer);
    },
    focus(on = "taken") {
      const field = readings.find((r) => r.quantity === on);
      if (field) field.part.focus();
      else (section.querySelector<HTMLElement>(`[data-${on}]:checked`) ?? part(section, on)).focus();
    },
  };
}

/** What stands where no drawing can. */
function whatInstead(own: EndState): string {
  if (own.hold === null) return words.holdFirst;
  return own.taken === "yoke" ? CapspanCore.yokeOf(own.hold).instead : "";
}
