// Under serve only. The frame puts the address on the script element; the events are told in build/serve_live.go.
// A "site" says which edition of this page is up; the page knows its own from the head it came with, and reloads when
// they differ. Problems that stopped a build are shown over the page, which stays as it was.
const address = document.currentScript?.dataset.live;

function edition(): string | null {
  const [own] = performance.getEntriesByType("navigation") as PerformanceNavigationTiming[];
  return own?.serverTiming.find(({ name }) => name === "edition")?.description ?? null;
}

function listen(from: string): void {
  const source = new EventSource(`${from}?page=${encodeURIComponent(decodeURI(location.pathname))}`);
  let shown: HTMLElement | null = null;
  let mine = edition();
  source.addEventListener("site", ({ data }: MessageEvent<string>) => {
    mine ??= data;
    if (mine !== data) location.reload();
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
