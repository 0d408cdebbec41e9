package content

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

// The expected parts of testdata are rewritten with: go test ./content -update. Read
// the difference before committing.
var update = flag.Bool("update", false, "rewrite the expected parts in testdata")

// drawn finds a drawing and its title: what is in it is package figure's to test.
var drawn = regexp.MustCompile(`(?s)<svg .*?(<title id="[^"]*">).*?</svg>`)

// Each case is a sentence, a page.md, and what comes of it: page.html, links and
// problems, each left out when empty.
func TestCases(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			input := archive.Files[0]
			page, problems := Parse(input.Name, input.Data, Options{Base: "/sub/", Chart: invented, Table: "Table", Code: "Code", Drawings: english})
			got := []txtar.File{input}
			add := func(name, data string) {
				if data != "" {
					got = append(got, txtar.File{Name: name, Data: []byte(data)})
				}
			}
			add("page.html", drawn.ReplaceAllString(string(page.HTML), "<svg>$1</title></svg>"))
			var links strings.Builder
			for _, l := range page.Links {
				fmt.Fprintf(&links, "%s: %s\n", l.Pos, l.Href)
			}
			add("links", links.String())
			var said bytes.Buffer
			if err := problems.Print(&said); err != nil {
				t.Fatal(err)
			}
			add("problems", said.String())
			made := txtar.Format(&txtar.Archive{Comment: archive.Comment, Files: got})
			if *update {
				if err := os.WriteFile(file, made, 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(string(txtar.Format(archive)), string(made)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// A page of 200 MB is refused before it is read, and one whose head would grow to as much
// does not grow.
func TestHugePage(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "page.md"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(filepath.Join(dir, "page.md"), 200<<20); err != nil {
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	pages, problems := Load(os.DirFS(dir), Options{})
	if runtime.ReadMemStats(&after); after.TotalAlloc-before.TotalAlloc > 8<<20 {
		t.Errorf("%d bytes were taken for it", after.TotalAlloc-before.TotalAlloc)
	}
	if len(pages) != 0 || len(problems) != 1 || problems[0].Rule != "page-too-big" {
		t.Errorf("got %v and %v", pages, problems)
	}
	bomb := "---\ntitle: T\nabout: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c <= 'z'; c++ {
		bomb += fmt.Sprintf("%c: &%c [*%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c]\n", c, c, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1)
	}
	if _, problems := Parse("bomb.md", []byte(bomb+"---\n\nWords.\n"), Options{}); !problems.Blocked() { // unfolded it never comes to an end
		t.Errorf("got %v", problems)
	}
}

// Every rule has a case that breaks it, and no case breaks a rule nobody knows.
func TestEveryRuleHasACase(t *testing.T) {
	rules := map[string]bool{"broken-head": false, "missing-title": false, "unknown-key": false, "duplicate-key": false,
		"second-title": false, "missing-alt": false, "forbidden-link": false, "raw-html": false,
		"unknown-directive": false, "unclosed-directive": false, "stray-directive": false,
		"missing-parameter": false, "unknown-parameter": false, "bad-parameter": false, "unknown-figure": false, "unknown-row": false,
		"unknown-table": false, "unknown-tool": false, "unknown-language": false, "bad-reading": false, "bad-query": false, "stale-answer": false, "unknown-part": false}
	files, _ := filepath.Glob("testdata/*.txtar")
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		_, problems := Parse("page.md", archive.Files[0].Data, Options{Chart: invented})
		for _, p := range problems {
			if _, known := rules[p.Rule]; !known {
				t.Errorf("%s: rule %q is not listed here", file, p.Rule)
			}
			rules[p.Rule] = true
		}
	}
	for rule, broken := range rules {
		if !broken {
			t.Errorf("no case breaks %q", rule)
		}
	}
}

func TestPageTooBig(t *testing.T) {
	page, problems := Parse("page.md", bytes.Repeat([]byte("a"), biggestPage+1), Options{})
	if page != nil || len(problems) != 1 || problems[0].Rule != "page-too-big" {
		t.Errorf("got page %v and %v, want no page and page-too-big", page, problems)
	}
}

// Code made to hold the lexer up comes to an end, and what is not coloured is still escaped.
func TestLongCode(t *testing.T) {
	for _, mischief := range []string{"[[", "'", "{", "\"", "<"} {
		for _, size := range []int{longestColoured, biggestPage / 2} {
			got := coloured("yaml", strings.Repeat(mischief, size/len(mischief))) // one that runs away never comes to an end
			if size > longestColoured && strings.Contains(got, "<") {
				t.Errorf("%d bytes of %q: coloured or not escaped", size, mischief)
			}
		}
	}
}

// Slugs come from file names; folders of other things hold no pages; the order is the
// same each time; all problems of all pages are reported at once.
func TestLoad(t *testing.T) {
	page := func(title string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("---\ntitle: " + title + "\n---\nWords.\n")}
	}
	pages, problems := Load(fstest.MapFS{
		"home.md": page("Home"), "measure/index.md": page("Guide"), "measure/cap.md": page("Cap"),
		"testdata/x.md": page("No"), "_draft/x.md": page("No"), "notes.txt": page("No"),
		"a.md": {Data: []byte("Words.\n")}, "b.md": {Data: []byte("Words.\n")},
	}, Options{})
	var slugs []string
	for _, p := range pages {
		slugs = append(slugs, p.Slug)
	}
	if diff := cmp.Diff([]string{"a", "b", "home", "measure/cap", "measure"}, slugs); diff != "" {
		t.Errorf("slugs (-want +got)\n%s", diff)
	}
	if len(problems) != 2 || problems[0].Pos.File != "content/a.md" || problems[1].Pos.File != "content/b.md" {
		t.Errorf("problems: got %v, want one for a.md and one for b.md", problems)
	}
}

// The shipped pages have no problems, and every link into the site's own Markdown
// leads to a page.
func TestShippedPages(t *testing.T) {
	pages, problems := Load(FS, Options{Base: "/"})
	if len(problems) > 0 {
		t.Fatalf("%v", problems)
	}
	there := map[string]bool{"/identify/": true, "/chart/": true, "/chart/fasteners/": true, "/about/sources/": true, "/about/method/": true, "/contribute/correct/": true, "/embed/frame/": true, "/data/whole_chart.json": true,
		"/driveline/": true, "/driveline/angles/": true, "/driveline/clips/": true, "/driveline/ends/": true, "/driveline/fasteners/": true} // made by the build
	for _, p := range pages {
		there["/"+p.Slug+"/"] = true
	}
	for _, p := range pages {
		if p.About == "" {
			t.Errorf("%s: no about", p.Pos)
		}
		if strings.HasPrefix(p.Slug, "measure") && len(p.Next) == 0 {
			t.Errorf("%s: a guide page ends with nothing to do next", p.Pos)
		}
		for _, l := range p.Links {
			path, _, _ := strings.Cut(l.Href, "#")
			if strings.HasPrefix(path, "/") && !there[path] {
				t.Errorf("%s: %q leads to no page", l.Pos, l.Href)
			}
		}
	}
}

// Pages about taking joints apart carry cautions, and no page calls a joint safe.
func TestCautions(t *testing.T) {
	careful := []string{"measure/index.md", "measure/what-holds-it.md", "measure/cap.md", "measure/across.md", "measure/wing.md", "by-hand.md"}
	for _, name := range careful {
		source, err := fs.ReadFile(FS, name)
		if err != nil {
			t.Fatal(err)
		}
		page, _ := Parse(name, source, Options{})
		if !strings.Contains(string(page.HTML), `<aside class="caution">`) {
			t.Errorf("%s: no caution", name)
		}
	}
	pages, _ := Load(FS, Options{})
	for _, p := range pages {
		if strings.Contains(strings.ToLower(string(p.HTML)), "safe") {
			t.Errorf("%s: says safe", p.Pos)
		}
	}
}

// Whatever a stranger sends, Parse neither panics nor lets script or style through.
func FuzzParse(f *testing.F) {
	files, _ := filepath.Glob("testdata/*.txtar")
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(archive.Files[0].Data)
	}
	f.Add([]byte("---\n"))
	f.Add([]byte("---\n---"))
	f.Add([]byte("::: caution"))
	f.Add([]byte("- ::: caution\n:::\n> ::::\n"))
	f.Add([]byte("::: figure joint row=a1 alt=\"<script>\"\n"))
	f.Add([]byte("::: step <b onclick=x>\n:::\n{row <a>}\n\t:: answer query=\"\" expect=\n"))
	f.Add([]byte("```yaml\na: <script>\n"))
	f.Fuzz(func(t *testing.T, source []byte) {
		page, problems := Parse("page.md", source, Options{Base: "/sub/", Chart: invented})
		for _, p := range problems {
			if p.Pos.Line < 1 && p.Rule != "page-too-big" || p.Fact == "" || p.Rule == "" {
				t.Errorf("a problem without a place or a fact: %+v", p)
			}
		}
		if page == nil {
			return
		}
		for _, tag := range strings.SplitAfter(string(page.HTML), ">") {
			if i := strings.LastIndexByte(tag, '<'); i >= 0 {
				if low := strings.ToLower(tag[i:]); strings.HasPrefix(low, "<script") || strings.Contains(low, `href="javascript:`) || strings.Contains(low, " style=") && !strings.Contains(low, `title=`) && !strings.Contains(low, `alt=`) {
					t.Errorf("%q came through", low)
				}
			}
		}
	})
}
