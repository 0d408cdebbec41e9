// One edition of the finder: the code of one language, where it came from, and how its parts are fetched. What the
// parts are called and what they must hash to is written in front of the script (build/embed.go).
import type { Form, FormOptions } from "./form";
import { words } from "words:embed";

interface Part {
  file: string; // from the root of the site: "assets/embed-core.1a2b3c4d.js"
  integrity: string;
}

declare const capspanEmbed: {
  language: string;
  direction: "ltr" | "rtl";
  folder: string; // of this language, from the root: "" or "es/"
  languages: Record<string, string>; // the folders of the others: {"es": "es/"}
  core: Part;
  late: Part;
};

/** What the script of the core hands over: the core and the form in a room of their own, without a global name. */
interface Core {
  openForm(options: FormOptions): Form;
  learn(late: unknown): void;
}

export interface Edition {
  language: string;
  direction: "ltr" | "rtl";
  site: string; // where the pages of this language lie, with its slash at the end
  pieces?: string; // where those of a large chart lie
  words: typeof words;
  elsewhere(language: string): string | undefined; // the script of another language
  core(): Promise<Core>;
  late(): Promise<boolean>; // false: it did not come, and the next call tries again
}

/** The event by which a script hands over what it holds. */
const handOver = "joint-finder-part";

const own = document.currentScript as HTMLScriptElement | null;

// The script lies in the folder of its language, its pinned copy beside all assets at the root.
const { folder } = capspanEmbed;
const up = own && /\/assets\/[^/]*$/.test(own.src) ? "../" : "../".repeat(folder.split("/").length);
const root = own && new URL(up, own.src).href;

interface Policy {
  createScriptURL(address: string): string;
}

// A page that wants trusted types (W3C) lets only a named policy put an address into a script. Ours takes nothing but
// addresses of this site.
let policy: Policy | undefined;
function trusted(address: string): string {
  const types = (window as unknown as { trustedTypes?: { createPolicy(name: string, rules: Policy): Policy } })
    .trustedTypes;
  if (!types) return address;
  policy ??= types.createPolicy("joint-finder", {
    createScriptURL(text) {
      if (root && text.startsWith(root)) return text;
      throw new TypeError(text);
    },
  });
  return policy.createScriptURL(address);
}

/** Runs a script of this site in the page and gives what it hands over; one without anything gives undefined. */
export function run(address: string, integrity = ""): Promise<unknown> {
  return new Promise((done, failed) => {
    const script = document.createElement("script");
    let given: unknown;
    script.addEventListener(handOver, (event) => {
      given = (event as CustomEvent).detail;
    });
    script.onload = () => done(given);
    script.onerror = () => failed(new Error(address));
    script.crossOrigin = "anonymous";
    script.integrity = integrity;
    script.nonce = own?.nonce ?? "";
    script.src = trusted(address);
    document.head.append(script);
    script.remove(); // it runs all the same, and the page stays as it was
  });
}

/** The edition this script is. */
export function thisEdition(): Edition | null {
  if (!root) {
    console.error("joint-finder: include the script without type=module; it has to know where it came from");
    return null;
  }
  const { core, late, language, direction, languages } = capspanEmbed;
  let coming: Promise<Core> | undefined;
  let learnt: Promise<boolean> | undefined;
  const get = (part: Part) =>
    run(root + part.file, part.integrity).then((given) => {
      if (typeof given !== "function") throw new Error(part.file);
      return given as (core?: Core) => Core;
    });
  const edition: Edition = {
    language,
    direction,
    site: root + folder,
    ...(capspanInPieces ? { pieces: `${root}assets/chart/` } : {}),
    words,
    elsewhere: (other) =>
      Object.keys(languages).includes(other) ? `${root}${languages[other]}embed/capspan.js` : undefined,
    core() {
      coming ??= get(core).then((given) => given());
      coming.catch(() => {
        coming = undefined;
      });
      return coming;
    },
    late() {
      learnt ??= Promise.all([edition.core(), get(late)]).then(
        ([known, given]) => {
          known.learn(given);
          return true;
        },
        () => {
          learnt = undefined;
          return false;
        },
      );
      return learnt;
    },
  };
  return edition;
}
