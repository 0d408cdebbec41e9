package search

import (
	"slices"
	"strings"

	"golang.org/x/net/html"
)

// Section is a heading of a page with the words up to the next one. The words before
// the first heading are a section without an ID.
type Section struct{ ID, Heading, Text string }

// Term is a word a page explains: a list item that opens with it in bold.
type Term struct {
	Section string // ID of the section it stands in
	Name    string
	Says    string
}

// Sections takes a rendered page apart at its headings of the second and third level.
func Sections(page string) []Section {
	sections := []Section{{}}
	read(page, func(at place, text string) {
		last := &sections[len(sections)-1]
		if at.heading() {
			if at.id != last.ID {
				sections = append(sections, Section{ID: at.id})
				last = &sections[len(sections)-1]
			}
			last.Heading += text
			return
		}
		last.Text += text + " "
	})
	for i := range sections {
		sections[i].Heading, sections[i].Text = tidy(sections[i].Heading), tidy(sections[i].Text)
	}
	return sections
}

// Terms lists the words a page explains, as the glossary writes them:
//
//   - **Float:** how far the cross can move between its clips.
func Terms(page string) []Term {
	var terms []Term
	item := 0 // the one the last term stands in
	read(page, func(at place, text string) {
		inside := strings.Join(at.path, " ")
		switch {
		case at.item != item && strings.HasSuffix(inside, "li strong") && strings.HasSuffix(text, ":"):
			terms = append(terms, Term{Section: at.id, Name: tidy(strings.TrimSuffix(text, ":"))})
			item = at.item
		case at.item == item && item > 0 && slices.Contains(at.path, "li"):
			terms[len(terms)-1].Says += text
		}
	})
	for i := range terms {
		terms[i].Says = tidy(terms[i].Says)
	}
	return terms
}

// place is where a text stands.
type place struct {
	path []string // tags, outermost first
	id   string   // of the heading it stands in or after
	item int      // number of list items begun so far
}

func (p place) heading() bool {
	return slices.Contains(p.path, "h2") || slices.Contains(p.path, "h3")
}

// read calls see for each text of the page. Drawings have no words of their own.
func read(page string, see func(at place, text string)) {
	z := html.NewTokenizer(strings.NewReader(page))
	var at place
	for {
		switch z.Next() {
		case html.ErrorToken:
			return // a page from package content, in memory: this is its end
		case html.StartTagToken:
			token := z.Token()
			if slices.Contains(void, token.Data) {
				continue
			}
			at.path = append(at.path, token.Data)
			if token.Data == "li" {
				at.item++
			}
			for _, a := range token.Attr {
				if a.Key == "id" && at.heading() {
					at.id = a.Val
				}
			}
		case html.EndTagToken:
			tag := z.Token().Data
			for n := len(at.path) - 1; n >= 0; n-- {
				if at.path[n] == tag {
					at.path = at.path[:n]
					break
				}
			}
		case html.TextToken:
			if !slices.Contains(at.path, "svg") {
				see(at, z.Token().Data)
			}
		}
	}
}

// void are the elements without an end.
var void = []string{"br", "hr", "img", "input", "wbr"}

// tidy leaves one space where there were several.
func tidy(text string) string { return strings.Join(strings.Fields(text), " ") }
