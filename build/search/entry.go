package search

import (
	"slices"
	"strings"
)

// Kind says what an entry leads to; static/parts/search has the words for each.
type Kind string

const (
	Row    Kind = "row"    // a row of the chart
	Guide  Kind = "guide"  // a page in words, or a heading of one
	Word   Kind = "word"   // an entry of the glossary
	Source Kind = "source" // an entry of the registry
	Sheet  Kind = "sheet"  // any other page
)

// Entry is one thing to be found.
type Entry struct {
	Kind    Kind   `json:"kind"`
	Address string `json:"address"` // below the base, without a slash in front
	Title   string `json:"title"`
	Note    string `json:"note,omitempty"` // what stands beside the title
	// Names are what it is called, folded and squeezed, with a space between them; Words
	// those of its names, folded; Text what else it says, each word once.
	Names string   `json:"names"`
	Words string   `json:"words"`
	Text  string   `json:"text,omitempty"`
	Also  []string `json:"-"` // other names as written, for the page from A to Z
}

// New makes an entry. Its names are its title, the parts of the title between commas
// and those in also; text is what is said about it, and is searched with less weight.
func (l *Language) New(kind Kind, address, title, note string, also []string, text string) Entry {
	e := Entry{Kind: kind, Address: strings.TrimLeft(address, "/"), Title: title, Note: note, Also: also}
	called := append(strings.Split(title, ","), also...)
	if len(called) > 1 {
		called = append(called, title)
	}
	var names, words []string
	for _, name := range called {
		folded := Fold(name)
		if strings.Count(folded, " ") < longestName {
			names = append(names, Squeeze(folded))
		}
		parts := l.telling(folded)
		words = append(words, parts...)
		// Two words are often written as one, "snapring", or with a dash.
		for i := 1; i < len(parts); i++ {
			words = append(words, parts[i-1]+parts[i])
		}
	}
	words = unique(append(words, names...))
	e.Names, e.Words = strings.Join(unique(names), " "), strings.Join(words, " ")
	said := unique(l.telling(Fold(note + " " + text)))
	said = slices.DeleteFunc(said, func(w string) bool { return slices.Contains(words, w) })
	e.Text = strings.Join(said, " ")
	return e
}

// longestName is the most words that are looked up as one name; a heading of more is
// found by its words.
const longestName = 6

// telling are the words of a folded text that tell it from another; all of them when
// none does.
func (l *Language) telling(folded string) []string {
	all := strings.Fields(folded)
	some := slices.DeleteFunc(slices.Clone(all), func(w string) bool { return l.passing[w] })
	if len(some) == 0 {
		return all
	}
	return some
}

// Index is the file the browser fetches.
type Index struct {
	Format  int      `json:"format"`
	Base    string   `json:"base"`  // where the site lies, with both slashes
	Chart   string   `json:"chart"` // address of the core's chart
	Passing []string `json:"passing"`
	Entries []Entry  `json:"entries"`
}

// NewIndex makes the file's value. Entries keep their order, which decides between two
// that fit a question equally well.
func (l *Language) NewIndex(base, chart string, entries []Entry) Index {
	return Index{Format: 1, Base: base, Chart: chart, Passing: l.list, Entries: entries}
}

// unique keeps the first of equal words.
func unique(words []string) []string {
	seen := map[string]bool{}
	return slices.DeleteFunc(words, func(w string) bool {
		again := w == "" || seen[w]
		seen[w] = true
		return again
	})
}
