//go:build browser

package browser

import (
	"errors"
	"net/http/httptest"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"

	"capspan/build"
	"capspan/tables"
)

// withHistory is the shipped site after two issues that changed every sort of thing, and
// with two ids that are retired: the shipped chart may have none of it.
func withHistory(t *testing.T) build.Output {
	t.Helper()
	src := build.Embedded()
	files := mapped(t, src.Tables)
	files["retired.yaml"] = &fstest.MapFile{Data: []byte("retired:\n  - {id: 1310-old, to: [\"1310\", \"1330\"], why: one name was used for two sizes}\n  - {id: gone, why: nobody makes it}\n")}
	var text []byte
	var err error
	for _, r := range []tables.Release{
		{Chart: "2026-11-01-0123abc", Date: "2026-11-01", Why: "two readers measured it", Changes: []tables.Recorded{
			{Of: "joints-inch/1310", Column: "cap", What: "value", Old: "1.060 in", New: "1.062 in"}, {Of: "sources/profi", What: "title", Old: "a", New: "b"}}},
		{Chart: "2026-11-25-0123abd", Date: "2026-11-25", Why: "a list was read again, from its first page to its last", Tables: []string{"joints-inch 2.0.0", "fasteners 1.1.0"},
			Changes: []tables.Recorded{{Of: "joints-inch/1310", What: "renamed", Old: "1310-older", New: "1310", Why: "the name was misspelt"},
				{Of: "joints-inch/1310", Column: "across", What: "basis", Old: "memory", New: "common-practice"},
				{Of: "joints-inch/1330", Column: "across", What: "value", Old: "3.62 in", New: "3 5/8 in"},
				{Of: "fasteners/u-bolt-1310", Column: "torque", What: "value", Old: "14-17 lbf.ft", New: "14 lbf.ft"},
				{Of: "joints-inch/gone", What: "retired", Old: "cap 30 mm, across 100 mm, held by clips outside", Why: "nobody makes it"}}},
	} {
		if text, err = tables.Record(text, r); err != nil {
			t.Fatal(err)
		}
	}
	files["history.yaml"] = &fstest.MapFile{Data: text}
	src.Tables = files
	out, problems := siteOf(src, build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return out
}

// The pages that a history fills are held to what every other page is: valid HTML, axe in
// all media, every zoom, large targets; and on paper they say which chart they are of.
func TestFilledChanges(t *testing.T) {
	out := withHistory(t)
	pages := []string{"changes/", "joint/1310/", "joint/1310-old/", "joint/gone/"}

	dir := t.TempDir()
	var shown build.Output
	for _, f := range out.Files {
		for _, page := range pages {
			if f.Path == page+"index.html" {
				shown.Files = append(shown.Files, f)
			}
		}
	}
	if len(shown.Files) != len(pages) {
		t.Fatalf("%d of %v were built", len(shown.Files), pages)
	}
	if _, err := build.Write(filepath.Join(dir, "site"), shown); err != nil {
		t.Fatal(err)
	}
	check := exec.Command("java", "-Xss2m", "-jar", filepath.Join(tools, "vnu-jar", "build", "dist", "vnu.jar"), "--skip-non-html",
		"--filterpattern", ".*violates Content Security Policy.*", filepath.Join(dir, "site"))
	said, err := check.CombinedOutput()
	if exit := (*exec.ExitError)(nil); err != nil && !errors.As(err, &exit) || len(said) > 0 {
		t.Errorf("the HTML checker says (%v):\n%.4000s", err, said)
	}

	server := httptest.NewServer(build.Handler(out, base))
	defer server.Close()
	b := openTab(t)
	for _, page := range pages {
		t.Run(strings.ReplaceAll(page, "/", " "), func(t *testing.T) {
			b.t = t
			b.do("open it", chromedp.Navigate(server.URL+base+page))
			rows := map[string]int{"changes/": 7, "joint/1310/": 3}[page]
			if got := see[int](b, `document.querySelectorAll('main section[aria-labelledby="history"] tbody tr, main section[aria-labelledby^="chart-"] tbody tr').length`); got != rows {
				t.Errorf("%d lines of history, want %d", got, rows)
			}
			b.accessible()
			b.zooms()
			b.touchable()
			b.lookThrough(mediums[3])
			if block := see[string](b, `document.querySelector(".titleblock").innerText`); !strings.Contains(block, out.Chart.Name()) || !strings.Contains(block, out.Chart.Date) {
				t.Errorf("on paper the title block says %q", block)
			}
			b.lookThrough(medium{})
		})
	}
}

// On paper every kind of page says which chart it is of, and of which day.
func TestPaperSaysWhichChart(t *testing.T) {
	b := openTab(t)
	for _, address := range kinds(t) {
		b.open(address)
		b.lookThrough(mediums[3])
		if block := see[string](b, `(e => e.getClientRects().length > 0 ? e.innerText : "")(document.querySelector(".titleblock"))`); !strings.Contains(block, site.Chart.Name()) || !strings.Contains(block, site.Chart.Date) {
			t.Errorf("%s: on paper the title block says %q", address, block)
		}
	}
}
