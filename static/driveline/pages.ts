// What the build needs of the calculations for their pages: every input with its words, the worked examples, and the
// documents that are cited. No page's script carries it; the program runs it behind the calculations.
import { decode, firstUnit, range, readFields } from "./fill";
import type * as frame from "./frame";
import { toField } from "../matcher/speech-number";
import type { Input, PageWords } from "./description";
import { page as angles } from "./page-angles";
import { page as balance } from "./page-balance";
import { page as clips } from "./page-clips";
import { page as ends } from "./page-ends";
import { page as fasteners } from "./page-fasteners";
import { page as length } from "./page-length";
import { page as life } from "./page-life";
import { page as speed } from "./page-speed";
import { page as torque } from "./page-torque";
import { unitOf } from "./quantities";
import { sources, type Source } from "./sources";
import { grounded } from "./speech-grounds";

declare const CapspanDriveline: typeof frame; // left by driveline.js

const pages: Record<string, PageWords> = { angles, balance, clips, ends, fasteners, length, life, speed, torque };

const nothing: PageWords = { about: "", purpose: [], groups: {}, hints: {}, example: "" };

/** A calculation as plain data, with the words that go with it. */
export interface Described {
  name: string;
  title: string;
  about: string;
  purpose: string[];
  groups: { id: string; title: string }[];
  inputs: DescribedInput[];
  cautions: string[];
  unchecked: string[];
  example: { says: string; fragment: string };
}

export interface DescribedInput {
  id: string;
  kind: "number" | "choice" | "text";
  group: string;
  label: string;
  hint: string;
  usual: string; // "0.1 to 3 m (0.33 to 9.8 ft)"
  units: { name: string; sign: string }[];
  options: { value: string; label: string }[];
  preset: string;
  optional: boolean;
  example: string; // what the worked example has, as words
  exampleText: string;
  exampleUnit: string;
}

/** Every calculation that is known, in the order it was added. */
export function described(): Described[] {
  return CapspanDriveline.known.map((calculation) => {
    const { words } = calculation;
    const page = pages[calculation.name] ?? nothing;
    const { filled } = decode(calculation, calculation.example);
    const given = readFields(calculation, filled).given;
    return {
      name: calculation.name,
      title: words.title,
      about: page.about,
      purpose: page.purpose,
      groups: Object.entries(page.groups).map(([id, title]) => ({ id, title })),
      cautions: words.cautions,
      unchecked: words.unchecked,
      example: { says: page.example, fragment: calculation.example },
      inputs: calculation.inputs.map((input): DescribedInput => {
        const own = words.inputs[input.id];
        const shown = given.find((g) => g.id === input.id);
        const number = input.kind === "number" ? input : undefined;
        const last = number?.quantity === "slope" ? undefined : number?.units[1];
        return {
          id: input.id,
          kind: input.kind,
          group: input.group,
          label: own?.label ?? input.id,
          hint: page.hints[input.id] ?? "",
          usual:
            number === undefined
              ? ""
              : range(number, firstUnit(number)) + (last === undefined ? "" : ` (${range(number, last)})`),
          units: (number?.units ?? []).map((name) => ({
            name,
            sign: (number && unitOf(number.quantity, name)?.sign) ?? name,
          })),
          options:
            input.kind === "choice"
              ? input.options.map((value) => ({ value, label: own?.options?.[value] ?? value }))
              : [],
          preset: presetOf(input),
          optional: input.kind !== "choice" && input.optional === true,
          example: shown === undefined ? "" : `${shown.value}${shown.unit === "" ? "" : ` ${shown.unit}`}`,
          exampleText: filled[input.id]?.text ?? "",
          exampleUnit: filled[input.id]?.unit ?? "",
        };
      }),
    };
  });
}

/** What a field holds before anything is typed. */
function presetOf(input: Input): string {
  if (input.kind === "text") return "";
  return input.kind === "number" ? toField(input.preset ?? "") : input.preset;
}

/** The documents that calculations name, for the page that lists them. */
export function documents(): { key: string; title: string; publisher: string; where: string; trust: string }[] {
  const own = Object.entries(sources).map(([key, source]: [string, Source]) => ({
    ...source,
    key,
    publisher: grounded(source.publisher),
    where: grounded(source.where),
    trust: grounded(source.trust),
  }));
  const ofChart = CapspanDriveline.provided.documents ?? [];
  return [...own, ...ofChart.filter(({ key }) => !(key in sources))];
}
