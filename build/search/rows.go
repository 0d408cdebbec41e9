package search

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"
	"unicode"
)

// The rows of a large chart are found by their names alone, and are no entries of the
// index: they lie under their [Named.Keys], and static/parts/search/rows.ts fetches those
// that a question begins. What both sides must do alike are a name's tails and the order
// of [FirstOf]; a test of package build puts names by chance to both.

// Named is a row of a large chart by its names.
type Named struct {
	ID    string
	Note  string   // what stands beside it
	Place string   // address below the base; its ID is left out where it ends in it, behind a #
	Also  []string // other names
	names []string // squeezed
	tails []string
}

// NewNamed makes a row that is found by its id and by its other names.
func NewNamed(id, note, place string, also []string) *Named {
	r := &Named{ID: id, Note: note, Also: also, Place: strings.TrimLeft(place, "/")}
	if at, ok := strings.CutSuffix(r.Place, "#"+id); ok {
		r.Place = at + "#"
	}
	for _, name := range append([]string{id}, also...) {
		tails := Tails(name)
		if len(tails) > 0 {
			r.names = append(r.names, tails[0])
		}
		r.tails = append(r.tails, tails...)
	}
	r.tails = unique(r.tails)
	return r
}

// shortestTail is the least a name may say behind its first word to be found by that.
const shortestTail = 3

// Tails are a name from its beginning, and from the beginning of each later word: folded
// and squeezed.
func Tails(name string) []string {
	words := strings.Fields(Fold(name))
	var tails []string
	for n := range words {
		if tail := strings.Join(words[n:], ""); n == 0 || len([]rune(tail)) >= shortestTail {
			tails = append(tails, tail)
		}
	}
	return tails
}

// Address is where the row stands, below the base.
func (r *Named) Address() string {
	if strings.HasSuffix(r.Place, "#") {
		return r.Place + r.ID
	}
	return r.Place
}

// Keys are what the row lies under.
func (r *Named) Keys() []string { return r.tails }

// MarshalJSON writes the row as a list: id, note, place, other names.
func (r *Named) MarshalJSON() ([]byte, error) {
	return json.Marshal(append([]string{r.ID, r.Note, r.Place}, r.Also...))
}

// likeness is how a squeezed question fits: 1 it is a name, 2 it begins one, 3 it begins a
// later word of one; 0 it does not.
func (r *Named) likeness(question string) int {
	switch {
	case slices.Contains(r.names, question):
		return 1
	case len([]rune(question)) < 2:
		return 0
	case begun(r.names, question):
		return 2
	case begun(r.tails, question):
		return 3
	}
	return 0
}

func begun(list []string, question string) bool {
	return slices.ContainsFunc(list, func(s string) bool { return strings.HasPrefix(s, question) })
}

// First are the rows that fit a squeezed question, as many as are to be shown, and how many
// there are in all.
type First struct {
	Count int      `json:"count"`
	Rows  []*Named `json:"rows"`
}

// FirstOf finds the first of rows, each of which may be there more than once.
func FirstOf(question string, rows []*Named, most int) First {
	first := First{Rows: []*Named{}}
	seen := map[*Named]bool{}
	before := func(a, b *Named) int {
		return cmp.Or(cmp.Compare(a.likeness(question), b.likeness(question)), cmp.Compare(len(a.ID), len(b.ID)), cmp.Compare(a.ID, b.ID))
	}
	for _, r := range rows {
		if seen[r] || r.likeness(question) == 0 {
			continue
		}
		seen[r] = true
		first.Count++
		at, _ := slices.BinarySearchFunc(first.Rows, r, before)
		if at < most {
			first.Rows = slices.Insert(first.Rows, at, r)
			first.Rows = first.Rows[:min(most, len(first.Rows))]
		}
	}
	return first
}

// RowWords are the words in the names of rows that a slip of the keyboard is looked for in:
// those without a figure, since another figure is another thing.
func RowWords(rows []*Named) []string {
	seen := map[string]bool{}
	for _, r := range rows {
		for _, name := range append([]string{r.ID}, r.Also...) {
			for _, word := range strings.Fields(Fold(name)) {
				if len([]rune(word)) >= shortestTail && !strings.ContainsFunc(word, unicode.IsDigit) {
					seen[word] = true
				}
			}
		}
	}
	words := make([]string, 0, len(seen))
	for word := range seen {
		words = append(words, word)
	}
	slices.Sort(words)
	return words
}
