// Under serve only. The frame puts the address on the script element; the events are told in build/serve_live.go.
// The first "site" says what is up now; a later one that differs reloads the page. Problems that stopped a build
// are shown over the page, which stays as it was.
const address = document.currentScript?.dataset.live;

function listen(from: string): void {
  const source = new EventSource(from);
  let shown: HTMLElement | null = null;
  let up: string | null = null;
  source.addEventListener("site", ({ data }: MessageEvent<string>) => {
    if (up !== null && up !== data) location.reload();
    up = data;
    shown?.remove();
    shown = null;
  });
  source.addEventListener("problems", ({ data }: MessageEvent<string>) => {
    shown ??= document.body.appendChild(document.createElement("pre"));
    shown.className = "live-problems";
    shown.setAttribute("role", "alert");
    shown.textContent = data;
  });
}

if (address) listen(address);
