//go:build browser

package browser

import (
	"net/http"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
)

// What a first visit feels like where there is little signal: an old phone, 400 kbit/s,
// 400 ms from question to answer. The browser emulates both: it holds back what comes and
// stops its main thread three quarters of the time, so a busy machine shows in the figures.
const (
	bytesPerSecond = 400_000 / 8
	roundTrip      = 400 // milliseconds, for each request; making a connection costs nothing
	slower         = 4   // times
	visits         = 9   // of which the median is told
)

// felt is what a page notes of its own loading, in milliseconds from the start.
type felt struct {
	Largest float64 // when the largest thing that is seen was painted (W3C Largest Contentful Paint)
	What    string  // that thing
	Usable  float64 // when the form of the identify page is painted; 0: it has none
	Loaded  float64 // the load event
	Shift   float64 // how far the layout moved (W3C Layout Instability)
	Long    float64 // the longest task that ended after the load event, if over 50 ms (W3C Long Tasks)
	Tasks   int     // how many of them
	Before  float64 // the longest task that ended before it
	Bytes   int     // of the page and all it loaded, as they came, without heads
	Typing  float64 // the longest task while readings are typed, if over 50 ms
}

// noting begins before anything of the page. The layout and what is painted are noted to
// the end of the watch, so a form that pushes the text away shows.
const noting = `(() => {
	const noted = window.noted = {Largest: 0, What: "", Usable: 0, Loaded: 0, Shift: 0, tasks: []};
	const watch = (type, note) => new PerformanceObserver((list) => list.getEntries().forEach(note)).observe({type, buffered: true});
	watch("largest-contentful-paint", (e) => {
		noted.Largest = e.startTime;
		noted.What = e.element ? e.element.tagName + "." + e.element.className : "";
	});
	watch("layout-shift", (e) => { noted.Shift += e.value; });
	watch("longtask", (e) => noted.tasks.push([e.startTime + e.duration, e.duration]));
	addEventListener("load", () => { noted.Loaded = performance.now(); });
	new MutationObserver((_, self) => {
		if (!document.querySelector("[data-identify][data-ready]")) return;
		self.disconnect();
		requestAnimationFrame(() => setTimeout(() => { noted.Usable = performance.now(); }));
	}).observe(document, {subtree: true, childList: true, attributes: true, attributeFilter: ["data-ready"]});
})()`

// afterwards is how long a page is watched once it is loaded and its form is there: the
// service worker begins a second after the load event.
const afterwards = 2 * time.Second

const told = `(() => {
	const {tasks, ...noted} = window.noted;
	const after = tasks.filter(([end]) => end > noted.Loaded).map(([, long]) => long);
	const before = tasks.filter(([end]) => end <= noted.Loaded).map(([, long]) => long);
	const came = [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")];
	const each = new Map(came.map((e) => [e.name, e.encodedBodySize])); // what came ahead is told of twice
	const Bytes = [...each.values()].reduce((sum, n) => sum + n, 0);
	return {...noted, Bytes, Long: Math.max(0, ...after), Tasks: after.length, Before: Math.max(0, ...before)};
})()`

// feel opens a page as that phone does and tells what it felt like.
func (b *tab) feel(origin, address string) felt {
	b.t.Helper()
	b.phone()
	link := &network.Conditions{Latency: roundTrip, DownloadThroughput: bytesPerSecond, UploadThroughput: bytesPerSecond}
	_, err := chromedp.Call(b.ctx, network.EmulateNetworkConditionsByRule,
		network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{link}})
	if err == nil {
		_, err = chromedp.Call(b.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slower})
	}
	if err == nil {
		_, err = chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: noting})
	}
	if err != nil {
		b.t.Fatal(err)
	}
	b.do("open "+address, chromedp.Navigate(origin+strings.TrimSuffix(base, "/")+address))
	b.until("the whole page", `window.noted.Loaded > 0 && (!document.querySelector("[data-identify]") || window.noted.Usable > 0)`)
	time.Sleep(afterwards)
	f := see[felt](b, told)
	if address == "/identify/" {
		f.Typing = b.typing()
	}
	return f
}

