// Runs Lighthouse on pages, one line of JSON a page: node lighthouse.mjs <port of a running Chromium> <address>...
// Called by build/browser/lighthouse_test.go. Its reporting of errors to its makers is a matter of its command line and
// of asking for it; called from here it has none.
import lighthouse from "lighthouse";

const [port, ...addresses] = process.argv.slice(2);

for (const address of addresses) {
  const { lhr } = await lighthouse(address, {
    port: Number(port),
    logLevel: "error",
    onlyCategories: ["performance", "accessibility", "best-practices", "seo"],
    disableFullPageScreenshot: true, // scores nothing
  });
  const scores = {};
  const missed = [];
  for (const { id, score, auditRefs } of Object.values(lhr.categories)) {
    scores[id] = Math.round(score * 100);
    for (const { id: audit, weight } of auditRefs) {
      const { score, scoreDisplayMode, title, displayValue, errorMessage, details } = lhr.audits[audit];
      const judged = scoreDisplayMode === "error" || (weight > 0 && score !== null && score < 1);
      if (judged) missed.push({ category: id, audit, title, value: errorMessage ?? displayValue ?? "", where: places(details) });
    }
  }
  const error = lhr.runtimeError?.message ?? "";
  const paint = lhr.audits["largest-contentful-paint"].numericValue ?? 0;
  console.log(JSON.stringify({ address, error, scores, missed, paint, seconds: lhr.timing.total / 1000 }));
}

/** The first things an audit points at, in a line each. */
function places(details) {
  const items = (details?.items ?? []).slice(0, 5);
  return items.map((item) => item.node?.snippet ?? item.url ?? item.description ?? JSON.stringify(item).slice(0, 300));
}
