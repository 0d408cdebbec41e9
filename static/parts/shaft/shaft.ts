// The page of the shaft record. Markup: templates/shaft.html.
//
// The record in hand lives in the page; after every change it is kept on the device, and where that fails the page says
// so, keeps what it has, and asks for a file. Everything works without the chart: it only adds what it says of the
// joints today.
import { jointsFrom } from "../../order/add";
import { encodeSlip } from "../../order/address";
import { factsOf, type JointFacts } from "../../order/facts";
import { emptyRecord, most, recordDocument, type ShaftJoint, type ShaftRecord } from "../../shaft/record";
import { saveFile } from "../order/file";
import { isTypedHere, leadTo, untilOpen } from "../order/joints-said";
import { fetchKnown, type Known } from "../order/known";
import { inPieces } from "../order/looked-up";
import { make, part } from "../identify/element";
import { bareJoint, lookedUp } from "./bare";
import { deviceShelf, newId, remember } from "./device";
import { isDay } from "../../shaft/read";
import { bind, calculationField, figureField, jointField, type JointField } from "./fields";
import { recordJoint, slipJoint } from "./joints";
import { shelfPart } from "./list";
import { recordSheet } from "./sheet";
import { words } from "words:shaft";

function start(root: HTMLElement): void {
  const form = part(root, "record");
  const paper = part(root, "sheet");
  const blank = [...paper.childNodes];
  const kept = part(root, "kept");
  const note = part(root, "note-said");
  const add = part<HTMLInputElement>(root, "add");
  const schema = new URL(root.dataset.schema ?? "", location.href).href;
  const shelf = deviceShelf(schema);
  const template = (hook: string): HTMLTemplateElement => part<HTMLTemplateElement>(root, hook);
  let record: ShaftRecord | null = null;
  let id = "";
  let known = ""; // the record's text on the shelf, as far as this page knows
  let lost = false; // the last change is in this page alone
  let chart: Known | null = null;
  let joints: JointField[] = [];

  const list = shelfPart(root, shelf, { open, take, deleted: (gone) => gone === id && close() });

  function tell(text: string, undo?: () => void): void {
    note.replaceChildren(text);
    if (undo === undefined) return;
    const button = make("button", { type: "button", class: "btn btn--plain" }, words.undo);
    button.addEventListener("click", undo);
    note.append(" ", button);
    button.focus();
  }

  function addressOf(joint: ShaftJoint): string | undefined {
    const full = (address: string): string => new URL(address, location.href).href;
    if (joint.identification !== undefined) return full(`${root.dataset.identify ?? ""}#${joint.identification}`);
    if (capspanInPieces) {
      const place = chart === null ? undefined : inPieces(chart.chart).placeOf(joint.row ?? "");
      return place && full(`${root.dataset.rows ?? ""}${place}`);
    }
    const there = joint.row !== undefined && (chart === null || chart.slips.rows.some((r) => r.id === joint.row));
    return there ? full(`${root.dataset.rows ?? ""}${encodeURIComponent(joint.row ?? "")}/`) : undefined;
  }

  function show(): void {
    form.hidden = record === null;
    if (record === null) {
      paper.replaceChildren(...blank);
      return;
    }
    const now = capspanInPieces ? lookedUp(record.joints, chart, { show, changed, note }) : chart;
    const facts = record.joints.map((j): JointFacts | null =>
      now === null ? null : factsOf(slipJoint(j), now.chart, now.slips),
    );
    joints.forEach((j, n) => {
      j.show(facts[n] ?? null);
      if (capspanInPieces) leadTo(j.section, addressOf(record?.joints[n] ?? {}));
    });
    // One page all the same: much on it takes smaller letters.
    paper.classList.toggle("slip--tight", record.joints.length > 2 || record.calculations.length > 4);
    paper.replaceChildren(...recordSheet(record, { facts, version: root.dataset.version ?? "", address: addressOf }));
    const enquiry = part<HTMLAnchorElement>(root, "enquiry");
    enquiry.hidden = record.joints.length === 0;
    if (record.joints.length > 0) {
      const slip = { joints: record.joints.map(slipJoint), ...(record.job === undefined ? {} : { job: record.job }) };
      enquiry.href = `${root.dataset.order ?? ""}#${encodeSlip(slip)}`;
    }
  }

  function changed(): void {
    if (record === null) return;
    record.chart = root.dataset.version ?? "";
    const written = tidied(record);
    const answer = shelf.keep(id, written, known);
    if (answer.is === "changed") {
      // Another window wrote to it: both stay.
      id = newId();
      known = "";
      record.title = words.copyOf(record.title);
      part<HTMLInputElement>(root, "title").value = record.title;
      go(id);
      changed();
      tell(words.changedElsewhere);
      return;
    }
    lost = answer.is === "refused";
    if (answer.is === "kept") known = answer.text;
    kept.textContent = lost ? words.notKept : words.kept;
    kept.classList.toggle("trouble", lost);
    list.show(id);
    show();
  }

  function go(to: string): void {
    remember(to);
    history.replaceState(null, "", `${location.pathname}${location.search}${to ? `#record=${to}` : ""}`);
  }

  function rebuild(): void {
    const now = record;
    if (now === null) return;
    bindAll(now);
    date.value = now.date ?? "";
    joints = now.joints.map((joint, n) =>
      jointField({
        template: template("joint-template"),
        joint,
        n,
        address: addressOf(joint) ?? "",
        changed,
        removed: () => remove(now.joints, n),
      }),
    );
    part(root, "joints").replaceChildren(...joints.map((j) => j.section));
    part(root, "figures").replaceChildren(
      ...now.figures.map((f, n) =>
        figureField(template("figure-template"), f, n, changed, () => remove(now.figures, n)),
      ),
    );
    part(root, "calculations").replaceChildren(
      ...now.calculations.map((c, n) => {
        const address = `${root.dataset.driveline ?? ""}${c.calculation}/#${c.fragment}`;
        return calculationField(template("calculation-template"), c, address, () => remove(now.calculations, n));
      }),
    );
    part(root, "no-calculations").hidden = now.calculations.length > 0;
  }

  // Fields that are always there get the record of the day: a copy without listeners takes the place of the old one.
  function bindAll(now: ShaftRecord): void {
    for (const key of ["title", "job", "by", "notes"] as const) {
      const old = part<HTMLInputElement | HTMLTextAreaElement>(root, key);
      const field = old.cloneNode() as HTMLInputElement | HTMLTextAreaElement;
      old.replaceWith(field);
      bind(field, now, key, changed);
    }
  }

  // A day is written as ISO 8601 has it, or not kept; what was typed stays in its field.
  const date = part<HTMLInputElement>(root, "date");
  date.addEventListener("input", () => {
    if (record === null) return;
    const text = date.value.trim();
    const good = text === "" || isDay(text);
    const wrong = part(root, "date-wrong");
    wrong.hidden = good;
    wrong.textContent = good ? "" : words.badDate(text);
    date.setAttribute("aria-invalid", String(!good));
    if (!good) return;
    if (text === "") delete record.date;
    else record.date = text;
    changed();
  });

  function remove<T>(from: T[], n: number): void {
    const [gone] = from.splice(n, 1);
    rebuild();
    changed();
    if (gone === undefined) return;
    tell(words.removed, () => {
      from.splice(n, 0, gone);
      rebuild();
      changed();
      tell(words.back);
    });
  }

  function hold(taken: ShaftRecord, of: string, text: string): void {
    record = taken;
    id = of;
    known = text;
    lost = false;
    kept.textContent = text === "" ? "" : words.kept;
    kept.classList.remove("trouble");
    go(id);
    rebuild();
    list.show(id);
    show();
  }

  function open(of: string): void {
    const taken = shelf.take(of);
    if (taken.is === "here") {
      hold(taken.record, of, taken.text);
      list.complain(taken.complaints);
      tell("");
    } else {
      list.say(taken.is === "none" ? words.noRecord : taken.says);
    }
  }

  /** A record that came from a file, or a new one. */
  function take(fresh: ShaftRecord): void {
    hold(fresh, newId(), "");
    changed();
    tell("");
    part(root, "title").focus();
  }

  function close(): void {
    record = null;
    id = "";
    go("");
    show();
  }

  part(root, "new").addEventListener("click", () => take(emptyRecord(words.untitled)));
  part(root, "print").addEventListener("click", () => window.print());
  part(root, "file").addEventListener("click", () => {
    if (record === null) return;
    saveFile(words.fileName(record.title), `${JSON.stringify(recordDocument(tidied(record), schema), null, 2)}\n`);
    lost = false;
  });
  part(root, "figure-add").addEventListener("click", () => {
    if (record === null || record.figures.length >= most.figures) return;
    record.figures.push({ label: "", value: "" });
    rebuild();
    [...root.querySelectorAll<HTMLInputElement>("[data-figure-label]")].pop()?.focus();
  });
  function addJoint(): void {
    if (record === null) return;
    if (capspanInPieces && chart !== null && !isTypedHere(root, inPieces(chart.chart), addJoint)) return;
    const found = chart === null ? { ok: false as const, says: words.noChart } : jointsFrom(add.value, chart.slips);
    const room = most.joints - record.joints.length;
    const says = found.ok ? (found.joints.length > room ? words.full(most.joints) : "") : found.says;
    const wrong = part(root, "add-wrong");
    wrong.hidden = says === "";
    wrong.textContent = says;
    add.setAttribute("aria-invalid", String(says !== ""));
    if (found.ok && chart !== null) {
      const now = chart;
      record.joints.push(
        ...found.joints.slice(0, room).map((j) => (capspanInPieces ? bareJoint(j) : recordJoint(j, now))),
      );
      if (says === "") add.value = "";
      rebuild();
      changed();
    }
    add.focus();
  }
  part(root, "add-it").addEventListener("click", addJoint);
  form.addEventListener("submit", (event) => event.preventDefault());
  add.addEventListener("keydown", (event) => {
    if (event.key === "Enter") addJoint();
  });

  window.addEventListener("storage", (event) => {
    const of = shelf.idOf(event.key);
    if (of === null && event.key !== null) return;
    list.show(id);
    if (record !== null && of === id && event.newValue !== known) {
      note.replaceChildren(event.newValue === null ? words.deletedElsewhere : words.otherWindow);
      if (event.newValue === null) return;
      const button = make("button", { type: "button", class: "btn btn--plain" }, words.showIt);
      button.addEventListener("click", () => open(id));
      note.append(" ", button);
    }
  });
  window.addEventListener("beforeunload", (event) => {
    if (lost) event.preventDefault(); // the browser asks
  });
  const named = (): string => /^#?record=([0-9a-z]{1,40})$/.exec(location.hash)?.[1] ?? "";
  window.addEventListener("hashchange", () => {
    if (named() !== "" && named() !== id) open(named());
  });

  part(root, "without").hidden = true;
  part(root, "board").hidden = false;
  list.show("");
  if (named() !== "") open(named());
  show();
  root.dataset.ready = "";
  const opened = capspanInPieces ? untilOpen(root, () => fetchKnown(root), list.say) : fetchKnown(root);
  opened.then((came) => {
    chart = came;
    part(root, "names").replaceChildren(...came.slips.rows.map((r) => make("option", { value: r.id })));
    show(); // nothing that is being typed is touched
    root.dataset.charted = "";
  }, list.say);
}

// Lines of figures that were begun and not filled are no part of the record yet, and a record has a title always.
function tidied(record: ShaftRecord): ShaftRecord {
  return {
    ...record,
    title: record.title || words.untitled,
    figures: record.figures.filter((f) => f.label !== "" && f.value !== ""),
  };
}

for (const root of document.querySelectorAll<HTMLElement>("[data-shaft]")) start(root);