// typing takes readings until the size is named, and tells the longest task.
func (b *tab) typing() float64 {
	b.t.Helper()
	see[int](b, `window.noted.tasks.length = 0`)
	b.do("choose the hold", chromedp.Click(chromedp.CSS(`label:has([data-hold][value="outside-clip"])`)))
	for _, reading := range []string{"1.060", "1.061"} {
		b.do("cap "+reading, chromedp.SendKeys(chromedp.CSS(capField), reading+kb.Enter))
	}
	for _, reading := range []string{"3.226", "3.221"} {
		b.do("across "+reading, chromedp.SendKeys(chromedp.CSS(acrossField), reading+kb.Enter))
	}
	b.until("the verdict", `document.querySelector("[data-verdict-head] .verdict--identified")`)
	time.Sleep(time.Second)
	return see[float64](b, `Math.max(0, ...window.noted.tasks.map(([, long]) => long))`)
}

// The chart is on its way before the scripts that read it are there, and comes once: the
// core is held back here until the chart has been asked for.
func TestChartComesAhead(t *testing.T) {
	asked, plain := make(chan bool, 8), build.Handler(site, base)
	h := newHost(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch {
		case strings.Contains(r.URL.Path, "/assets/chart."):
			asked <- true
		case strings.Contains(r.URL.Path, "/assets/matcher."):
			select {
			case <-asked:
			case <-time.After(5 * time.Second):
				t.Error("the chart waits for the core")
			}
		}
		plain.ServeHTTP(w, r)
	}))
	b := openTab(t)
	b.visit(h, base+"identify/")
	b.until("the form", ready)
	if len(asked) > 0 {
		t.Errorf("the chart was asked for %d times", len(asked)+1)
	}
}

// BenchmarkSpeed is the median of nine first visits, each with an empty cache, to a page of
// each kind that has a budget; ns/op means nothing here.
//
//	go test -tags browser -run '^$' -bench Speed -benchtime 1x ./build/browser
func BenchmarkSpeed(b *testing.B) {
	origin := packedHost(b)
	for _, visited := range []struct{ name, address string }{
		{"home", "/"},
		{"identify", "/identify/"},
		{"answer", "/identify/#hold=outside-clip&faces=over-caps&cap=1.060in,1.061in&across=3.226in,3.221in,3.222in"},
		{"row", "/joint/1310/"},
		{"guide", "/measure/caliper/"},
		{"guide-heaviest", heaviestGuide(b)},
	} {
		b.Run(visited.name, func(b *testing.B) {
			var all []felt
			for b.Loop() {
				for range visits {
					t := openTab(b)
					all = append(all, t.feel(origin, visited.address))
					if err := chromedp.Cancel(t.ctx); err != nil {
						b.Fatal(err)
					}
				}
			}
			report(b, all)
		})
	}
}

// heaviestGuide is the address of the guide page whose first visit weighs most.
func heaviestGuide(b *testing.B) string {
	b.Helper()
	for _, w := range build.Weigh(site) {
		if w.Kind == "guide" { // the heaviest of a kind comes first
			return "/" + strings.TrimPrefix(w.Address, base)
		}
	}
	b.Fatal("no guide page")
	return ""
}

// report gives the medians, and the range of what depends most on the machine's mood.
func report(b *testing.B, all []felt) {
	b.Helper()
	of := func(part func(felt) float64) []float64 {
		var list []float64
		for _, f := range all {
			list = append(list, part(f))
		}
		slices.Sort(list)
		return list
	}
	median := func(name string, part func(felt) float64) {
		b.ReportMetric(of(part)[len(all)/2], name)
	}
	median("lcp-ms", func(f felt) float64 { return f.Largest })
	if all[0].Usable > 0 {
		median("usable-ms", func(f felt) float64 { return f.Usable })
		median("typing-ms", func(f felt) float64 { return f.Typing })
	}
	median("bytes", func(f felt) float64 { return float64(f.Bytes) })
	median("load-ms", func(f felt) float64 { return f.Loaded })
	median("shift", func(f felt) float64 { return f.Shift })
	median("long-ms", func(f felt) float64 { return f.Long })
	median("long-tasks", func(f felt) float64 { return float64(f.Tasks) })
	b.Logf("largest: %s; lcp %.0f, usable %.0f, longest task after load %.0f, before %.0f, typing %.0f", all[len(all)/2].What,
		of(func(f felt) float64 { return f.Largest }), of(func(f felt) float64 { return f.Usable }),
		of(func(f felt) float64 { return f.Long }), of(func(f felt) float64 { return f.Before }), of(func(f felt) float64 { return f.Typing }))
}
