// The page of the enquiry slip. Markup: templates/order.html.
//
// One slip, one way round: a field changes it and says so; what the chart knows is looked up again, the paper is drawn
// and the slip is written into the address. A slip that is under way in this window is kept until the next one is begun,
// so that a second joint can be fetched from the identify page.
import { jointsFrom } from "../../order/add";
import { decodeSlip, encodeSlip } from "../../order/address";
import { factsOf, type JointFacts } from "../../order/facts";
import { mostJoints, type Slip, type SlipJoint, texts } from "../../order/slip";
import { sizeOf } from "../../order/texts";
import { most } from "../../shaft/record";
import { make, part } from "../identify/element";
import { keepPart } from "../shaft/keep";
import { recordJoint } from "../shaft/joints";
import { draft, keepDraft } from "./draft";
import { jointPart, type JointPart } from "./joint";
import { doneJoints, isTypedHere, nameOf, openAgain, sayJoints } from "./joints-said";
import { fetchKnown, type Known } from "./known";
import { inPieces } from "./looked-up";
import { outPart } from "./out";
import { slipPaper } from "./paper";
import { words } from "words:order";

async function start(root: HTMLElement): Promise<void> {
  try {
    run(root, await fetchKnown(root));
  } catch (error) {
    const trouble = part(root, "trouble");
    trouble.hidden = false;
    trouble.textContent = error instanceof Error ? error.message : String(error);
    if (capspanInPieces) openAgain(trouble, () => void start(root));
  }
  root.dataset.ready = "";
}

