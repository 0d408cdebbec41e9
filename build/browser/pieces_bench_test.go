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
// slower: two dozen rows by their own figures, as a caliper reads them, each on a page that has
// no pieces yet. Once the pieces are there, it tells the median of how long the core takes for
// the answer, and of how long it is from a typed reading to the verdict laid out on the page;
// and that of the bytes that came for it, packed by brotli as a host sends them. The site is
// the one of the tests with the files of the large chart in the place of its own: the page
// asks for nothing else.
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
		var took, core []float64
		var came []int
		asked := 0
		for n := 0; asked < 24; n += len(chart.Rows) / 25 {
			row := chart.Rows[n%len(chart.Rows)]
			end := row.Ends[0]
			if end.Cap == nil || end.Across == nil || len(row.Ends) > 1 {
				continue
			}
			asked++
			m := measurePieces(b, h, packed, end)
			b.Logf("%s: core %.1f ms, to the verdict %.1f ms, %d kB", row.Ref, m.core, m.verdict, m.bytes/1000)
			core, took, came = append(core, m.core), append(took, m.verdict), append(came, m.bytes)
		}
		slices.Sort(core)
		slices.Sort(took)
		slices.Sort(came)
		b.ReportMetric(core[len(core)/2], "ms/answer")
		b.ReportMetric(core[len(core)*9/10], "ms/answer-90%")
		b.ReportMetric(took[len(took)/2], "ms/verdict")
		b.ReportMetric(took[len(took)*9/10], "ms/verdict-90%")
		b.ReportMetric(float64(came[len(came)/2])/1000, "kB/question")
		b.ReportMetric(float64(came[len(came)*9/10])/1000, "kB/question-90%")
	}
}

// measuredPieces is what one question takes: ms of the core, ms to the verdict, and bytes.
type measuredPieces struct {
	core, verdict float64
	bytes         int
}

// coreAlone asks the core the question of the page's address until no piece is missing, and
// then times it. Of nine the shortest counts: what else the machine does only adds to it.
const coreAlone = `(async () => {
	const address = new URL(document.querySelector("[data-identify]").dataset.chart, location.href);
	const json = async (url) => (await fetch(url)).json();
	const pieced = CapspanPieces.open(await json(address));
	const { query } = CapspanCore.decodeAddress(location.hash.slice(1));
	const ask = () => CapspanPieces.ask(pieced, query);
	for (let missing = ask(); Array.isArray(missing); missing = ask())
		for (const n of missing) CapspanPieces.add(pieced, n, await json(new URL("chart/" + CapspanPieces.nameOf(pieced, n) + ".json", address)));
	const took = [];
	for (let n = 0; n < 9; n++) {
		const begin = performance.now();
		ask();
		took.push(performance.now() - begin);
	}
	return Math.min(...took);
})()`

// measurePieces opens a page for one row and gives its figures.
func measurePieces(t testing.TB, h *host, packed map[string]int, end matcher.ChartEnd) (m measuredPieces) {
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
	settle := func() {
		const settled = `Promise.resolve(document.querySelector("[data-pieces-go]") !== null || (` + answered + `))`
		b.promised("an answer, or the question whether to fetch more", settled)
		for see[bool](b, `document.querySelector("[data-pieces-go]") !== null`) {
			b.do("agree", chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-pieces-go]")?.click()`))
			b.promised("an answer, or the question whether to fetch more", settled)
		}
	}
	settle()
	h.mu.Lock()
	for _, path := range h.asked {
		if _, name, found := strings.Cut(path, "/assets/chart/"); found {
			m.bytes += packed[strings.TrimSuffix(name, ".json")]
		}
	}
	h.asked = nil
	h.mu.Unlock()
	var err error
	if m.core, err = chromedp.Run(b.ctx, chromedp.Evaluate[float64](coreAlone, chromedp.EvalAwaitPromise)); err != nil {
		t.Fatal(err)
	}
	// Further readings across, as they are typed: from the key to the verdict that is laid out. The first is not
	// timed: with it the question is another, and may touch more.
	typed := `(() => {
		const field = document.querySelector('[data-quantity="across"] [data-reading]');
		field.value = ` + quote(end.Across.MM+" mm") + `;
		const begin = performance.now();
		field.dispatchEvent(new KeyboardEvent("keydown", {key: "Enter", bubbles: true}));
		document.body.getBoundingClientRect();
		return performance.now() - begin;
	})()`
	see[float64](b, typed)
	settle()
	for n := range 5 {
		if took := see[float64](b, typed); n == 0 || took < m.verdict {
			m.verdict = took
		}
	}
	if !see[bool](b, `/verdict--/.test(document.querySelector("[data-verdict-head]").innerHTML)`) {
		t.Fatal("no verdict")
	}
	return m
}

func brotliSize(content []byte) int {
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, brotli.BestCompression)
	w.Write(content)
	w.Close()
	return out.Len()
}
