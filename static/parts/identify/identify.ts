// The identify page. Markup: templates/identify.html.
//
// One state, one way round: a part changes the state and says so; the core answers; every part shows what follows.
// Until the chart is here the form stays hidden and the method by hand is open, so a page whose script fails or
// never arrives is still of use.
import type { Answer, Chart, Quantity } from "../../matcher/types";
import { readAddress, writeAddress } from "./address";
import { fetchChart } from "./chart";
import { make, part } from "./element";
import { endPart, type EndPart } from "./end";
import { settingsPart } from "./settings";
import { sharePart } from "./share";
import { emptyEnd, emptyState, hasReadings, toQuery } from "./state";
import { verdictPart } from "./verdict";
import { words } from "./words";

async function start(root: HTMLElement): Promise<void> {
  const trouble = part(root, "trouble");
  try {
    const chart = await fetchChart(root.dataset.chart ?? "");
    trouble.replaceChildren();
    run(root, chart);
  } catch (error) {
    const again = make("button", { type: "button", class: "btn" }, words.retry);
    again.addEventListener("click", () => void start(root));
    trouble.replaceChildren(
      make("div", { class: "trouble" }, make("p", {}, error instanceof Error ? error.message : String(error)), again),
    );
  }
}

function run(root: HTMLElement, chart: Chart): void {
  const ends = part(root, "ends");
  const note = part(root, "note");
  const addEnd = part(root, "add-end");
  const template = part<HTMLTemplateElement>(root, "end-template");
  const verdict = verdictPart(root, root.dataset.joint ?? "/joint/");
  const settings = settingsPart(
    root,
    () => state,
    () => changed(""),
  );
  let state = emptyState();
  let parts: EndPart[] = [];

  function say(text: string): void {
    note.textContent = text;
  }

  function show(): void {
    const answer: Answer | null = hasReadings(state) ? CapspanCore.identify(chart, toQuery(state)) : null;
    for (const p of parts) p.show(answer);
    settings.show();
    addEnd.hidden = state.ends.length > 1;
    verdict.show(answer, state.unit);
  }

  function changed(said: string): void {
    say(said);
    show();
    writeAddress(state, chart.version);
  }

  // What the core has against one reading, asked alone: null when it is understood.
  function complaint(reading: string, quantity: Quantity): string | null {
    const { complaints } = CapspanCore.identify(chart, { ends: [{ hold: "unknown", [quantity]: [reading] }] });
    return complaints.find((c) => c.quantity === quantity)?.says ?? null;
  }

  // A changed number of ends needs other sections; what is typed in a field that stays is kept.
  function rebuild(): void {
    parts = state.ends.map(
      (_, end) =>
        parts[end] ?? endPart({ template, end, state: () => state, complaint, changed, removed: () => removeEnd(end) }),
    );
    ends.replaceChildren(...parts.map((p) => p.section));
  }

  function removeEnd(end: number): void {
    state.ends.splice(end, 1);
    parts.splice(end, 1);
    rebuild();
    changed("");
    addEnd.focus();
  }

  addEnd.addEventListener("click", () => {
    state.ends.push(emptyEnd());
    rebuild();
    changed("");
    parts[parts.length - 1]?.focus();
  });
  part(root, "over").addEventListener("click", () => {
    const { unit, tool, condition } = state; // the bench stays the same
    state = { ...emptyState(), unit, tool, condition };
    parts = [];
    rebuild();
    changed(words.startedOver);
    parts[0]?.focus();
  });
  part(root, "form").addEventListener("submit", (event) => event.preventDefault());
  sharePart(root, say);

  function open(): void {
    const opened = readAddress(chart.version, state.unit);
    if (!opened && parts.length) return;
    if (opened) state = opened.state;
    parts = [];
    rebuild();
    show(); // the address stays as it was sent until the reader changes something
    if (opened) say([words.restored, ...opened.remarks].join(" "));
  }
  window.addEventListener("hashchange", open);

  open();
  part(root, "by-hand").removeAttribute("open");
  part(root, "board").hidden = false;
  root.dataset.ready = "";
}

for (const root of document.querySelectorAll<HTMLElement>("[data-identify]")) void start(root);
