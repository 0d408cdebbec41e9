// The life-size view of a row's page. Markup: templates/joint.html. Until somebody has laid a card on the screen and
// said that it fits, the view says that it is not to scale. Without script the printed sheet is the way.
import { type Calibration, calibrate, cardLong, cardShort, holds, recall, remember } from "./card";
import { words } from "words:lifesize";

/** A part of the markup, or which one is missing. */
function find<E extends Element>(root: Element, hook: string): E {
  const element = root.querySelector<E>(`[data-${hook}]`);
  if (!element) throw new Error(`lifesize: no element data-${hook} on ${location.pathname}`);
  return element;
}

function drawingIn(frame: Element): SVGSVGElement {
  const svg = frame.querySelector("svg");
  if (!svg) throw new Error(`lifesize: no drawing on ${location.pathname}`);
  return svg;
}

/** The drawing's width and height in mm, which its own attributes say. */
function millimetres(svg: SVGSVGElement): { wide: number; high: number } {
  const [wide, high] = ["width", "height"].map((name) => {
    const said = /^([\d.]+)mm$/.exec(svg.getAttribute(name) ?? "");
    if (!said) throw new Error(`lifesize: the drawing has no ${name} in mm`);
    return Number(said[1]);
  });
  return { wide: wide ?? 0, high: high ?? 0 };
}

function resize(svg: SVGSVGElement, wide: number, high: number): void {
  svg.setAttribute("width", String(wide));
  svg.setAttribute("height", String(high));
}

/** Whether the page is enlarged by two fingers, which no other measure of the browser tells. */
function pinched(): boolean {
  return Math.abs((window.visualViewport?.scale ?? 1) - 1) > 0.005;
}

function start(root: HTMLElement): void {
  const says = find<HTMLElement>(root, "life-says");
  const scale = find<HTMLDetailsElement>(root, "life-scale");
  const card = find<SVGSVGElement>(root, "life-card");
  const slider = find<HTMLInputElement>(root, "life-slider");
  const [fits, forget] = [find<HTMLButtonElement>(root, "life-fits"), find<HTMLButtonElement>(root, "life-forget")];
  const svg = drawingIn(find(root, "life-drawing"));
  const size = millimetres(svg);
  let known = recall();
  let kept = true; // false once the browser refused to remember

  const inForce = (): Calibration | null => (known && holds(known, window) ? known : null);

  function set(longEdge: number): void {
    slider.value = String(longEdge);
    show();
  }

  function show(): void {
    const edge = Number(slider.value);
    const perMm = edge / cardLong;
    resize(card, cardShort * perMm, edge);
    resize(svg, size.wide * perMm, size.high * perMm);
    slider.setAttribute("aria-valuetext", words.scale(perMm));
    const calibration = inForce();
    const toScale = calibration !== null && !pinched() && Math.abs(calibration.perMm - perMm) < 0.0001;
    root.dataset.lifeToScale = String(toScale);
    const told = sentence(calibration, toScale);
    if (says.textContent !== told) says.textContent = told;
    fits.disabled = pinched();
    forget.hidden = known === null;
  }

  function sentence(calibration: Calibration | null, toScale: boolean): string {
    if (pinched()) return words.pinched;
    if (calibration && toScale) return words.toScale(calibration.perMm, kept);
    return known && !calibration ? words.otherScreen : words.notYet;
  }

  slider.addEventListener("input", show);
  for (const button of root.querySelectorAll<HTMLButtonElement>("[data-life-step]")) {
    button.addEventListener("click", () => set(Number(slider.value) + Number(button.dataset.lifeStep)));
  }
  // The plus and minus keys work wherever the focus is in the part: the other hand holds the card.
  scale.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return; // the browser's zoom
    const step = event.key === "+" || event.key === "=" ? 0.5 : event.key === "-" ? -0.5 : 0;
    if (step === 0) return;
    event.preventDefault();
    set(Number(slider.value) + step);
  });
  fits.addEventListener("click", () => {
    known = calibrate(Number(slider.value), window);
    kept = remember(known);
    scale.open = false;
    show();
  });
  forget.addEventListener("click", () => {
    known = null;
    remember(null);
    scale.open = true;
    show();
  });
  window.addEventListener("resize", show); // also fired by the zoom of the page
  window.visualViewport?.addEventListener("resize", show);

  root.hidden = false;
  const calibration = inForce();
  scale.open = calibration === null;
  // Without a card: what CSS calls a millimetre, 96 pixels to 25.4 of them.
  set((calibration?.perMm ?? 96 / 25.4) * cardLong);
}

const root = document.querySelector<HTMLElement>("[data-life]");
if (root) start(root);
