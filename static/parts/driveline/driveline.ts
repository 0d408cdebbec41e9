// The page of a calculation. Markup: templates/calculation.html.
//
// The inputs stand on the page with their words; the script shows their fields, reads them with every keystroke and
// redraws the result. Until something is filled the worked example stays, as the build wrote it. What is filled is in
// the fragment of the address, which no server sees.
import type { Calculation, Field, Filled, Report } from "../../driveline/description";
import type * as frame from "../../driveline/frame";
import { part } from "../identify/element";
import { sharePart } from "../identify/share";
import { fetchChart } from "../identify/chart";
import { fieldsOf, type InputField } from "./fields";
import { keeping } from "./keeping";
import { patch } from "./patch";
import { words } from "words:driveline";
import { isWhole } from "./whole";
import { doneWaiting, sayWaiting } from "../pieces/waiting";

declare const CapspanDriveline: typeof frame; // left by driveline.js

function start(root: HTMLElement): void {
  const calculation = CapspanDriveline.calculationOf(root.dataset.driveline ?? "");
  if (!calculation) return; // its script did not come: the page stands without
  run(root, calculation);
}

function run(root: HTMLElement, calculation: Calculation): void {
  const note = part(root, "note");
  const spoken = part(root, "spoken");
  const result = part(root, "result");
  const sheet = result.firstElementChild ?? result;
  const title = part(root, "result-title");
  const example = part(root, "example");
  const ownTitle = title.dataset.own ?? "";
  const exampleTitle = title.textContent ?? "";
  let speaking = 0;

  CapspanDriveline.provide(JSON.parse(root.dataset.provided ?? "{}"));
  const say = (text: string): void => {
    note.textContent = text;
  };
  const keep = keeping(root);
  const fields = fieldsOf(root, calculation, changed);

  function show(before: Report["refusals"] = []): void {
    if (capspanInPieces && !isWhole(calculation, filledOf(fields), () => show(before))) {
      result.hidden = true; // nor is there a result of before
      sayWaiting(note);
      return;
    }
    if (capspanInPieces) {
      result.hidden = false;
      doneWaiting(note);
    }
    const filled = filledOf(fields);
    const own = Object.keys(filled).length > 0 || before.length > 0;
    const filledReport = CapspanDriveline.reckonFilled(calculation, filled, before);
    const report = own ? filledReport : CapspanDriveline.reckon(calculation.name, calculation.example);
    title.textContent = own ? ownTitle : exampleTitle;
    example.hidden = own;
    patch(sheet, CapspanDriveline.result(report));
    for (const field of fields) {
      const refusal = report.refusals.find((r) => r.input === field.input.id);
      field.show(refusal?.says ?? null, filledReport.asked.includes(field.input.id));
    }
    speak(own ? report : null);
    keep(report, own);
  }

  // Said a second after the last keystroke: the first figures, or what is wrong.
  function speak(report: Report | null): void {
    clearTimeout(speaking);
    speaking = window.setTimeout(() => {
      spoken.textContent = report ? words.spoken(report) : "";
    }, 1000);
  }

  function changed(said = ""): void {
    say(said);
    show();
    const fragment = CapspanDriveline.encode(calculation, filledOf(fields));
    history.replaceState(null, "", location.pathname + location.search + (fragment === "" ? "" : `#${fragment}`));
  }

  function fill(filled: Filled): void {
    for (const field of fields) field.set(filled[field.input.id]);
  }

  function open(): void {
    const fragment = location.hash.slice(1);
    if (!fragment.includes("=")) return; // a place on the page, such as the skip link's
    const { filled, refusals } = CapspanDriveline.decode(calculation, fragment);
    fill(filled);
    show(refusals);
  }

  part(root, "form").addEventListener("submit", (event) => event.preventDefault());
  part(root, "take-example").addEventListener("click", () => {
    fill(CapspanDriveline.decode(calculation, calculation.example).filled);
    changed(words.exampleIn);
  });
  part(root, "over").addEventListener("click", () => {
    fill({});
    changed(words.startedOver);
    fields[0]?.focus();
  });
  sharePart(root, say);
  window.addEventListener("hashchange", open);

  for (const hidden of root.querySelectorAll<HTMLElement>("[data-with-script]")) hidden.hidden = false;
  show();
  open();
  root.dataset.ready = "";
  const chart = root.dataset.chart;
  if (chart)
    fetchChart(chart).then(
      (chart) => {
        CapspanDriveline.provide({ chart });
        show();
      },
      (fault: Error) => say(fault.message),
    );
}

function filledOf(fields: readonly InputField[]): Filled {
  const filled: Filled = {};
  for (const field of fields) {
    const value: Field | null = field.value();
    if (value) filled[field.input.id] = value;
  }
  return filled;
}

for (const root of document.querySelectorAll<HTMLElement>("[data-driveline]")) start(root);
