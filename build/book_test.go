package build

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"golang.org/x/net/html"

	"capspan/tables"
)

var wholeBook = sync.OnceValues(func() (PrintedBook, string) {
	made, problems := Book(inEnglish(), BookOptions{})
	if len(problems) > 0 {
		return made, problems.Summary() + " " + problems[0].Fact
	}
	return made, ""
})

func parsedBook(t *testing.T) (PrintedBook, *html.Node) {
	t.Helper()
	made, wrong := wholeBook()
	if wrong != "" {
		t.Fatal(wrong)
	}
	root, err := html.Parse(strings.NewReader(string(made.HTML(nil))))
	if err != nil {
		t.Fatal(err)
	}
	return made, root
}

// Every row of the chart, every source and every page of the guide has a place in the book,
// and every joint its drawing.
func TestBookIsWhole(t *testing.T) {
	_, root := parsedBook(t)
	byID := map[string]*html.Node{}
	cautions := 0
	for e := range elements(root) {
		if id := attributeOf(e, "id"); id != "" {
			byID[id] = e
		}
		if strings.Contains(attributeOf(e, "class"), "caution") {
			cautions++
		}
	}
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	wantCautions := 1 // what the book cannot tell
	for _, table := range set.Tables {
		wantCautions += len(table.Cautions)
		for _, row := range table.Rows {
			place := byID["row-"+row.ID]
			if place == nil {
				t.Errorf("row %s is not in the book", row.ID)
				continue
			}
			if !table.Joint() {
				continue
			}
			drawings, confirm := 0, false
			for e := range elements(place.Parent) {
				if e.Data == "svg" {
					drawings++
				}
				confirm = confirm || e.Data == "strong" && textOf(e) == "To be confirmed before ordering."
			}
			if drawings != 1 {
				t.Errorf("row %s has %d drawings, want 1", row.ID, drawings)
			}
			if row.Basis == tables.Memory && !confirm {
				t.Errorf("row %s rests on memory, and the book does not say that it is to be confirmed", row.ID)
			}
		}
	}
	for _, src := range set.Sources {
		if byID["source-"+src.ID] == nil {
			t.Errorf("source %s is not in the book", src.ID)
		}
	}
	out, problems := siteOf(t, inEnglish(), Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, f := range out.Files {
		address := strings.TrimSuffix("/"+f.Path, "index.html")
		if !strings.HasPrefix(address, "/measure/") || address == "/measure/card/" {
			continue
		}
		if byID["guide-"+strings.ReplaceAll(strings.Trim(address, "/"), "/", "-")] == nil {
			t.Errorf("the page %s is not in the book", address)
		}
		wantCautions += strings.Count(string(f.Bytes), `<aside class="caution">`)
	}
	if cautions < wantCautions || wantCautions < 20 {
		t.Errorf("the book has %d cautions; the guide's pages and the tables have %d", cautions, wantCautions)
	}
}

// On paper nothing leads to an address of the site; every link leads to a place of the book
// and is followed by that place's page, but the numbers of sources, which say it themselves.
func TestBookLeadsToItself(t *testing.T) {
	made, root := parsedBook(t)
	ids := map[string]bool{}
	for e := range elements(root) {
		ids[attributeOf(e, "id")] = true
	}
	links := 0
	for e := range elements(root) {
		switch href := attributeOf(e, "href"); {
		case e.Data == "script" || e.Data == "link":
			t.Errorf("a <%s> is in the book", e.Data)
		case strings.HasPrefix(href, "/"):
			t.Errorf("the book leads to %s, which is an address of the site", href)
		case strings.HasPrefix(href, "#source-"):
			if !ids[href[1:]] {
				t.Errorf("%s is not in the book", href)
			}
		case strings.HasPrefix(href, "#"):
			links++
			next := e.NextSibling
			if next == nil || attributeOf(next, "data-of") != href[1:] || !ids[href[1:]] {
				t.Errorf("%s %q is not followed by the page of a place", href, textOf(e))
			}
		}
	}
	if links < 500 {
		t.Errorf("only %d links", links)
	}
	pages := map[string]int{}
	for n, place := range made.Places() {
		pages[place] = n + 7
	}
	numbered := string(made.HTML(pages))
	for _, want := range []string{`data-of="reading">7</span>`, `data-of="guide-measure-cap"> (page `} {
		if !strings.Contains(numbered, want) {
			t.Errorf("the numbered book lacks %q", want)
		}
	}
	if strings.Contains(numbered, "000</span>") {
		t.Error("a place has no number though each was given one")
	}
}

// A keeper whose site is published is named with it, and what the book leaves out is
// reached there.
func TestBookOfAPublishedSite(t *testing.T) {
	src := inEnglish()
	dir := t.TempDir()
	if err := os.CopyFS(dir, src.Content); err != nil {
		t.Fatal(err)
	}
	keeper := "name: School workshop\nweb: https://joints.example.org\n"
	if err := os.WriteFile(filepath.Join(dir, "site.yaml"), []byte(keeper), 0o644); err != nil {
		t.Fatal(err)
	}
	src.Content = os.DirFS(dir)
	made, problems := Book(src, BookOptions{Sheet: "letter", Base: "/shed/"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	text := string(made.HTML(nil))
	for _, want := range []string{"Kept by School workshop<", "stands at https://joints.example.org/shed/.", `href="https://joints.example.org/shed/identify/#`,
		"size:letter"} {
		if !strings.Contains(text, want) {
			t.Errorf("the book lacks %q", want)
		}
	}
}

// A style that is not there is a problem with its file, and no book is made.
func TestBookWithoutStyle(t *testing.T) {
	src := inEnglish()
	dir := t.TempDir()
	if err := os.CopyFS(dir, src.Static); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, filepath.FromSlash(bookStyle))); err != nil {
		t.Fatal(err)
	}
	src.Static = fs.FS(os.DirFS(dir))
	made, problems := Book(src, BookOptions{})
	if !problems.Blocked() || problems[0].Pos.File != "static/"+bookStyle || made.HTML(nil) != nil {
		t.Errorf("got %v and a book of %d bytes", problems, len(made.HTML(nil)))
	}
}

func TestNatural(t *testing.T) {
	sorted := []string{"2c", "3c", "15x39", "15x39.2", "1310", "1310-to-1330", "7260", "din808-16x6", "din808-16x10", "Wing"}
	for i := 1; i < len(sorted); i++ {
		if natural(sorted[i-1], sorted[i]) >= 0 || natural(sorted[i], sorted[i-1]) <= 0 {
			t.Errorf("%s does not come before %s", sorted[i-1], sorted[i])
		}
	}
	if natural("1310", "1310") != 0 {
		t.Error("a name is not equal to itself")
	}
}

// textOf is what an element says.
func textOf(n *html.Node) string {
	var said strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			said.WriteString(d.Data)
		}
	}
	return said.String()
}
