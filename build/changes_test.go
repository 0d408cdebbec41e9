package build

import (
	"bytes"
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/mmcdole/gofeed"
	"golang.org/x/net/html"

	"capspan/tables"
)

// recorded is the shipped chart with two issues in its history and a row that was
// renamed. Words is what a stranger wrote.
func recorded(t *testing.T, words, web string) Sources {
	t.Helper()
	files := changedTables(t, "retired.yaml: retired: [] => retired:\n  - {id: 1310-old, to: [\"1310\"], why: the name was misspelt}\n  - {id: gone, why: nobody makes it}")
	text, err := fs.ReadFile(files, "history.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []tables.Release{
		{Chart: "2026-11-01-0123abc", Date: "2026-11-01", Why: "two readers measured it",
			Changes: []tables.Recorded{{Of: "joints-inch/1310-old", Column: "cap", What: "value", Old: "1.060 in", New: "1.062 in"},
				{Of: "sources/profi", What: "title", Old: "a", New: "b"}}},
		{Chart: "2026-11-25-0123abd", Date: "2026-11-25", Why: words, Tables: []string{"joints-inch 2.0.0"},
			Changes: []tables.Recorded{{Of: "joints-inch/1310", What: "renamed", Old: "1310-old", New: "1310", Why: "the name was misspelt"},
				{Of: "joints-inch/1330", Column: "across", What: "value", Old: "3.62 in", New: "3 5/8 in"},
				{Of: "fasteners/u-bolt-1310", Column: "torque", What: "value", Old: "14-17 lbf.ft", New: "14 lbf.ft"},
				{Of: "joints-inch/gone", What: "retired", Old: "cap 30 mm", Why: words}}},
	} {
		if text, err = tables.Record(text, r); err != nil {
			t.Fatal(err)
		}
	}
	files["history.yaml"] = &fstest.MapFile{Data: text}
	src := inEnglish()
	if web != "" {
		src = keptAt(t, web)
	}
	src.Tables = files
	return src
}

func mustBuild(t *testing.T, src Sources, opt Options) map[string][]byte {
	t.Helper()
	out, problems := siteOf(t, src, opt)
	checkFinds(t, src, problems)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := map[string][]byte{}
	for _, f := range out.Files {
		files[f.Path] = f.Bytes
	}
	return files
}

// lines are the cells of a table's body, row by row, and where its links lead.
func lines(t *testing.T, page []byte) (rows []string, links []string) {
	t.Helper()
	doc, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	for n := range doc.Descendants() {
		if n.Type != html.ElementNode || n.Data != "tr" || n.Parent.Data != "tbody" {
			continue
		}
		var cells []string
		for c := range n.ChildNodes() {
			var b strings.Builder
			for d := range c.Descendants() {
				if d.Type == html.TextNode {
					b.WriteString(d.Data)
				}
				if d.Type == html.ElementNode && d.Data == "a" {
					links = append(links, d.Attr[0].Val)
				}
			}
			cells = append(cells, strings.TrimSpace(b.String()))
		}
		rows = append(rows, strings.Join(cells, " | "))
	}
	return rows, links
}

