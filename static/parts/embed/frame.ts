// The page that an iframe shows: the element alone. Its address says how it begins, behind the # so that no server is
// told: #unit=mm&hold=strap&scheme=dark&to=https://shop.example
//
// It tells the page around how high it is, and, when `to` names that page's origin, the answer. It listens to nothing.
const finder = document.querySelector("joint-finder");

function heard(text: string | null): string | null {
  try {
    const { origin, protocol } = new URL(text ?? "");
    return origin === text && /^https?:$/.test(protocol) ? origin : null;
  } catch {
    return null;
  }
}

// The heading is for those who hear the page; who sees it has one beside the frame. A constructed sheet is no inline
// style, which the site's policy forbids.
const sheet = new CSSStyleSheet();
sheet.replaceSync("body{margin:0}h1{position:absolute;clip-path:inset(50%);margin:0}");
document.adoptedStyleSheets = [sheet];

if (finder) {
  const asked = new URLSearchParams(location.hash.slice(1));
  const to = heard(asked.get("to"));
  for (const key of ["unit", "hold", "language", "scheme"]) {
    const value = asked.get(key);
    if (value) finder.setAttribute(key, value);
  }
  const tell = (message: object, origin: string) => {
    if (parent !== window) parent.postMessage(message, origin);
  };
  finder.addEventListener("joint-answer", (event) => {
    if (to) tell({ type: "joint-answer", detail: (event as CustomEvent).detail }, to);
  });
  new ResizeObserver(() => {
    tell({ type: "joint-finder-height", height: document.documentElement.offsetHeight }, "*"); // a number, for anyone
  }).observe(document.documentElement);
}
