//go:build browser

package browser

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"capspan/build"
)

// A first visit with a network, then the host is gone: every kind of page, a verdict,
// the page for lost addresses, and every single file with its own bytes.
func TestOfflineSecondVisit(t *testing.T) {
	h := newHost(t, build.Handler(site, base))
	b := openTab(t)
	files := keptFiles(site)
	b.visit(h, base)
	b.kept(len(files))
	h.down()

	titles := map[string]string{}
	for _, f := range site.Files {
		if _, rest, found := strings.Cut(string(f.Bytes), "<title>"); found {
			titles[f.Path], _, _ = strings.Cut(rest, "</title>")
		}
	}
	for _, address := range kinds(t) {
		b.visit(h, strings.TrimSuffix(base, "/")+address)
		want := titles[strings.TrimPrefix(address, "/")+"index.html"]
		if got := see[string](b, "document.title"); want == "" || got != want {
			t.Errorf("%s is shown as %q, want %q", address, got, want)
		}
	}

	b.visit(h, base+"identify/#"+reading1310)
	b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
	b.until("the drawings", drawn)

	// As a host answers them: without the slash, with the file's name, with a query.
	for _, address := range []string{"chart", "chart/index.html", "chart/?from=somewhere"} {
		b.visit(h, base+address)
		if got := see[string](b, "document.title"); got != titles["chart/index.html"] {
			t.Errorf("%s is shown as %q", address, got)
		}
	}
	if at := see[string](b, "location.pathname"); at != base+"chart/" {
		t.Errorf("the address with a query became %s", at)
	}
	for _, address := range []string{"joint/no-such-row/", "constructor", "__proto__/", "joint/%00/"} {
		b.visit(h, base+address)
		if got := see[string](b, "document.title"); got != titles["404.html"] {
			t.Errorf("%s is shown as %q, want the page for lost addresses", address, got)
		}
	}

	var addresses []string
	for _, f := range files {
		addresses = append(addresses, addressOf(site, f))
	}
	list, err := json.Marshal(addresses)
	if err != nil {
		t.Fatal(err)
	}
	sums, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](fmt.Sprintf(`(async () => {
		const sums = [];
		for (const address of %s) {
			const response = await fetch(address).catch(() => null);
			const bytes = response?.ok ? await crypto.subtle.digest("SHA-256", await response.arrayBuffer()) : new ArrayBuffer(0);
			sums.push([...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join(""));
		}
		return sums;
	})()`, list), chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	for n, f := range files {
		if want := fmt.Sprintf("%x", sha256.Sum256(f.Bytes)); sums[n] != want {
			t.Errorf("without a network %s has the sum %q, want %q", f.Path, sums[n], want)
		}
	}
	t.Logf("%d files kept", len(files))
}

// What a job needs is there after the first part of the list, long before the rest: a
// host that answers for nothing else stands for a signal that is lost early.
func TestOfflineAfterFirstPart(t *testing.T) {
	whole := build.Handler(site, base)
	h := newHost(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, base+"joint/") || strings.HasPrefix(r.URL.Path, base+"data/") {
			panic(http.ErrAbortHandler)
		}
		whole.ServeHTTP(w, r)
	}))
	b := openTab(t)
	b.visit(h, base)
	b.promised("the worker to begin", `navigator.serviceWorker.ready.then((r) => r.active.state === "activated")`)
	h.down()
	b.visit(h, base+"identify/#"+reading1310)
	b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
	b.visit(h, base+"joint/1310/")
	if got := b.heading(); got != "This page is not at hand" {
		t.Errorf("a row that was never kept is shown as %q", got)
	}
}

// Without script nothing registers, and what an earlier visit kept is still given out.
func TestOfflineWithoutScript(t *testing.T) {
	h := newHost(t, build.Handler(site, base))
	off := func(b *tab, value bool) {
		if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: value}); err != nil {
			t.Fatal(err)
		}
	}
	never := openTab(t)
	off(never, true)
	never.visit(h, base+"joint/1310/")
	if got := never.heading(); !strings.Contains(got, "1310") {
		t.Errorf("without script the row is shown as %q", got)
	}
	if h.hears("worker.js") {
		t.Error("a page without script asked for the worker")
	}
	b := openTab(t)
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
	off(b, true)
	h.down()
	b.visit(h, base+"joint/1310/")
	if got := b.heading(); !strings.Contains(got, "1310") {
		t.Errorf("without script and network the row is shown as %q", got)
	}
}

