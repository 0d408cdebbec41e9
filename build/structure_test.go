package build

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// TestStructure walks every page there is for what a reader who does not see it goes by:
// the language, a title of its own, one banner, one main, one content info, navigations
// with names of their own, and headings that begin with one h1 and leave no level out
// (WCAG 2.2: 3.1.1, 2.4.2, 1.3.1, 2.4.6; landmarks after the ARIA Authoring Practices).
func TestStructure(t *testing.T) {
	titles := map[string]string{}
	pages := 0
	for name, content := range contents(mustSite(t, Options{})) {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		pages++
		doc, err := html.Parse(bytes.NewReader(content))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		s := structureOf(doc)
		if name == "embed/frame/index.html" { // what is round it is another page's
			s.marks["header"], s.marks["footer"], s.firstLink = 1, 1, "#"+s.mainID
		}
		for _, fault := range s.faults() {
			t.Errorf("%s: %s", name, fault)
		}
		if other, taken := titles[s.title]; taken {
			t.Errorf("%s and %s have the title %q", name, other, s.title)
		}
		titles[s.title] = name
	}
	if pages < 133 {
		t.Errorf("only %d pages", pages)
	}
}

// structure is what a page offers to go by.
type structure struct {
	lang, title string
	marks       map[string]int // landmarks by element
	outside     []string       // words that stand in no landmark
	names       []string       // of navigations
	headings    []int          // their levels
	firstLink   string         // where the first link of the page leads
	mainID      string
}

func structureOf(doc *html.Node) structure {
	s := structure{marks: map[string]int{}}
	var walk func(n *html.Node, inside bool)
	walk = func(n *html.Node, inside bool) {
		if n.Type == html.TextNode && !inside && strings.TrimSpace(n.Data) != "" {
			s.outside = append(s.outside, strings.TrimSpace(n.Data))
		}
		if n.Type == html.ElementNode {
			switch n.Data {
			case "script", "template", "svg": // not the page's words
				return
			case "html":
				s.lang = attribute(n, "lang")
			case "title":
				for words := range n.ChildNodes() {
					s.title += words.Data
				}
			case "main":
				s.mainID = attribute(n, "id")
			case "nav":
				s.names = append(s.names, attribute(n, "aria-label"))
			case "h1", "h2", "h3", "h4", "h5", "h6":
				s.headings = append(s.headings, int(n.Data[1]-'0'))
			case "a":
				if s.firstLink == "" {
					s.firstLink = attribute(n, "href")
				}
			}
			switch n.Data {
			case "header", "main", "footer":
				s.marks[n.Data]++
				inside = true
			case "title":
				inside = true
			case "a":
				inside = inside || attribute(n, "class") == "skip"
			}
		}
		for c := range n.ChildNodes() {
			walk(c, inside)
		}
	}
	walk(doc, false)
	return s
}

func (s structure) faults() []string {
	var faults []string
	wrong := func(is bool, fault string) {
		if is {
			faults = append(faults, fault)
		}
	}
	wrong(s.lang != "en", "the language is "+s.lang)
	wrong(strings.TrimSpace(s.title) == "", "no title")
	for _, mark := range []string{"header", "main", "footer"} {
		wrong(s.marks[mark] != 1, "not one "+mark)
	}
	wrong(len(s.outside) > 0, "in no landmark: "+strings.Join(s.outside, " / "))
	seen := map[string]bool{}
	for _, name := range s.names {
		wrong(name == "" || seen[name], "a navigation has no name of its own: "+name)
		seen[name] = true
	}
	wrong(s.firstLink == "" || s.firstLink != "#"+s.mainID, "the first link does not skip to the content")
	wrong(len(s.headings) == 0 || s.headings[0] != 1, "the first heading is no h1")
	for n, level := range s.headings {
		wrong(n > 0 && level == 1, "a second h1")
		wrong(n > 0 && level > s.headings[n-1]+1, "a heading leaves a level out")
	}
	return faults
}

func attribute(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// Each fault is found: a page with one thing wrong is told.
func TestStructureFaults(t *testing.T) {
	const sound = `<html lang=en><title>A</title><body><a class=skip href="#main">skip</a><header><nav aria-label=Main></nav></header><main id=main><h1>A</h1><h2>B</h2><h3>C</h3></main><footer>f</footer>`
	tests := []struct{ from, to, want string }{
		{"", "", ""},
		{" lang=en", "", "the language is "},
		{"<title>A</title>", "<title> </title>", "no title"},
		{"<main id=main>", "<div id=main>", "not one main"},
		{"<footer>f</footer>", "f", "not one footer"},
		{"</main>", "</main>lost", "in no landmark: lost"},
		{" aria-label=Main", "", "a navigation has no name of its own: "},
		{"</header>", "<nav aria-label=Main></nav></header>", "a navigation has no name of its own: Main"},
		{"#main", "#content", "the first link does not skip to the content"},
		{"<h1>A</h1>", "", "the first heading is no h1"},
		{"<h2>B</h2>", "<h1>B</h1>", "a second h1"},
		{"<h2>B</h2>", "", "a heading leaves a level out"},
	}
	for _, test := range tests {
		page := strings.Replace(sound, test.from, test.to, 1)
		doc, err := html.Parse(strings.NewReader(page))
		if err != nil {
			t.Fatal(err)
		}
		got := structureOf(doc).faults()
		if test.want == "" && len(got) > 0 || test.want != "" && (len(got) == 0 || !slices.Contains(got, test.want)) {
			t.Errorf("%s instead of %s: %q, want %q", test.to, test.from, got, test.want)
		}
	}
}
