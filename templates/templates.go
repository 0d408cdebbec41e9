// Package templates owns the frames of the pages: the view types in views.go and the
// html/template files beside them. It knows no tables and no files; any page can be
// rendered from values made by hand. Its own words come from package words (say.go).
//
// [New] parses the files into a [Set]; [Set.Render] writes one [Page]: first the
// body, by the template that belongs to the body's type, then the frame round it.
// Big tables are written by hand in table.go, with escaping, because a template
// takes twenty times as long for the same bytes.
//
// Every address a template makes itself goes through the function at, which puts
// the base in front; addresses inside views have it already.
package templates

import (
	"bytes"
	"cmp"
	"embed"
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"sync"

	"capspan/templates/words"
)

// FS holds the template files and the words. New never uses it by itself: the caller passes it.
//
//go:embed *.html words/en/*.yaml
var FS embed.FS

// Set is the parsed templates. It may be used from several goroutines.
type Set struct {
	words  *words.Catalogue
	uses   []words.Use
	source *template.Template // never executed, so that it can be cloned
	mu     sync.Mutex
	bases  map[string]*template.Template

	english map[string]bool // texts of the chart that stand in English on a page of another language
}

// MarkEnglish tells which texts of the chart have no words in the language of the pages, so
// that they are shown as the English they are. It is called before a page is rendered.
func (s *Set) MarkEnglish(texts map[string]bool) { s.english = texts }

// Lang is the attribute of what shows a text of the chart: the language where that is
// another than the page's.
func (s *Set) Lang(text string) template.HTMLAttr {
	if !s.english[text] {
		return ""
	}
	return ` lang="en"`
}

// New parses every .html file of the folder and puts the words of the catalogue into them.
func New(fsys fs.FS, catalogue *words.Catalogue) (*Set, error) {
	source, err := template.New("templates").Funcs(functions("/", &Set{words: catalogue})).ParseFS(fsys, "*.html")
	if err != nil {
		return nil, err
	}
	uses, err := speak(source, catalogue)
	if err != nil {
		return nil, err
	}
	return &Set{words: catalogue, uses: uses, source: source, bases: map[string]*template.Template{}}, nil
}

// Uses are all the places where the templates say words of the catalogue.
func (s *Set) Uses() []words.Use { return slices.Concat(s.uses, tableWords, pieceWords) }

// Has reports whether a file of that name was among those parsed.
func (s *Set) Has(name string) bool { return s.source.Lookup(name) != nil }

// frame is what frame.html and the body templates are given.
type frame struct {
	Page
	Main template.HTML // the rendered body
}

// Render writes the page. The body's type chooses the template.
func (s *Set) Render(w io.Writer, p Page) error {
	name, err := bodyTemplate(p.Body)
	if err != nil {
		return fmt.Errorf("render %s: %w", p.Address, err)
	}
	t, err := s.based(p.Site.Base)
	if err != nil {
		return err
	}
	f := frame{Page: p}
	var body bytes.Buffer
	if err := t.ExecuteTemplate(&body, name, f); err != nil {
		return err
	}
	f.Main = template.HTML(body.String()) // just made by html/template
	outer := "frame.html"
	if p.Bare {
		outer = "bare.html"
	}
	return t.ExecuteTemplate(w, outer, f)
}

// Fragment writes one template alone, for what is no page.
func (s *Set) Fragment(w io.Writer, base, name string, view any) error {
	t, err := s.based(base)
	if err != nil {
		return err
	}
	return t.ExecuteTemplate(w, name, view)
}

// based returns the templates whose function at knows the base. A site has one base,
// so the copy is made once.
func (s *Set) based(base string) (*template.Template, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if t := s.bases[base]; t != nil {
		return t, nil
	}
	t, err := s.source.Clone()
	if err != nil {
		return nil, err
	}
	t.Funcs(functions(base, s))
	s.bases[base] = t
	return t, nil
}

// recorded is the attribute of what the history has recorded, in English words whatever the
// language of the page.
func (s *Set) recorded() template.HTMLAttr {
	if s.words.Language == words.English {
		return ""
	}
	return ` lang="en"`
}

