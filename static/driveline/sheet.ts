// The result of a calculation as elements: what could not be used, then part by part the lines with formula and source,
// the limits side by side, sentences and pictures, and at the end what was not checked.
import type { Element, LimitLine, Line, PartReport, Picture, Report } from "./description";
import { el, type Child } from "./element";
import * as say from "./speech-result";
import type { Ground } from "./types";

const { sheet } = say;

/** The page that lists the documents, from any page of a calculation. */
const documentsPage = "../sources/";

declare const capspanInPieces: boolean; // put in by static/bundle.go

/** The page of a row of the chart. */
const rowPage = (id: string): string => `../../joint/${encodeURIComponent(id)}/`;

/** The page of a row of a large chart, with its size. */
function placeOf({ at }: Line, row: string): string {
  const place = at?.[row];
  return place ? `../../${place}` : "";
}

export function resultTree(report: Report): Element {
  const empty = report.lines.length === 0 && report.parts.every((part) => part.says.length === 0);
  return el(
    "div",
    { class: "result" },
    refusals(report),
    report.given.length > 0 && givenTree(report),
    empty && report.given.length === 0 && el("p", { class: "hint" }, sheet.nothing),
    ...report.parts.map((part) => partTree(part, report)),
    unchecked(report),
  );
}

function refusals(report: Report): Element | null {
  if (report.refusals.length === 0) return null;
  return el(
    "div",
    { class: "trouble" },
    el("h3", {}, sheet.refused),
    el("ul", {}, ...report.refusals.map((r) => el("li", {}, el("strong", {}, `${r.label}: `), r.says))),
  );
}

// What was given: on paper it stands for the form.
function givenTree(report: Report): Element {
  return el(
    "ul",
    { class: "result__given" },
    ...report.given.map((g) => el("li", {}, `${g.label}: `, el("strong", {}, say.withUnit(g.value, g.unit)))),
  );
}

function partTree(part: PartReport, report: Report): Element {
  const lines = report.lines.filter((line) => line.part === part.id);
  const limits = report.limits.filter((limit) => limit.part === part.id);
  return el(
    "section",
    { class: "result__part", id: `part-${part.id}` },
    el("h3", {}, part.title),
    part.missing.length > 0 && el("p", { class: "hint" }, say.stillNeeded(part.missing)),
    lines.length > 0 &&
      el("dl", { class: "result__lines" }, ...lines.map((line, n) => lineTree(line, sameFrom(line, lines[n - 1])))),
    ...part.pictures.flatMap(pictureTree),
    ...part.says.map((text) => el("p", {}, text)),
    ...groups(limits).map(limitsTree),
  );
}

/** Whether a line rests on what the one above it rests on. */
function sameFrom(line: Line, above: Line | undefined): boolean {
  return (
    above !== undefined &&
    line.formula !== "" &&
    line.formula === above.formula &&
    JSON.stringify(line.source) === JSON.stringify(above.source)
  );
}

function lineTree(line: Line, same: boolean): Element {
  const { formula } = line;
  return el(
    "div",
    { class: "result__line" },
    el("dt", {}, line.label),
    el(
      "dd",
      { class: "result__value num" },
      say.withUnit(line.value, line.unit),
      ...(line.rows ?? []).flatMap((row, n): Child[] => [
        n > 0 && ", ",
        el("a", { href: (capspanInPieces && placeOf(line, row)) || rowPage(row) }, row),
      ]),
      line.also && el("span", { class: "converted" }, `≈ ${line.also}`),
    ),
    same
      ? el("dd", { class: "result__from result__same" }, sheet.sameFormula)
      : el(
          "dd",
          { class: "result__from" },
          formula !== "" && el("span", { class: "result__formula" }, formula),
          formula !== "" && " ",
          ...from(line.source),
          line.valid && el("span", { class: "result__valid" }, ` ${line.valid}`),
        ),
  );
}