// Two clocks ten years apart, to either side: the host's as its Date says it, and the
// page's own. Nothing is kept shorter or longer for it.
func TestOfflineWrongClock(t *testing.T) {
	for name, years := range map[string]int{"the device is ten years behind": 10, "the device is ten years ahead": -10} {
		t.Run(name, func(t *testing.T) {
			whole := build.Handler(site, base)
			h := newHost(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
				now := time.Now().AddDate(years, 0, 0).UTC()
				w.Header().Set("Date", now.Format(http.TimeFormat))
				w.Header().Set("Expires", now.Add(time.Hour).Format(http.TimeFormat))
				whole.ServeHTTP(w, r)
			}))
			b := openTab(t)
			if _, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
				Source: fmt.Sprintf(`const away = %d * 365.25 * 864e5; const RealDate = Date;
					Date = class extends RealDate { constructor(...a) { a.length ? super(...a) : super(RealDate.now() - away); } static now() { return RealDate.now() - away; } };`, years),
			}); err != nil {
				t.Fatal(err)
			}
			b.visit(h, base)
			if got := see[int](b, "new Date().getFullYear()"); got > time.Now().Year()-8 && got < time.Now().Year()+8 {
				t.Fatalf("the page's clock says %d", got)
			}
			b.kept(len(keptFiles(site)))
			h.down()
			b.visit(h, base+"identify/#"+reading1310)
			b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
			b.visit(h, base+"joint/1310/")
			if got := b.heading(); !strings.Contains(got, "1310") {
				t.Errorf("the row is shown as %q", got)
			}
		})
	}
}

// Two charts on one host, one under the other: each is kept apart, and one that goes
// takes nothing of the other with it.
func TestOfflineTwoBases(t *testing.T) {
	root, problems := siteOf(build.Embedded(), build.Options{Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	mux := http.NewServeMux()
	mux.Handle("/", build.Handler(root, "/"))
	mux.Handle(base, build.Handler(site, base))
	h := newHost(t, mux)
	b := openTab(t)
	b.visit(h, "/")
	b.kept(len(keptFiles(root)))
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
	h.down()
	for _, address := range []string{"/joint/1310/", base + "joint/1310/", "/measure/", base + "measure/"} {
		b.visit(h, address)
		if got := see[string](b, `document.querySelector(".top__name").getAttribute("href")`); !strings.HasPrefix(address, got) || (got == "/") == strings.HasPrefix(address, base) {
			t.Errorf("%s is shown from the chart at %s", address, got)
		}
	}
	names, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string]("caches.keys()", chromedp.EvalAwaitPromise))
	if err != nil || len(names) != 2 {
		t.Errorf("stores: %q, want one for each chart", names)
	}
}

// The size of the list is part of the site: another build, the same worker.
func TestWorkerIsReproducible(t *testing.T) {
	again, problems := build.Site(build.Embedded(), build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	find := func(out build.Output) string {
		at := slices.IndexFunc(out.Files, func(f build.File) bool { return f.Path == "worker.js" })
		if at < 0 {
			t.Fatal("no worker.js")
		}
		return string(out.Files[at].Bytes)
	}
	if find(again) != find(site) {
		t.Error("two builds of the same sources give two workers: every reader would be offered a newer chart")
	}
}

// BenchmarkOfflineVisit is a second visit with the host gone, at the speed of this machine
// and with the processor slowed four times: from the address to the load event, on the
// identify page to the verdict; the median of nine.
//
//	go test -tags browser -run '^$' -bench OfflineVisit -benchtime 1x ./build/browser/
func BenchmarkOfflineVisit(b *testing.B) {
	h := newHost(b, build.Handler(site, base))
	first := openTab(b)
	first.visit(h, base)
	first.kept(len(keptFiles(site)))
	h.down()
	for _, address := range []string{"", "identify/#" + reading1310, "joint/1310/", "measure/clips/", "chart/joints-inch/"} {
		for _, slower := range []float64{1, 4} {
			b.Run(fmt.Sprintf("%s/slower=%g", strings.SplitN(address+"home", "/", 2)[0], slower), func(b *testing.B) {
				if _, err := chromedp.Call(first.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slower}); err != nil {
					b.Fatal(err)
				}
				var times []float64
				for b.Loop() {
					for range 9 {
						first.do("leave", chromedp.Navigate("about:blank"))
						start := time.Now()
						first.visit(h, base+address)
						if strings.HasPrefix(address, "identify") {
							first.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
						}
						times = append(times, float64(time.Since(start).Milliseconds()))
					}
				}
				slices.Sort(times)
				b.ReportMetric(times[len(times)/2], "ms/median")
				b.ReportMetric(times[len(times)-1], "ms/worst")
			})
		}
	}
}