func bodyTemplate(body any) (string, error) {
	switch body.(type) {
	case *Home:
		return "home.html", nil
	case *Identify:
		return "identify.html", nil
	case *Part:
		return "part.html", nil
	case *Parts:
		return "parts.html", nil
	case *Chart:
		return "chart.html", nil
	case *Table:
		return "table.html", nil
	case *Groups:
		return "groups.html", nil
	case *GroupPage:
		return "group.html", nil
	case *Size:
		return "size.html", nil
	case *Joint:
		return "joint.html", nil
	case *Sources:
		return "sources.html", nil
	case *Method:
		return "method.html", nil
	case *Text:
		return "text.html", nil
	case *Send:
		return "send.html", nil
	case *Correct:
		return "correct.html", nil
	case *Card:
		return "card.html", nil
	case *Order:
		return "order.html", nil
	case *Shaft:
		return "shaft.html", nil
	case *Moved:
		return "moved.html", nil
	case *NotKept:
		return "notkept.html", nil
	case *EmbedFrame:
		return "embed-frame.html", nil
	case *Paper:
		return "paper.html", nil
	case *Search:
		return "search.html", nil
	case *AZ:
		return "a-z.html", nil
	case *Names:
		return "names.html", nil
	case *Driveline:
		return "driveline.html", nil
	case *Calculation:
		return "calculation.html", nil
	case *Changes:
		return "changes.html", nil
	}
	return "", fmt.Errorf("no template for a body of type %T", body)
}

func functions(base string, set *Set) template.FuncMap {
	catalogue := set.words
	all := template.FuncMap{
		"word":      catalogue.Say,
		"prose":     catalogue.Say, // never called: its words are put into the template
		"part":      part,
		"language":  func() string { return catalogue.Language },
		"commas":    func(names []string) string { return strings.Join(names, ", ") },
		"at":        func(address string) string { return at(base, address) },
		"here":      here,
		"kind":      func(basis string) string { return kind(catalogue, basis) },
		"asking":    asking,
		"links":     newLinkList,
		"labelled":  newLabelled,
		"tableHTML": func(t *Table) template.HTML { return tableHTML(t, set) },
		"lang":      set.Lang,
		"recorded":  set.recorded,
	}
	maps.Copy(all, pieces(base, set))
	return all
}

// linkList is what the template "book-rows" shows; an empty one shows nothing.
type linkList struct {
	Title, About string
	Links        []Link
}

func newLinkList(title, about string, links []Link) linkList { return linkList{title, about, links} }

// labelled is a field of a form: its name for the script, and its words.
type labelled struct{ Key, Label string }

func newLabelled(key, label string) labelled { return labelled{key, label} }

// Shared is the address of what no language has for itself: the open data, published forms.
func (s Site) Shared(address string) string { return at(cmp.Or(s.Root, s.Base), address) }

// at puts the base in front of a rooted address. Further leading slashes are dropped,
// or the rest would name another host.
func at(base, address string) string {
	return strings.TrimRight(base, "/") + "/" + strings.TrimLeft(address, "/")
}

// here reports whether the page lies under the section, for the mark in the header.
func here(address, section string) bool {
	switch section {
	case "/chart/":
		return strings.HasPrefix(address, section) || strings.HasPrefix(address, "/joint/") || strings.HasPrefix(address, "/size/")
	}
	return strings.HasPrefix(address, section)
}

// asking is the fragment that fills the counter's page with what a page of the guide is
// about; empty for a page about something else.
func asking(address string) string {
	return asks[strings.TrimSuffix(strings.TrimPrefix(address, "/measure/"), "/")]
}

// asks are by the slug of the guide's pages.
var asks = map[string]string{
	"cap":          "#take=cap",
	"across":       "#take=across",
	"over-caps":    "#hold=outside-clip",
	"groove-inner": "#hold=inside-clip&faces=groove-inner",
	"groove-outer": "#hold=inside-clip&faces=groove-outer",
	"under-plates": "#hold=plate",
	"half-round":   "#hold=strap",
	"wing":         "#hold=wing",
}

// kind is the last part of the class name of a basis, which the style sheet knows in one
// language only: "common practice", and whatever another language calls it, becomes
// "common-practice".
func kind(catalogue *words.Catalogue, basis string) string {
	for _, key := range bases {
		if phrase := catalogue.Find("basis." + key); phrase != nil && catalogue.Say("basis."+key) == basis {
			return key
		}
	}
	return strings.ReplaceAll(basis, " ", "-")
}

var bases = []string{"published", "common-practice", "memory", "measured"}