function run(root: HTMLElement, { chart, slips }: Known): void {
  const list = part(root, "joints");
  const note = part(root, "note-said");
  const trouble = part(root, "trouble");
  const paper = part(root, "slip");
  const blank = [...paper.childNodes];
  const add = part<HTMLInputElement>(root, "add");
  const template = part<HTMLTemplateElement>(root, "joint-template");
  const here = (address: string): string => new URL(address, location.href).href;
  const out = outPart(root, {
    page: here(location.pathname),
    schema: here(root.dataset.schema ?? ""),
    back,
    version: chart.version,
  });
  const keep = keepPart(root, (record) => {
    if (record.joints.length + slip.joints.length > most.joints) return false;
    record.joints.push(...slip.joints.map((joint) => recordJoint(joint, { chart, slips })));
    if (record.job === undefined && slip.job !== undefined) record.job = slip.job;
    return true;
  });
  let slip: Slip = { joints: [] };
  let parts: JointPart[] = [];
  let begun: Slip | null = null; // a slip of before that asks whether the new joint goes on it
  let undo: { joint: SlipJoint; at: number } | null = null;

  function back(joint: SlipJoint): string | undefined {
    if (joint.query !== undefined) {
      return here(`${root.dataset.identify ?? ""}#${CapspanCore.encodeAddress(joint.query, chart.version)}`);
    }
    if (capspanInPieces) {
      const place = inPieces(chart).placeOf(joint.row ?? "");
      return place && here(`${root.dataset.rows ?? ""}${place}`);
    }
    const known = slips.rows.some((r) => r.id === joint.row);
    return known ? here(`${root.dataset.rows ?? ""}${encodeURIComponent(joint.row ?? "")}/`) : undefined;
  }

  function tell(text: string, again?: () => void): void {
    note.replaceChildren(text);
    if (again === undefined) return;
    const button = make("button", { type: "button", class: "btn btn--plain" }, words.undo);
    button.addEventListener("click", again);
    note.append(" ", button);
  }

  function show(): void {
    if (capspanInPieces) {
      const whole = inPieces(chart).isHere(slip.joints, show);
      paper.hidden = !whole;
      if (!whole) {
        part(root, "out").hidden = true;
        sayJoints(trouble);
        return;
      }
      doneJoints(trouble);
    }
    const facts: JointFacts[] = slip.joints.map((joint) => factsOf(joint, chart, slips));
    parts.forEach((p, n) => {
      const f = facts[n];
      if (f !== undefined) p.show(f, n, parts.length);
    });
    part(root, "adding").hidden = slip.joints.length >= mostJoints;
    part(root, "full").hidden = slip.joints.length < mostJoints;
    paper.classList.toggle("slip--tight", slip.joints.length > 2); // one page all the same
    paper.replaceChildren(...(slip.joints.length > 0 ? slipPaper(slip, facts, chart.version, back) : blank));
    out.show(slip, facts);
    keep.show(slip.joints.length > 0);
  }

  function changed(): void {
    slip.chart = chart.version;
    const fragment = slip.joints.length > 0 ? encodeSlip(slip) : "";
    history.replaceState(null, "", `${location.pathname}${location.search}${fragment ? `#${fragment}` : ""}`);
    if (begun === null) keepDraft(fragment);
    show();
  }

  // Fields are made anew when joints come or go; the words about the slip keep theirs.
  function rebuild(): void {
    parts = slip.joints.map((joint, at) =>
      jointPart({
        template,
        joint,
        identify: joint.query === undefined && joint.row !== undefined ? "" : (back(joint) ?? ""),
        changed,
        removed: () => remove(at),
      }),
    );
    list.replaceChildren(...parts.map((p) => p.section));
    for (const [name] of texts) part<HTMLInputElement>(root, `text="${name}"`).value = slip[name] ?? "";
  }

  function remove(at: number): void {
    const [joint] = slip.joints.splice(at, 1);
    if (joint === undefined) return;
    undo = { joint, at };
    rebuild();
    changed();
    tell(words.removed, () => {
      if (undo === null) return;
      slip.joints.splice(undo.at, 0, undo.joint);
      rebuild();
      changed();
      parts[undo.at]?.focus();
      undo = null;
      tell(words.back);
    });
    note.querySelector("button")?.focus();
  }

  function put(joints: SlipJoint[]): void {
    const room = mostJoints - slip.joints.length;
    slip.joints.push(...joints.slice(0, room));
    rebuild();
    changed();
    const put = joints
      .slice(0, room)
      .map((joint) => (capspanInPieces ? nameOf(joint) : sizeOf(factsOf(joint, chart, slips))));
    tell(
      [put.length > 0 ? words.added(put.join(", ")) : "", joints.length > room ? words.full(mostJoints) : ""].join(" "),
    );
  }

  function addTyped(): void {
    if (capspanInPieces && !isTypedHere(root, inPieces(chart), addTyped)) return;
    const found = jointsFrom(add.value, slips);
    const wrong = part(root, "add-wrong");
    wrong.hidden = found.ok;
    wrong.textContent = found.ok ? "" : found.says;
    add.setAttribute("aria-invalid", String(!found.ok));
    if (!found.ok) {
      add.focus();
      return;
    }
    add.value = "";
    put(found.joints);
    add.focus();
  }

  part(root, "add-it").addEventListener("click", addTyped);
  part(root, "form").addEventListener("submit", (event) => event.preventDefault());
  add.addEventListener("keydown", (event) => {
    if (event.key === "Enter") addTyped();
  });
  for (const [name, , longest] of texts) {
    const field = part<HTMLInputElement>(root, `text="${name}"`);
    field.maxLength = longest;
    field.addEventListener("input", () => {
      const text = field.value.trim();
      if (text === "") delete slip[name];
      else slip[name] = text;
      changed();
    });
  }

  part(root, "join").addEventListener("click", () => answer(true));
  part(root, "anew").addEventListener("click", () => answer(false));
  function answer(onto: boolean): void {
    const { joints } = slip;
    if (onto && begun !== null) slip = begun;
    begun = null;
    part(root, "begun").hidden = true;
    if (onto) put(joints);
    else changed();
    note.focus({ preventScroll: true });
  }

  function open(): void {
    const fragment = location.hash.replace(/^#/, "");
    const kept = decodeSlip(draft());
    begun = null;
    undo = null;
    const opened = decodeSlip(fragment);
    const fromHere = fragment.includes("=") && !/(^|&)joint=/.test(CapspanCore.unseal(fragment).body);
    const remarks: string[] = [];
    if (opened.ok) {
      slip = opened.slip;
      remarks.push(...opened.remarks);
      if (slip.chart !== undefined && slip.chart !== chart.version)
        remarks.push(words.otherChart(slip.chart, chart.version));
      if (fromHere) {
        prefill();
        if (kept.ok && encodeSlip(kept.slip) !== encodeSlip(slip) && kept.slip.joints.length < mostJoints)
          begun = kept.slip;
      }
    } else if (opened.why === "empty" && kept.ok) {
      slip = kept.slip;
      remarks.push(words.kept);
    } else {
      slip = { joints: [] };
      prefill();
      if (opened.why !== "empty") remarks.push(opened.says);
    }
    trouble.hidden = remarks.length === 0;
    trouble.replaceChildren(...remarks.map((says) => make("p", {}, says)));
    const asks = part(root, "begun");
    asks.hidden = begun === null;
    if (begun !== null) {
      const sizes = begun.joints
        .map((joint) => (capspanInPieces ? nameOf(joint) : sizeOf(factsOf(joint, chart, slips))))
        .join(", ");
      part(root, "begun-says").textContent = words.begun(sizes || words.aJoint);
    }
    tell("");
    rebuild();
    if (fromHere && begun === null && opened.ok) changed();
    else show();
  }

  // The keeper's own details stand in a new slip as the one who asks.
  function prefill(): void {
    const { name, reach } = root.dataset;
    if (name) slip.from = name;
    if (reach) slip.fromReach = reach;
  }

  const names = part(root, "names");
  names.replaceChildren(...slips.rows.map((r) => make("option", { value: r.id })));
  part(root, "without").hidden = true;
  part(root, "board").hidden = false;
  window.addEventListener("hashchange", open);
  open();
}

for (const root of document.querySelectorAll<HTMLElement>("[data-order]")) void start(root);
