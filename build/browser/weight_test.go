//go:build browser

package browser

import (
	"bytes"
	"fmt"
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/chromedp/chromedp"

	"capspan/build"
)

// The identify page is opened in a workshop with little signal: everything its first visit
// really asks for stays within its budget, packed as --compress packs it (brotli, quality 11).
func TestWeightOfFirstVisit(t *testing.T) {
	b := openTab(t)
	b.open("/identify/")
	b.until("the form", ready)
	if sum, most := b.weigh(), build.Budgets["identify"]; sum > most {
		t.Errorf("the first visit weighs %d bytes, at most %d are meant", sum, most)
	}
}

// weigh adds up what the tab has asked for so far, packed.
func (b *tab) weigh() int {
	b.t.Helper()
	b.mu.Lock()
	asked := slices.Clone(b.requests)
	b.mu.Unlock()
	slices.Sort(asked)
	sum := 0
	for _, address := range slices.Compact(asked) {
		u, err := url.Parse(address)
		if err != nil || u.Scheme == "data" {
			continue // part of a file that is counted
		}
		name := strings.TrimPrefix(u.Path, base)
		if name == "" || strings.HasSuffix(name, "/") {
			name += "index.html"
		}
		at := slices.IndexFunc(site.Files, func(f build.File) bool { return f.Path == name })
		if at < 0 {
			b.t.Errorf("asked for %s, which is no file of the site", address)
			continue
		}
		n := packed(b.t, site.Files[at].Bytes, 11)
		b.t.Logf("%7d bytes, %6d packed: %s", len(site.Files[at].Bytes), n, name)
		sum += n
	}
	b.t.Logf("%6d bytes together", sum)
	return sum
}

// packed is how many bytes a server would send, by brotli of a level from 0 to 11.
func packed(t testing.TB, content []byte, level int) int {
	t.Helper()
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, level)
	w.Write(content)
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Len()
}

// timing asks the core of the page, batch by batch because the page's clock is coarse,
// and returns the median time of one answer in milliseconds.
const timing = `(async () => {
	const chart = await (await fetch(document.querySelector("[data-identify]").dataset.chart)).json();
	const query = {ends: [{hold: "outside-clip", cap: ["1.060 in", "1.060 in", "1.060 in", "1.060 in", "1.060 in", "1.061 in"],
		across: ["3.226 in", "3.221 in", "3.222 in"]}]};
	for (let i = 0; i < 500; i++) CapspanCore.identify(chart, query);
	const times = [];
	for (let batch = 0; batch < 101; batch++) {
		const start = performance.now();
		for (let i = 0; i < 20; i++) CapspanCore.identify(chart, query);
		times.push((performance.now() - start) / 20);
	}
	times.sort((a, b) => a - b);
	return {Rows: chart.rows.length, Median: times[50], Slow: times[95]};
})()`

// BenchmarkIdentify is the time of one answer in Chromium; ns/op means nothing here.
//
//	go test -tags browser -run '^$' -bench Identify -benchtime 1x ./build/browser/
func BenchmarkIdentify(b *testing.B) {
	page := openTab(b)
	page.open("/identify/")
	page.until("the form", ready)
	var got struct {
		Rows         int
		Median, Slow float64
	}
	for b.Loop() {
		var err error
		if got, err = chromedp.Run(page.ctx, chromedp.Evaluate[struct {
			Rows         int
			Median, Slow float64
		}](timing, chromedp.EvalAwaitPromise)); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(got.Median, "ms/median")
	b.ReportMetric(got.Slow, "ms/p95")
	b.ReportMetric(float64(got.Rows), "rows")
	b.Log(fmt.Sprintf("median %.3f ms at %d rows", got.Median, got.Rows))
}
