// The identify page. Markup: templates/identify.html.
//
// One state, one way round: a part changes the state and says so; the core answers; every part shows what follows.
// Until the chart is here the form stays hidden and the method by hand is open, so a page whose script fails or
// never arrives is still of use.
import type { AnyChart } from "../../matcher/prepared";
import type { Answer } from "../../matcher/types";
import { readAddress, writeAddress } from "./address";
import { again } from "./again";
import { fetchChart } from "./chart";
import { drawingsFrom } from "./drawings";
import { make, part } from "./element";
import { endPart, type EndPart } from "./end";
import { fetchLate, here, whole } from "./late";
import { onwardPart } from "./onward";
import { settingsPart } from "./settings";
import { sinceMade } from "../since/fetch";
import { sharePart } from "./share";
import { emptyEnd, emptyState, hasReadings, toQuery } from "./state";
import { verdictPart } from "./verdict";
import { words } from "words:identify";
import { page } from "../pieces/ask";
import { keepPanel } from "../pieces/keep-panel";

async function start(root: HTMLElement): Promise<void> {
  const trouble = part(root, "trouble");
  try {
    // With readings in the address all parts are wanted at once, and nothing may move when it comes.
    const late = location.hash.includes("=") ? fetchLate() : null;
    const chart = await fetchChart(root.dataset.chart ?? "");
    await late;
    trouble.replaceChildren();
    run(root, chart);
  } catch (error) {
    root.dataset.failed = ""; // shows the method by hand
    const retry = make("button", { type: "button", class: "btn" }, words.retry);
    retry.addEventListener("click", () => void start(root));
    trouble.replaceChildren(
      make("div", { class: "trouble" }, make("p", {}, error instanceof Error ? error.message : String(error)), retry),
    );
  }
}

function run(root: HTMLElement, chart: AnyChart): void {
  const ends = part(root, "ends");
  const note = part(root, "note");
  const addEnd = part(root, "add-end");
  const template = part<HTMLTemplateElement>(root, "end-template");
  const drawings = drawingsFrom(root.dataset.drawings ?? "", template.content);
  const given = { state: () => state, complaint, changed };
  const settings = settingsPart(
    root,
    () => state,
    () => changed(""),
  );
  const onward = onwardPart({ ...given, root: part(root, "onward"), look: (end) => parts[end]?.focus("hold") });
  const verdict = verdictPart({
    root,
    site: root.dataset.site ?? "/",
    drawings,
    state: () => state,
    again: (slip) => {
      const end = state.ends[slip.end];
      if (!end) return;
      const said = again(end, slip.look);
      changed(said);
      if (slip.look === "unit") settings.focusUnit();
      else parts[slip.end]?.focus(slip.look);
    },
  });
  let state = emptyState();
  let parts: EndPart[] = [];

  function say(text: string): void {
    note.textContent = text;
  }

  function show(): void {
    if (capspanInPieces && !hasReadings(state)) page.forget();
    const answer: Answer | null = hasReadings(state)
      ? capspanInPieces
        ? page.answer(chart, toQuery(state), show)
        : CapspanCore.identify(chart, toQuery(state))
      : null;
    for (const p of parts) p.show(answer);
    settings.show();
    addEnd.hidden = state.ends.length > 1;
    onward.show(answer);
    verdict.show(answer, state.unit);
  }

  function changed(said: string): void {
    say(said);
    show();
    if (!whole()) fetchLate().then((came) => (came ? show() : say(words.partMissing)));
    writeAddress(state, chart.version);
  }

  // What is no length at all stays in its field; a length that cannot be right is taken, so that the answer can say
  // what went wrong.
  function complaint(reading: string): string | null {
    const read = CapspanCore.parseReading(reading, state.unit);
    return read.ok ? null : read.says;
  }

  // A changed number of ends needs other sections; what is typed in a field that stays is kept.
  function rebuild(): void {
    parts = state.ends.map(
      (_, end) => parts[end] ?? endPart({ ...given, template, drawings, end, removed: () => removeEnd(end) }),
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
    part(root, "board").hidden = false; // before show: a drawing is fetched when it is seen
    if (capspanInPieces && opened && hasReadings(state))
      page.whenAnswered(toQuery(state), (answer) => sinceMade(root, here, opened.made, chart.version, answer));
    show(); // the address stays as it was sent until the reader changes something
    if (!opened) return;
    say([words.restored, ...opened.remarks].join(" "));
    if (!capspanInPieces && hasReadings(state))
      sinceMade(root, here, opened.made, chart.version, CapspanCore.identify(chart, toQuery(state)));
  }
  window.addEventListener("hashchange", open);

  open();
  if (capspanInPieces) keepPanel(root, chart);
  part(root, "by-hand").removeAttribute("open");
  root.dataset.ready = "";
}

for (const root of document.querySelectorAll<HTMLElement>("[data-identify]")) void start(root);
