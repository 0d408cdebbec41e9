// The counter's page: what to ask, and the link that asks it. Markup: templates/send.html. The link is made anew with
// every change and travels only when the reader sends it.
import { encodeRequest, longestLink } from "../../matcher/request";
import type { MeasureRequest, RequestEnd } from "../../matcher/request";
import type { Hold, Quantity, Unit } from "../../matcher/types";
import { part } from "../identify/element";
import { deliverPart } from "./deliver";
import { qrPicture } from "./picture";
import { words } from "words:send";

function start(root: HTMLElement): void {
  const form = part<HTMLFormElement>(root, "form");
  const two = part<HTMLInputElement>(root, "two");
  const second = part(root, "second");
  const unit = part<HTMLSelectElement>(root, "unit");
  const from = part<HTMLInputElement>(root, "from");
  const question = part<HTMLTextAreaElement>(root, "question");
  const ready = part(root, "ready-link");
  const trouble = part(root, "trouble");
  const preview = part<HTMLAnchorElement>(root, "preview");
  const qr = part(root, "qr");
  const deliver = deliverPart(root);

  // A page of the guide opens this one with what it is about: #hold=inside-clip&faces=groove-outer.
  const given = new URLSearchParams(location.hash.slice(1));
  const holdField = part<HTMLSelectElement>(root, "hold");
  if ([...holdField.options].some((o) => o.value === given.get("hold"))) holdField.value = given.get("hold") ?? "";
  const facesGiven = holdField.value
    ? CapspanCore.facesFor(holdField.value as Hold).find((f) => f === given.get("faces"))
    : undefined;
  if (given.has("take")) {
    for (const box of root.querySelectorAll<HTMLInputElement>('[data-end="0"] [data-take]')) {
      box.checked = box.value === given.get("take");
    }
  }

  function asked(): MeasureRequest {
    const ends = [...root.querySelectorAll<HTMLElement>("[data-end]")].map((field, n): RequestEnd => {
      const take = [...field.querySelectorAll<HTMLInputElement>("[data-take]:checked")].map(
        (box) => box.value as Quantity,
      );
      const hold = root.querySelectorAll<HTMLSelectElement>("select[data-hold]")[n]?.value;
      if (!hold) return { take };
      const end: RequestEnd = { take, hold: hold as Hold };
      if (n === 0 && facesGiven && CapspanCore.facesFor(end.hold ?? "unknown").includes(facesGiven))
        end.faces = facesGiven;
      return end;
    });
    const request: MeasureRequest = {
      ends: (two.checked ? ends : ends.slice(0, 1)).filter((end) => end.take.length > 0),
    };
    if (unit.value) request.unit = unit.value as Unit;
    if (from.value.trim()) request.from = from.value;
    if (question.value.trim()) request.question = question.value;
    return request;
  }

  function show(): void {
    second.hidden = !two.checked;
    const request = asked();
    const link = `${new URL(root.dataset.card ?? "", location.href).href}#${encodeRequest(request)}`;
    const wrong =
      request.ends.length === 0
        ? words.nothing
        : link.length > longestLink
          ? words.tooLong(link.length, longestLink)
          : null;
    trouble.hidden = wrong === null;
    trouble.textContent = wrong ?? "";
    ready.hidden = wrong !== null;
    if (wrong !== null) return;
    deliver.show({
      link,
      subject: words.subject(from.value.trim()),
      message: words.message(question.value.trim()),
    });
    preview.href = link;
    const picture = qrPicture(link, words.qr);
    if (picture) qr.replaceChildren(picture);
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", show);
  form.addEventListener("change", show);
  show();
  part(root, "without").hidden = true;
  part(root, "board").hidden = false;
  root.dataset.ready = "";
}

for (const root of document.querySelectorAll<HTMLElement>("[data-send]")) start(root);