/** What figures rest on, each document a link to the list of them: the basis once, then where, and what it is about. */
function from(source: readonly Cited[]): Child[] {
  const bases = [...new Set(source.map((g) => g.basis))];
  return bases.flatMap((basis, n): Child[] => {
    const cited = source.filter((g) => g.basis === basis);
    const named = cited.flatMap((g, i): Child[] => [
      i === 0 ? "" : "; ",
      g.source !== "" && documentTree(g.source),
      say.placeIn(g.at, g.says, g.source !== ""),
    ]);
    const words = say.capital(say.basisWords[basis]);
    const sayMore = cited.some((g) => g.source !== "" || (g.says ?? "") !== "");
    return [n === 0 ? "" : " ", sayMore ? `${words}: ` : words, ...named, "."];
  });
}

/** A link to a document; paper has room for its publisher only. */
function documentTree(key: string): Element {
  const [publisher, title] = say.documentName(key);
  return el(
    "a",
    { href: `${documentsPage}#source-${key}` },
    publisher,
    title !== "" && el("span", { class: "document" }, title),
  );
}

/** A ground, and what a limit of it is about. */
interface Cited extends Ground {
  says?: string;
}

/** Limits of one thing stand together. */
function groups(limits: readonly LimitLine[]): LimitLine[][] {
  const list: LimitLine[][] = [];
  for (const limit of limits) {
    const group = list.find((g) => g[0]?.of === limit.of);
    if (group) group.push(limit);
    else list.push([limit]);
  }
  return list;
}

function limitsTree(limits: readonly LimitLine[]): Element {
  const stands = limits[0]?.stands ?? [];
  const caption = limits[0]?.of ?? "";
  return el(
    "div",
    { class: "scroll", role: "region", tabindex: "0", "aria-label": say.limitsOf(caption) },
    el(
      "table",
      { class: "limits" },
      el("caption", {}, caption),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          el("th", { scope: "col" }, sheet.limit),
          ...stands.map((stand) => el("th", { scope: "col" }, say.standing(stand.of, stand.value))),
          el("th", { scope: "col" }, sheet.source),
        ),
      ),
      el("tbody", {}, ...alike(limits).map(limitTree)),
    ),
  );
}

/** Limits that say the same stand on one line, with all who say so. */
function alike(limits: readonly LimitLine[]): LimitLine[][] {
  const list: LimitLine[][] = [];
  for (const limit of limits) {
    const group = list.find((g) => g[0]?.limit === limit.limit);
    if (group) group.push(limit);
    else list.push([limit]);
  }
  return list;
}

function limitTree(limits: readonly LimitLine[]): Element {
  const [first] = limits;
  return el(
    "tr",
    {},
    el("th", { scope: "row", class: "num" }, first?.limit ?? ""),
    ...(first?.stands ?? []).map(({ met }) =>
      el("td", { class: met === "within" ? "met" : "met met--out" }, say.metWords[met]),
    ),
    el("td", {}, ...from(limits.flatMap((limit) => limit.source.map((g) => ({ ...g, says: limit.says }))))),
  );
}

function pictureTree(picture: Picture): Element[] {
  const drawn = el(
    "figure",
    { class: "figure plot__figure", id: `picture-${picture.id}` },
    picture.tree,
    el("figcaption", {}, picture.title),
  );
  const { table } = picture;
  if (table === undefined) return [drawn];
  return [
    drawn,
    el(
      "details",
      { class: "plot__table" },
      el("summary", { class: "plot__summary" }, sheet.inFigures),
      el(
        "div",
        { class: "scroll", role: "region", tabindex: "0", "aria-label": picture.title },
        el(
          "table",
          {},
          el("thead", {}, el("tr", {}, ...table.head.map((h) => el("th", { scope: "col", class: "num" }, h)))),
          el(
            "tbody",
            {},
            ...table.rows.map((row) => el("tr", {}, ...row.map((cell) => el("td", { class: "num" }, cell)))),
          ),
        ),
      ),
    ),
  ];
}

function unchecked(report: Report): Element | null {
  if (report.unchecked.length === 0) return null;
  return el(
    "section",
    { class: "result__part" },
    el("h3", {}, sheet.notChecked),
    el("ul", {}, ...report.unchecked.map((text) => el("li", {}, text))),
  );
}