// Newest first, with old and new in both units and why; a row's page has its own lines,
// also those from before it was renamed.
func TestChangesPages(t *testing.T) {
	files := mustBuild(t, recorded(t, "spelt as the trade spells it", ""), Options{Base: "/sub/"})
	rows, links := lines(t, files["changes/index.html"])
	want := []string{
		"1310 | renamedThe name was misspelt. | 1310-old | 1310",
		"1330 | across | 3.62 in≈ 91.95 mm | 3 5/8 in≈ 92.08 mm",
		"u-bolt-1310 | torque | 14-17 lbf.ft≈ 19-23 N.m | 14 lbf.ft≈ 19 N.m",
		"gone | retiredSpelt as the trade spells it. | cap 30 mm | ",
		"1310-old | cap | 1.060 in≈ 26.92 mm | 1.062 in≈ 26.97 mm",
		"sources/profi | title | a | b",
	}
	if got := strings.Join(rows, "\n"); got != strings.Join(want, "\n") {
		t.Errorf("the page of changes:\n got %s\nwant %s", got, strings.Join(want, "\n"))
	}
	if got, want := strings.Join(links, " "), "/sub/joint/1310/ /sub/joint/1330/ /sub/chart/fasteners/#row-u-bolt-1310 /sub/joint/gone/ /sub/joint/1310-old/"; got != want {
		t.Errorf("links: got %s, want %s", got, want)
	}
	for _, words := range []string{`id="retired-1310-old"`, `id="retired-gone"`, "Nobody makes it.", `id="chart-2026-11-01-0123abc"`, "joints-inch 2.0.0"} {
		if !strings.Contains(string(files["changes/index.html"]), words) {
			t.Errorf("the page of changes lacks %q", words)
		}
	}
	for _, words := range []string{
		`<li id="retired-1310-old"><a href="/sub/joint/1310-old/">1310-old</a> The name was misspelt. → <a href="/sub/joint/1310/">1310</a></li>`,
		`<li id="retired-gone"><a href="/sub/joint/gone/">gone</a> Nobody makes it.</li>`,
	} {
		if !strings.Contains(string(files["changes/index.html"]), words) {
			t.Errorf("a retired id does not lead on: the page lacks %q", words)
		}
	}
	for _, gone := range []string{"1310-old", "gone"} {
		if page := string(files["joint/"+gone+"/index.html"]); !strings.Contains(page, gone) || gone != "gone" && !strings.Contains(page, `href="/sub/joint/1310/"`) {
			t.Errorf("the page of the retired %s leads nowhere", gone)
		}
	}
	_, history, _ := strings.Cut(string(files["joint/1310/index.html"]), `<h2 id="history">`)
	history, _, _ = strings.Cut(history, "</section>")
	rows, links = lines(t, []byte(history))
	if got, want := strings.Join(rows, "\n"), "2026-11-25 | renamedThe name was misspelt. | 1310-old | 1310\n2026-11-01 | cap | 1.060 in≈ 26.92 mm | 1.062 in≈ 26.97 mm"; got != want {
		t.Errorf("the history of 1310:\n got %s\nwant %s", got, want)
	}
	if len(links) == 0 || links[0] != "/sub/changes/#chart-2026-11-25-0123abd" {
		t.Errorf("it leads to %v", links)
	}
	if strings.Contains(string(files["joint/1350/index.html"]), `id="history"`) {
		t.Error("a row that never changed has a history")
	}
	for _, name := range []string{"changes/index.html", "joint/1310/index.html"} {
		if strings.Contains(string(files[name]), "atom") {
			t.Errorf("%s has a feed without an address of the site", name)
		}
	}
	if files[feedName] != nil {
		t.Error("a feed without an address of the site")
	}
}

// A feed reader finds the feed on every page whose figures it tells of (RFC 4287; WHATWG
// HTML, 4.6.7.1), and on no other.
func TestFeedIsFound(t *testing.T) {
	files := mustBuild(t, recorded(t, "why", web), Options{Base: "/sub/"})
	for name, want := range map[string]bool{"index.html": true, "changes/index.html": true, "chart/index.html": true, "chart/fasteners/index.html": true,
		"joint/1310/index.html": true, "joint/1310/paper/index.html": false, "joint/gone/index.html": false, "measure/cap/index.html": false, "404.html": false} {
		found := 0
		for _, tag := range tags(files[name]) {
			if tag.Data == "link" && attr(tag, "rel") == "alternate" {
				found++
				if attr(tag, "type") != "application/atom+xml" || attr(tag, "href") != "/sub/changes/feed.atom" || attr(tag, "title") == "" {
					t.Errorf("%s: %v", name, tag)
				}
			}
		}
		if files[name] == nil || found > 1 || (found == 1) != want {
			t.Errorf("%s leads %d times to the feed, want %t", name, found, want)
		}
	}
}

