//go:build browser

package browser

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"

	"capspan/build"
)

// works goes the reader's way and reports what the pages complain about.
func (b *tab) works(h *host) {
	b.t.Helper()
	b.visit(h, base+"identify/#"+reading1310)
	b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
	b.until("the drawings", drawn)
	b.visit(h, base+"joint/1310/")
	if got := b.heading(); !strings.Contains(got, "1310") {
		b.t.Errorf("the row is shown as %q", got)
	}
	b.promised("time for a worker", `new Promise((done) => setTimeout(() => done(true), 2000))`)
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, trouble := range b.troubles {
		if !strings.HasPrefix(trouble, "asks another origin: "+h.origin()) {
			b.t.Error(trouble)
		}
	}
}

// Browsers refuse storage in several ways; in each the site works as it does without a
// worker, and nothing is thrown.
func TestStorageDenied(t *testing.T) {
	for name, script := range map[string]string{
		"no workers at all":      `delete Navigator.prototype.serviceWorker;`,
		"registering is refused": `ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException("denied", "SecurityError"));`,
		"the name is refused": `Object.defineProperty(Navigator.prototype, "serviceWorker", {get() { throw new DOMException("denied", "SecurityError"); }});
			for (const name of ["localStorage", "sessionStorage", "caches"]) Object.defineProperty(window, name, {get() { throw new DOMException("denied", "SecurityError"); }});`,
	} {
		t.Run(name, func(t *testing.T) {
			h := newHost(t, build.Handler(site, base))
			b := openTab(t)
			if _, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script}); err != nil {
				t.Fatal(err)
			}
			b.works(h)
		})
	}
}

// A page without an origin of its own, as in a sandbox, has no storage for real: the
// browser itself refuses. Its own fetches are refused as well, so this looks at a row.
func TestStorageOfSandbox(t *testing.T) {
	whole := build.Handler(site, base)
	h := newHost(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Access-Control-Allow-Origin", "*") // for scripts with an integrity
		whole.ServeHTTP(sandboxed{w}, r)
	}))
	b := openTab(t)
	b.visit(h, base+"joint/1310/")
	if got := see[string](b, `(() => { try { return String(navigator.serviceWorker); } catch (e) { return e.name; } })()`); got != "SecurityError" {
		t.Fatalf("the sandbox does not refuse: %s", got)
	}
	b.promised("time for a worker", `new Promise((done) => setTimeout(() => done(true), 1500))`)
	if got := b.heading(); !strings.Contains(got, "1310") {
		t.Errorf("the row is shown as %q", got)
	}
	if h.hears("worker.js") {
		t.Error("a worker was asked for")
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, trouble := range b.troubles {
		if strings.HasPrefix(trouble, "exception") {
			t.Error(trouble)
		}
	}
}

// sandboxed puts every page into a sandbox that lets scripts run.
type sandboxed struct{ http.ResponseWriter }

func (s sandboxed) WriteHeader(code int) {
	s.Header().Add("Content-Security-Policy", "sandbox allow-scripts")
	s.ResponseWriter.WriteHeader(code)
}

// quota limits what the browser lets the host's pages store, in bytes.
func (b *tab) quota(h *host, bytes float64) {
	b.t.Helper()
	if _, err := chromedp.Call(b.ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: h.origin(), QuotaSize: &bytes}); err != nil {
		b.t.Fatal(err)
	}
}

// The storage is full from the start: nothing is kept, nothing is left half kept, and the
// site works. With room again the next visit keeps it.
func TestStorageFull(t *testing.T) {
	h := newHost(t, build.Handler(site, base))
	b := openTab(t)
	b.visit(h, base)
	b.quota(h, 20_000)
	b.works(h)
	h.hears("")
	b.visit(h, base)
	b.promised("the try to be given up", `navigator.serviceWorker.getRegistration().then(async (r) => r === undefined && (await caches.keys()).length === 0)`)
	b.works(h)
	b.quota(h, 100_000_000)
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
}

// There is room for one chart and not for two: the reader keeps the old one, is told that
// there is a newer, and can give up the copy for it.
func TestStorageFullForUpdate(t *testing.T) {
	newer := changed(t)
	h := newHost(t, build.Handler(site, base))
	b := openTab(t)
	row := base + "joint/" + changedRow + "/"
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
	used, err := chromedp.Run(b.ctx, chromedp.Evaluate[float64]("navigator.storage.estimate().then((e) => e.usage)", chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	b.quota(h, used+200_000)
	h.publish(build.Handler(newer, base))
	b.visit(h, row)
	b.until("the news", offered+`?.includes("no room")`)
	if text := see[string](b, across); !strings.Contains(text, oldAcross) {
		t.Errorf("the row is another:\n%.300s", text)
	}
	b.do("give up the copy", chromedp.Click(chromedp.CSS("[data-newer-use]")))
	b.until("the new figure", across+`.includes(`+quote(newAcross)+`)`)
	// The browser gives the room back in its own time, so the copy comes with one of the next visits.
	whole := fmt.Sprintf(`caches.keys().then(async (names) => names.length === 1 && (await (await caches.open(names[0])).keys()).length >= %d)`, len(keptFiles(newer)))
	for range 10 {
		b.visit(h, row)
		b.promised("time for a copy", `new Promise((done) => setTimeout(() => done(true), 3000))`)
		if got, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](whole, chromedp.EvalAwaitPromise)); err == nil && got {
			return
		}
	}
	t.Error("the newer chart is not kept after ten visits")
}
