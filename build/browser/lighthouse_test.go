//go:build browser

package browser

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// least is what Lighthouse must give: https://developer.chrome.com/docs/lighthouse tells
// how each score is made up. It judges as for a middling phone on a slow 4G link.
var least = map[string]int{"accessibility": 100, "best-practices": 100, "seo": 100, "performance": 95}

// audited is what lighthouse.mjs says of one page.
type audited struct {
	Address string
	Error   string
	Scores  map[string]int
	Missed  []struct {
		Category, Audit, Title, Value string
		Where                         []string
	}
	Paint, Seconds float64
}

// TestLighthouse asks for one audit of each kind of page that has a budget. Performance
// alone depends on what else the machine does: where it misses, the median of three counts.
// A page with faults comes last, to show that it really judges.
func TestLighthouse(t *testing.T) {
	origin, port := packedHost(t)+strings.TrimSuffix(base, "/"), ownChromium(t)
	pages := audit(t, port, origin+"/", origin+"/identify/", origin+"/joint/1310/", origin+"/measure/caliper/", spoiledPage(t))
	last := len(pages) - 1
	for _, page := range pages[:last] {
		t.Logf("%-17s %v, largest paint %.0f ms, in %.1f s", strings.TrimPrefix(page.Address, origin), page.Scores, page.Paint, page.Seconds)
		if page.Error != "" {
			t.Errorf("%s: %s", page.Address, page.Error)
		}
		if page.Scores["performance"] < least["performance"] {
			scores := []int{page.Scores["performance"]}
			for _, again := range audit(t, port, page.Address, page.Address) {
				scores = append(scores, again.Scores["performance"])
			}
			slices.Sort(scores)
			t.Logf("performance of three audits: %d", scores)
			page.Scores["performance"] = scores[1]
		}
		for category, want := range least {
			got, judged := page.Scores[category]
			if !judged || got < want {
				t.Errorf("%s: %d for %s, at least %d is meant%s", page.Address, got, category, want, page.complaints(category))
			}
		}
	}
	for category, want := range least {
		spoiled := pages[last]
		if got := spoiled.Scores[category]; category != "performance" && (got >= want || spoiled.complaints(category) == "") {
			t.Errorf("a spoiled page has %d for %s, with these complaints: %s", got, category, spoiled.complaints(category))
		}
	}
}

// spoiledPage lacks something in each category but performance, which a page so small has
// whatever else it lacks.
func spoiledPage(t *testing.T) string {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		w.Write([]byte(`<html><head><meta name=robots content=noindex></head><body>x<img src="data:,"><script>throw Error("x")</script></body></html>`))
	}))
	t.Cleanup(server.Close)
	return server.URL + "/"
}

// complaints are the audits of a category that took points away.
func (a audited) complaints(category string) string {
	var b strings.Builder
	for _, m := range a.Missed {
		if m.Category == category {
			fmt.Fprintf(&b, "\n\t%s: %s %s\n\t\t%s", m.Audit, m.Title, m.Value, strings.Join(m.Where, "\n\t\t"))
		}
	}
	return b.String()
}

// audit runs Lighthouse on pages, one after the other.
func audit(t *testing.T, port string, addresses ...string) []audited {
	t.Helper()
	run := exec.CommandContext(t.Context(), "node", append([]string{"../npm/lighthouse.mjs", port}, addresses...)...)
	var trouble bytes.Buffer
	run.Stderr = &trouble
	said, err := run.Output()
	if err != nil {
		t.Fatalf("run Lighthouse: %v; build/test.sh installs node and lighthouse\n%s", err, &trouble)
	}
	var pages []audited
	for line := range strings.Lines(string(said)) {
		var page audited
		if err := json.Unmarshal([]byte(line), &page); err != nil {
			t.Fatalf("%v: %.300s", err, line)
		}
		pages = append(pages, page)
	}
	if len(pages) != len(addresses) {
		t.Fatalf("%d audits of %d pages\n%s", len(pages), len(addresses), &trouble)
	}
	return pages
}

// ownChromium starts a browser that Lighthouse has to itself, and returns the port it
// listens on. It finds no other machine than this one.
func ownChromium(t *testing.T) string {
	t.Helper()
	path, err := exec.LookPath("chromium-headless-shell")
	if err != nil {
		if path, err = exec.LookPath("chromium"); err != nil {
			t.Fatal("no Chromium here: build/test.sh installs chromium-headless-shell")
		}
	}
	profile := t.TempDir()
	browser := exec.Command(path, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-extensions",
		"--disable-breakpad", "--disable-domain-reliability", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
		"--remote-debugging-port=0", "--user-data-dir="+profile, "about:blank")
	if err := browser.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		browser.Process.Kill()
		browser.Wait() // its end is no news
	})
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		said, err := os.ReadFile(filepath.Join(profile, "DevToolsActivePort"))
		if port, _, whole := strings.Cut(string(said), "\n"); err == nil && whole {
			return port
		}
	}
	t.Fatal("Chromium says no port within 20 s")
	return ""
}
