//go:build browser

package browser

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"capspan/build"
	"capspan/static/matcher"
)

// BenchmarkPieces identifies in an invented chart of 100,000 rows, on a processor four times
// slower: fifty rows by their own figures, as a caliper reads them, each on a page that has
// no pieces yet. It tells the median of how long an answer takes from a typed reading to
// the verdict on the page once the pieces are there, and of the bytes that came for it, packed
// by brotli as a host sends them. The site is the one of the tests with the directory and the
// pieces of the large chart in the place of its own: the page asks for nothing else.
func BenchmarkPieces(b *testing.B) {
	src, err := invented(100_000)
	if err != nil {
		b.Fatal(err)
	}
	_, chart, err := wholeChart(src)
	if err != nil {
		b.Fatal(err)
	}
	var pieces []build.File
	packed := map[string]int{}
	all := 0
	directory, err := matcher.Split(chart, 450, func(p matcher.Piece) (string, error) {
		content, err := json.Marshal(p)
		name := nameOf(content)
		pieces = append(pieces, build.File{Path: "assets/chart/" + name + ".json", Bytes: content, Stage: build.Assets})
		packed[name] = brotliSize(content)
		all += packed[name]
		return name, err
	})
	if err != nil {
		b.Fatal(err)
	}
	text, err := json.Marshal(struct {
		matcher.Directory
		Packed int `json:"packed"`
	}{directory, all})
	if err != nil {
		b.Fatal(err)
	}
	l := mustLarge(b)
	h := newHost(b, build.Handler(withDirectory(b, l.site, text, pieces), base))
	b.Logf("%d rows in %d files of %d kB together, the directory %d kB, packed", len(chart.Rows), len(pieces), all/1000, brotliSize(text)/1000)
	for b.Loop() {
		var took []float64
		var came []int
		asked := 0
		for n := 0; asked < 50; n += len(chart.Rows) / 53 {
			row := chart.Rows[n%len(chart.Rows)]
			end := row.Ends[0]
			if end.Cap == nil || end.Across == nil || len(row.Ends) > 1 {
				continue
			}
			asked++
			ms, bytes := measurePieces(b, h, packed, end)
			b.Logf("%s: %.1f ms, %d kB", row.Ref, ms, bytes/1000)
			took, came = append(took, ms), append(came, bytes)
		}
		slices.Sort(took)
		slices.Sort(came)
		b.ReportMetric(took[len(took)/2], "ms/verdict")
		b.ReportMetric(took[len(took)*9/10], "ms/verdict-90%")
		b.ReportMetric(float64(came[len(came)/2])/1000, "kB/question")
		b.ReportMetric(float64(came[len(came)*9/10])/1000, "kB/question-90%")
	}
}

// measurePieces opens a page for one row and gives its figures.
func measurePieces(t testing.TB, h *host, packed map[string]int, end matcher.ChartEnd) (ms float64, bytes int) {
	t.Helper()
	b := openTab(t)
	b.own = h.origin()
	if _, err := chromedp.Call(b.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slower}); err != nil {
		t.Fatal(err)
	}
	readings := func(cap, across string) string {
		return fmt.Sprintf("hold=%s&cap=%smm&across=%smm,%smm", end.Hold, cap, across, across)
	}
	b.visit(h, base+"identify/#"+readings(end.Cap.MM, end.Across.MM))
	b.until("the form", ready)
	const settled = `Promise.resolve(document.querySelector("[data-pieces-go]") !== null || (` + answered + `))`
	b.promised("an answer, or the question whether to fetch more", settled)
	for see[bool](b, `document.querySelector("[data-pieces-go]") !== null`) {
		b.do("agree", chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-pieces-go]")?.click()`))
		b.promised("an answer, or the question whether to fetch more", settled)
	}
	h.mu.Lock()
	for _, path := range h.asked {
		if _, name, found := strings.Cut(path, "/assets/chart/"); found {
			bytes += packed[strings.TrimSuffix(name, ".json")]
		}
	}
	h.asked = nil
	h.mu.Unlock()
	// Further readings across, as they are typed: from the key to the verdict that is laid out. Of nine the
	// shortest counts: what else the machine does only adds to it.
	ms = see[float64](b, `(() => {
		const field = document.querySelector('[data-quantity="across"] [data-reading]');
		const took = [];
		for (let n = 0; n < 9; n++) {
			field.value = `+quote(end.Across.MM+" mm")+`;
			const begin = performance.now();
			field.dispatchEvent(new KeyboardEvent("keydown", {key: "Enter", bubbles: true}));
			document.body.getBoundingClientRect();
			took.push(performance.now() - begin);
		}
		if (!/verdict--/.test(document.querySelector("[data-verdict-head]").innerHTML)) throw new Error("no verdict");
		return Math.min(...took);
	})()`)
	return ms, bytes
}

func brotliSize(content []byte) int {
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, brotli.BestCompression)
	w.Write(content)
	w.Close()
	return out.Len()
}