// The version and the date of the chart stand in the title block of every page.
func TestTitleBlocks(t *testing.T) {
	src := recorded(t, "why", "")
	out, problems := siteOf(t, src, Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := contents(out)
	for _, name := range sheets(files) {
		_, block, found := strings.Cut(string(files[name]), `<footer class="titleblock"`)
		if !found || !strings.Contains(block, ">"+out.Chart.Name()+"<") || !strings.Contains(block, ">"+out.Chart.Date+"<") {
			t.Errorf("%s: no version or date in the title block %.300q", name, block)
		}
	}
}

// The feed is read by a general parser, and says what RFC 4287 asks of it (4.1.1, 4.1.2):
// an id, a title and a time for the feed and each entry, an author, a link to itself.
func TestFeed(t *testing.T) {
	words := `<script>alert("x")</script> & ]]> <b>`
	files := mustBuild(t, recorded(t, words, "https://example.org"), Options{Base: "/sub/"})
	feed, err := gofeed.NewParser().Parse(bytes.NewReader(files[feedName]))
	if err != nil {
		t.Fatalf("the feed cannot be read: %v\n%s", err, files[feedName])
	}
	if feed.FeedType != "atom" || feed.FeedVersion != "1.0" || feed.FeedLink != "https://example.org/sub/changes/feed.atom" ||
		feed.Link != "https://example.org/sub/changes/" || feed.Title == "" || len(feed.Authors) != 1 || feed.Authors[0].Name == "" {
		t.Errorf("the feed says of itself: %+v", feed)
	}
	if feed.UpdatedParsed == nil || feed.UpdatedParsed.Format("2006-01-02") != "2026-11-25" {
		t.Errorf("updated %s", feed.Updated)
	}
	if len(feed.Items) != 2 {
		t.Fatalf("%d entries, want 2", len(feed.Items))
	}
	seen := map[string]bool{}
	for n, chart := range []string{"2026-11-25-0123abd", "2026-11-01-0123abc"} {
		item := feed.Items[n]
		at := "https://example.org/sub/changes/#chart-" + chart
		if item.GUID != at || item.Link != at || item.Title != chart || item.UpdatedParsed == nil || item.Description == "" || seen[item.GUID] {
			t.Errorf("entry %d: %+v", n, item)
		}
		seen[item.GUID] = true
		doc, err := html.Parse(strings.NewReader(item.Content))
		if err != nil {
			t.Fatal(err)
		}
		var elements []string
		text := ""
		for d := range doc.Descendants() {
			if d.Type == html.ElementNode {
				elements = append(elements, d.Data)
			} else if d.Type == html.TextNode {
				text += d.Data + "\n"
			}
		}
		if got := fmt.Sprint(elements); strings.Contains(got, "script") || strings.Contains(got, "b]") {
			t.Errorf("entry %d: a stranger's words became %s", n, got)
		}
		if n == 0 && (!strings.Contains(text, words) || !strings.Contains(text, "1330: across: 3.62 in (≈ 91.95 mm) → 3 5/8 in (≈ 92.08 mm)")) {
			t.Errorf("entry %d says\n%s", n, text)
		}
	}
	empty := keptAt(t, "https://example.org")
	if feed, err := gofeed.NewParser().Parse(bytes.NewReader(mustBuild(t, empty, Options{})[feedName])); err != nil || len(feed.Items) != len(mustLoadTables(t, tables.FS).History) {
		t.Errorf("the feed of the shipped chart: %v", err)
	}
}

// A stranger's words in the history are words on every page that shows them.
func TestHistoryStaysWords(t *testing.T) {
	words := `<img src=x onerror=alert(1)>`
	files := mustBuild(t, recorded(t, words, ""), Options{})
	page := string(files["changes/index.html"])
	if strings.Contains(page, "<img") || !strings.Contains(page, "&lt;img src=x onerror=alert(1)&gt;") {
		t.Error("words became markup on the page of changes")
	}
}
