// The customer's card: one picture and one input at a time. Markup: templates/card.html.
//
// Once it is open it asks for nothing more: the pictures are in the page and the core is loaded. Each step is a step of
// the browser's history, so that a phone's back button goes one step back; what is typed stands in the address.
import { local } from "../../matcher/speech-number";
import type { Faces, Hold, Tool, Unit } from "../../matcher/types";
import { showFaces } from "../identify/drawing";
import { make, part } from "../identify/element";
import { addressOf, openCard, stepsOf, usualFaces, type Card, type CardEnd, type Step } from "./state";
import { complaintOf, summaryPart } from "./summary";
import { words } from "words:card";

function start(root: HTMLElement): void {
  const sheet = part<HTMLFormElement>(root, "sheet");
  const title = part(root, "title");
  const field = part<HTMLInputElement>(root, "reading");
  const complaint = part(root, "complaint");
  const across = part(root, 'step="across"');
  const summary = summaryPart(root);
  let card: Card | null = null;
  let leftOut = false; // the reader pressed Next on an empty field once

  function open(): void {
    const opened = openCard(location.hash);
    part(root, "without").hidden = true;
    const trouble = part(root, "trouble");
    trouble.hidden = opened.ok;
    sheet.hidden = !opened.ok;
    root.dataset.ready = "";
    if (opened.ok) {
      card = opened.card;
      show(false);
      return;
    }
    card = null;
    part(root, "trouble-title").textContent = words.whatNow[opened.why];
    part(root, "trouble-says").textContent = opened.says;
    part(root, "trouble-title").focus({ preventScroll: true });
  }

  function here(): { card: Card; step: Step; steps: Step[] } | null {
    if (card === null) return null;
    const steps = stepsOf(card.request);
    const step = steps[card.step];
    return step ? { card, step, steps } : null;
  }

  function show(move: boolean): void {
    const now = here();
    if (now === null) return;
    const { step, steps } = now;
    for (const section of root.querySelectorAll<HTMLElement>("[data-step]"))
      section.hidden = section.dataset.step !== step.kind;
    part(root, "progress").textContent = words.progress(now.card.step + 1, steps.length);
    title.textContent = titleOf(now.card, step);
    part(root, "back").hidden = now.card.step === 0;
    const next = part(root, "next");
    next.textContent = step.kind === "start" ? words.start : words.next;
    next.hidden = step.kind === "end";
    part(root, "reading-box").hidden = step.kind !== "cap" && step.kind !== "across";
    leftOut = false;
    complain(null);
    fill(now.card, step);
    if (!move) return;
    // The sheet's top first, so that picture and field are in sight together on a small screen.
    sheet.scrollIntoView({ block: "start" });
    (step.kind === "cap" || step.kind === "across" ? field : title).focus({ preventScroll: true });
  }

  function fill(card: Card, step: Step): void {
    const ends = card.ends.length;
    const check = (hook: string, value: string | null): void => {
      for (const radio of root.querySelectorAll<HTMLInputElement>(`[data-${hook}]`))
        radio.checked = radio.value === value;
    };
    if (step.kind === "start") {
      const question = part(root, "question");
      question.hidden = card.request.question === undefined;
      question.textContent = card.request.question ?? "";
      const asked = card.request.ends.flatMap((end, n) => [
        ...(end.hold === undefined ? [words.askedHold(n, ends)] : []),
        ...end.take.map((quantity) => words.asked(quantity, n, ends)),
      ]);
      part(root, "asked").replaceChildren(...asked.map((text) => make("li", {}, text)));
    } else if (step.kind === "tool") {
      check("tool", card.tool);
      check("unit", card.unit);
    } else if (step.kind === "hold") {
      check("hold", card.ends[step.end]?.hold ?? null);
    } else if (step.kind === "end") {
      summary.show(card);
    } else {
      const end = card.ends[step.end];
      if (!end) return;
      field.value = local(end[step.kind][step.turn] ?? "");
      part(root, "reading-label").textContent = words.readingLabel(card.unit);
      part(root, "hint").textContent = words.hint(step.kind, step.turn, card.unit);
      if (step.kind === "across") showFaces(across, end);
      const fixed = card.request.ends[step.end]?.faces !== undefined || end.hold === "unknown";
      for (const choices of across.querySelectorAll<HTMLElement>("[data-choices]")) choices.hidden = fixed;
    }
  }

  function titleOf(card: Card, step: Step): string {
    const ends = card.ends.length;
    if (step.kind === "start") return words.asks(card.request.from ?? "");
    if (step.kind === "tool") return words.tool;
    if (step.kind === "hold") return words.hold(step.end, ends);
    if (step.kind === "end") return words.end;
    return words.reading(step.kind, step.turn, step.end, ends);
  }

  function complain(text: string | null): void {
    complaint.hidden = text === null;
    complaint.textContent = text ?? "";
    field.setAttribute("aria-invalid", String(text !== null));
  }

  // What keeps the reader on this step; an empty field does so once.
  function hindrance(card: Card, step: Step): string | null {
    if (step.kind !== "cap" && step.kind !== "across") return null;
    if (field.value.trim() !== "") return complaintOf(field.value, step.kind, card);
    if (leftOut || step.turn > 0) return null;
    leftOut = true;
    return words.missing;
  }

  function choose(end: CardEnd, hold: Hold): void {
    end.hold = hold;
    delete end.faces; // faces of another hold would make no sense
    const usual = usualFaces(hold);
    if (usual) end.faces = usual;
  }

  function keep(): void {
    if (card) history.replaceState(null, "", addressOf(card));
  }

  function go(by: number): void {
    if (card === null) return;
    card.step += by;
    history.pushState(null, "", addressOf(card));
    show(true);
  }

  sheet.addEventListener("submit", (event) => {
    event.preventDefault();
    const now = here();
    if (now === null || now.step.kind === "end") return;
    const asked = now.step.kind === "hold" ? now.card.ends[now.step.end] : undefined;
    if (asked?.hold === null) choose(asked, "unknown");
    const says = hindrance(now.card, now.step);
    complain(says);
    if (says === null) go(1);
    else field.focus();
  });
  part(root, "back").addEventListener("click", () => go(-1));

  field.addEventListener("input", () => {
    const now = here();
    if (now === null || (now.step.kind !== "cap" && now.step.kind !== "across")) return;
    const readings = now.card.ends[now.step.end]?.[now.step.kind];
    if (!readings) return;
    while (readings.length < now.step.turn) readings.push("");
    readings[now.step.turn] = field.value;
    complain(null);
    keep();
  });

  sheet.addEventListener("change", (event) => {
    const now = here();
    const input = event.target;
    if (now === null || !(input instanceof HTMLInputElement) || input.type !== "radio") return;
    const end = "end" in now.step ? now.card.ends[now.step.end] : undefined;
    if (input.matches("[data-tool]")) now.card.tool = input.value as Tool;
    else if (input.matches("[data-unit]")) now.card.unit = input.value as Unit;
    else if (end && input.matches("[data-hold]")) {
      choose(end, input.value as Hold);
    } else if (end && input.matches("[data-faces]")) {
      end.faces = input.value as Faces;
      showFaces(across, end);
    }
    keep();
  });

  // Back and forward change the step alone: an older entry of the history knows less than was typed since.
  window.addEventListener("popstate", () => {
    const opened = openCard(location.hash);
    if (card === null || !opened.ok || opened.card.asked !== card.asked) {
      open();
      return;
    }
    card.step = opened.card.step;
    keep();
    show(true);
  });

  open();
}

for (const root of document.querySelectorAll<HTMLElement>("[data-card]")) {
  if (typeof CapspanCore !== "undefined") start(root);
  else {
    part(root, "trouble").hidden = false;
    part(root, "trouble-title").textContent = words.noCoreTitle;
    part(root, "trouble-says").textContent = words.noCore;
  }
}
