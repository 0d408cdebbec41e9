package templates

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"

	"capspan/templates/words"
)

// Goldens are rewritten by go test ./templates -update. Read the diff: it is what
// every page of that kind will look like.
var update = flag.Bool("update", false, "rewrite the golden pages")

// english is what the shipped templates say.
var english = func() *words.Catalogue {
	catalogue, problems := words.Load(FS, nil, words.English)
	if problems.Blocked() {
		panic(problems)
	}
	return catalogue
}()

func mustSet(t *testing.T) *Set {
	t.Helper()
	set, err := New(FS, english)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func mustRender(t *testing.T, p Page) string {
	t.Helper()
	set := mustSet(t)
	var b bytes.Buffer
	if err := set.Render(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestRenderGolden(t *testing.T) {
	for name, page := range samples() {
		t.Run(name, func(t *testing.T) {
			got := mustRender(t, page)
			file := filepath.Join("testdata", name+".html")
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("page differs from its golden (-want +got):\n%s", diff)
			}
		})
	}
}

// What every page owes its reader, whatever its body.
func TestRenderEveryPage(t *testing.T) {
	for name, page := range samples() {
		t.Run(name, func(t *testing.T) {
			doc := mustParse(t, mustRender(t, page))
			sheets := 2
			if page.Slim {
				sheets = 1
			}
			counts := []struct {
				what string
				find func(*html.Node) bool
				want int
			}{
				{"h1", tag("h1"), 1},
				{"main", tag("main"), 1},
				{"skip link to main", withAttr("a", "href", "#main"), 1},
				{"main navigation", withAttr("nav", "aria-label", "Main"), 1},
				{"content security policy", withAttr("meta", "http-equiv", "Content-Security-Policy"), 1},
				{"viewport", withAttr("meta", "name", "viewport"), 1},
				{"icon", withAttr("link", "rel", "icon"), 1},
				{"style sheet", withAttr("link", "rel", "stylesheet"), sheets},
				{"inline style element", tag("style"), 0},
				{"script of the live page", hasAttr("data-live"), 0},
			}
			for _, c := range counts {
				if got := len(all(doc, c.find)); got != c.want {
					t.Errorf("%s: got %d, want %d", c.what, got, c.want)
				}
			}
			if got := attr(all(doc, tag("html"))[0], "lang"); got != "en" {
				t.Errorf("lang: got %q, want en", got)
			}
			for _, n := range all(doc, func(*html.Node) bool { return true }) {
				checkPolicy(t, n)
				for _, name := range []string{"href", "src", "action"} {
					if at := attr(n, name); at != "" && at[0] != '#' && !strings.HasPrefix(at, "/sub/") && !strings.HasPrefix(at, "https://code.example.org/") {
						t.Errorf("<%s %s=%q> lacks the base", n.Data, name, at)
					}
				}
			}
			block := text(all(doc, withAttr("footer", "aria-label", "Title block"))[0])
			for _, want := range []string{"2026-11-25-3f9a1c2", "≈ converted", "A figure is wrong?", "/sub" + page.Address} {
				if !strings.Contains(block, want) {
					t.Errorf("title block lacks %q: %s", want, block)
				}
			}
		})
	}
}

// checkPolicy reports what the content security policy would block.
func checkPolicy(t *testing.T, n *html.Node) {
	t.Helper()
	for _, a := range n.Attr {
		if a.Key == "style" || strings.HasPrefix(a.Key, "on") {
			t.Errorf("<%s> has an inline %s", n.Data, a.Key)
		}
	}
	// JSON-LD is a data block: it is never run, and the policy says nothing about it.
	if n.Data == "script" && attr(n, "type") != "application/ld+json" && (attr(n, "src") == "" || n.FirstChild != nil) {
		t.Errorf("inline script")
	}
}

func TestRenderTables(t *testing.T) {
	for _, name := range []string{"table", "joint", "method"} {
		t.Run(name, func(t *testing.T) {
			doc := mustParse(t, mustRender(t, samples()[name]))
			tables := all(doc, tag("table"))
			if len(tables) == 0 {
				t.Fatal("no table")
			}
			for _, table := range tables {
				if len(all(table, tag("caption"))) != 1 {
					t.Error("table without a caption")
				}
				for _, th := range all(table, tag("th")) {
					if scope := attr(th, "scope"); scope != "row" && scope != "col" {
						t.Errorf("th %q has scope %q", text(th), scope)
					}
				}
				region := table.Parent
				if attr(region, "role") != "region" || attr(region, "tabindex") != "0" || attr(region, "aria-label") == "" {
					t.Errorf("table %q lies in no region that a keyboard can scroll", text(all(table, tag("caption"))[0]))
				}
			}
		})
	}
}

func TestRenderTableWords(t *testing.T) {
	doc := mustParse(t, mustRender(t, samples()["table"]))
	rows := all(all(doc, tag("tbody"))[0], tag("tr"))
	if len(rows) != 2 {
		t.Fatalf("got %d rows, want 2", len(rows))
	}
	// The cap has the row's basis, which the last cell says; the across says its own.
	want := "1310also 1260, 1280 clip outside 1.062 in≈ 26.97 mm 3.219 in≈ 81.76 mmover the capspublishedelsewhere 3.218 in common practice"
	if got := cells(rows[0]); got != want {
		t.Errorf("first row:\n got %q\nwant %q", got, want)
	}
	if got := attr(rows[0], "data-caps") + " " + attr(rows[0], "data-acrosses"); got != "26.9748 81.7626" {
		t.Errorf("figures for the filter: got %q", got)
	}
	if got := text(rows[1]); !strings.Contains(got, "other end") {
		t.Errorf("a conversion joint does not part its ends: %q", got)
	}
}

func TestRenderLive(t *testing.T) {
	page := samples()["home"]
	page.Site.Live = "/sub/_live"
	live := all(mustParse(t, mustRender(t, page)), hasAttr("data-live"))
	if len(live) != 1 || attr(live[0], "src") != "/sub/assets/live.js" || attr(live[0], "data-live") != "/sub/_live" {
		t.Errorf("got %d live scripts: %v", len(live), live)
	}
}

func TestRenderMarksSection(t *testing.T) {
	tests := []struct{ address, want string }{
		{"/identify/", "Identify page"},
		{"/chart/", "Chart page"},
		{"/chart/joints-inch/", "Chart true"},
		{"/joint/1310/", "Chart true"},
		{"/measure/cap/", "Measure true"},
		{"/", "Capspan page"},
	}
	for _, tt := range tests {
		page := samples()["text"]
		page.Address = tt.address
		marked := all(mustParse(t, mustRender(t, page)), hasAttr("aria-current"))
		if len(marked) != 1 || text(marked[0])+" "+attr(marked[0], "aria-current") != tt.want {
			t.Errorf("%s: got %d marks, want %q", tt.address, len(marked), tt.want)
		}
	}
}

func TestRenderRefusesUnknownBody(t *testing.T) {
	err := mustSet(t).Render(&bytes.Buffer{}, Page{Address: "/x/", Body: 7})
	if err == nil || err.Error() != "render /x/: no template for a body of type int" {
		t.Errorf("got %v", err)
	}
}
