//go:build browser

package browser

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"capspan/build"
)

// noteShown notes in a page, as it is painted, when its words were first there: Date.now
// of the page and the clock of the test are one.
const noteShown = `addEventListener("DOMContentLoaded", () => requestAnimationFrame(() => requestAnimationFrame(() => {
	window.shownAt = performance.timeOrigin + performance.now();
})))`

// BenchmarkReload is what a keeper waits for under serve, from the saved file to the page
// that shows the new figure; under 150 ms is meant. The whole build is the one behind it,
// in which the guide's examples are asked anew.
func BenchmarkReload(b *testing.B) {
	dir, src := b.TempDir(), build.Embedded()
	if err := os.CopyFS(filepath.Join(dir, "tables"), src.Tables); err != nil {
		b.Fatal(err)
	}
	src.Tables = os.DirFS(filepath.Join(dir, "tables"))
	for _, name := range []string{"content", "static", "templates"} { // the watcher wants a whole folder
		if err := os.Mkdir(filepath.Join(dir, name), 0o755); err != nil {
			b.Fatal(err)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	ready, ended, built := make(chan string, 1), make(chan error, 1), make(chan build.Built, 8)
	go func() {
		ended <- build.Serve(ctx, build.ServeOptions{Sources: src, Watch: dir, Addr: "127.0.0.1:0",
			Ready: func(address string) { ready <- address }, Built: func(one build.Built) { built <- one }})
	}()
	defer func() {
		stop()
		if err := <-ended; err != nil {
			b.Error(err)
		}
	}()
	address := <-ready
	<-built
	t := openTab(b)
	if _, err := chromedp.Call(t.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: noteShown}); err != nil {
		b.Fatal(err)
	}
	t.do("open the row", chromedp.Navigate(address+"joint/1310/"))
	t.until("the live script", `document.querySelector("script[data-live]")`)

	name := filepath.Join(dir, "tables", "joints-inch.yaml")
	shipped, err := os.ReadFile(name)
	if err != nil {
		b.Fatal(err)
	}
	var waits, builds []float64
	for n := 0; b.Loop(); n++ {
		// Never one that was built before, for answers are remembered; and near enough that the
		// guide's examples still say what their pages count on.
		figure := fmt.Sprintf("3.219%02d", 1+n%99)
		text := bytes.Replace(shipped, []byte("across: {is: 3.219,"), []byte("across: {is: "+figure+","), 1)
		start := time.Now()
		if err := os.WriteFile(name, text, 0o644); err != nil {
			b.Fatal(err)
		}
		t.until("the new figure "+figure, `window.shownAt && document.querySelector("main").innerText.includes("`+figure+` in")`)
		shown := see[float64](t, "window.shownAt")
		waits = append(waits, shown-float64(start.UnixMicro())/1000)
		builds = append(builds, float64((<-built).Took.Microseconds())/1000)
	}
	median := func(list []float64) float64 {
		slices.Sort(list)
		return list[len(list)/2]
	}
	b.ReportMetric(median(waits), "saved-to-shown-ms")
	b.ReportMetric(median(builds), "both-builds-ms")
	b.Logf("saved to shown %.0f, both builds %.0f", waits, builds)
}
