// <joint-finder>: the identification in somebody else's page. This script is small and stays so: it makes the element,
// and fetches the form, the core and the chart when the element comes near to being seen.
//
// What stands between the tags is shown until the form is there, and again when it cannot be: a link, by our example.
// The page around is left as it is: a shadow root, a constructed style sheet, no global name, no storage, no cookie.
import { run, thisEdition, type Edition } from "./edition";
import type { Form } from "./form";

const name = "joint-finder";

/** How near to the screen the element is when its parts are fetched, px. */
const near = "600px";

const editions = new Map<string, Edition>();
const coming = new Map<string, Promise<unknown>>();

class JointFinder extends HTMLElement {
  static readonly observedAttributes = ["unit", "hold", "language"];

  /** Takes in an edition of another language. */
  static speak(edition: Edition): void {
    if (!editions.has(edition.language)) editions.set(edition.language, edition);
  }

  private readonly root = this.attachShadow({ mode: "open" });
  private form: Form | null = null;
  private turn = 0; // a form that comes when another was asked for meanwhile is dropped
  private watch: IntersectionObserver | null = null;
  private seen = false;

  constructor() {
    super();
    this.root.append(document.createElement("slot"));
  }

  connectedCallback(): void {
    // What a page's code set before this script was here lies on the element and hides the properties.
    for (const key of JointFinder.observedAttributes as (keyof JointFinder & string)[]) {
      const early = Object.getOwnPropertyDescriptor(this, key)?.value;
      if (early === undefined) continue;
      delete (this as Record<string, unknown>)[key];
      this.setAttribute(key, String(early));
    }
    if (this.seen) return;
    this.watch = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) this.start();
      },
      { rootMargin: near },
    );
    this.watch.observe(this);
  }

  disconnectedCallback(): void {
    this.watch?.disconnect();
  }

  attributeChangedCallback(attribute: string): void {
    if (!this.seen) return;
    if (attribute === "language") void this.open();
    else this.form?.set(attribute === "unit" ? { unit: this.unit } : { hold: this.hold });
  }

  get unit(): string {
    return this.getAttribute("unit") ?? "";
  }
  set unit(unit: string) {
    this.setAttribute("unit", unit);
  }
  get hold(): string {
    return this.getAttribute("hold") ?? "";
  }
  set hold(hold: string) {
    this.setAttribute("hold", hold);
  }
  get language(): string {
    return this.getAttribute("language") ?? "";
  }
  set language(language: string) {
    this.setAttribute("language", language);
  }

  private start(): void {
    this.watch?.disconnect();
    this.seen = true;
    void this.open();
  }

  private async open(): Promise<void> {
    const turn = ++this.turn;
    let edition = first;
    try {
      edition = await editionOf(this.language);
      const { unit, hold } = this;
      const [core, chart] = await Promise.all([edition.core(), chartOf(edition)]);
      if (turn !== this.turn) return;
      this.form = core.openForm({
        root: this.root,
        chart,
        edition,
        unit: this.unit || unit,
        hold: this.hold || hold,
        answered: (detail) =>
          this.dispatchEvent(new CustomEvent("joint-answer", { bubbles: true, composed: true, detail })),
      });
    } catch (error) {
      if (turn === this.turn) this.fail(edition, error);
    }
  }

  // Without its parts the element is a way to the full page.
  private fail({ words, site, language, direction }: Edition, error: unknown): void {
    console.error(name, error);
    this.form = null;
    const link = document.createElement("a");
    link.href = `${site}identify/`;
    link.target = "_top";
    link.rel = "noopener";
    link.textContent = words.fullPage;
    const retry = document.createElement("button");
    retry.type = "button";
    retry.textContent = words.retry;
    retry.addEventListener("click", () => void this.open());
    const said = document.createElement("p");
    said.setAttribute("role", "status");
    said.lang = language;
    said.dir = direction;
    said.append(words.failed, " ", link, " ", retry);
    this.root.replaceChildren(said, document.createElement("slot"));
  }
}

function chartOf(edition: Edition): Promise<unknown> {
  const address = `${edition.site}embed/chart.json`;
  const chart =
    coming.get(address) ??
    fetch(address, { credentials: "omit" }).then((response) => {
      if (!response.ok) throw new Error(`${address}: ${response.status}`);
      return response.json();
    });
  coming.set(address, chart);
  chart.catch(() => coming.delete(address)); // the next try asks again
  return chart;
}

/** The edition of the language, its script fetched when it is not here yet; the first, where the site has no other. */
async function editionOf(language: string): Promise<Edition> {
  const wanted = language.toLowerCase();
  for (const tag of [wanted, wanted.split("-")[0] ?? ""]) {
    const there = editions.get(tag);
    if (there) return there;
    const address = first.elsewhere(tag);
    if (!address) continue;
    const script = coming.get(address) ?? run(address);
    coming.set(address, script);
    await script.catch(() => coming.delete(address));
    const come = editions.get(tag);
    if (come) return come;
  }
  if (wanted !== "") console.warn(first.words.noLanguage(language, first.language));
  return first;
}

const edition = thisEdition();
let first: Edition;
if (edition) {
  const defined = customElements.get(name) as typeof JointFinder | undefined;
  first = edition;
  if (defined) defined.speak?.(edition);
  else {
    JointFinder.speak(edition);
    customElements.define(name, JointFinder);
  }
}
