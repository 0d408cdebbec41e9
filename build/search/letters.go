package search

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Letter is a heading of the page from A to Z with what stands under it.
type Letter struct {
	Name  string // "A", or "0–9"
	ID    string // "letter-a"
	Lines []Line
}

// Line leads to an entry by its title or by another of its names.
type Line struct {
	Text  string
	Entry Entry
	Also  bool // Text is another name of the entry
}

// digits is the heading of everything that does not begin with a letter.
const digits = "0–9"

// Letters sorts entries by their names, numbers by their value, under the first letter
// of each.
func Letters(entries []Entry) []Letter {
	type folded struct {
		Line
		letter, words string
	}
	var lines []folded
	put := func(text string, e Entry, also bool) {
		words := Fold(text)
		lines = append(lines, folded{Line{Text: text, Entry: e, Also: also}, letter(words), words})
	}
	for _, e := range entries {
		put(e.Title, e, false)
		for _, name := range e.Also {
			put(name, e, true)
		}
	}
	slices.SortStableFunc(lines, func(a, b folded) int {
		return cmp.Or(cmp.Compare(a.letter, b.letter), natural(a.words, b.words), cmp.Compare(a.Text, b.Text))
	})
	var letters []Letter
	for _, l := range lines {
		name := l.letter
		if n := len(letters); n == 0 || letters[n-1].Name != name {
			letters = append(letters, Letter{Name: name, ID: "letter-" + strings.Fields(Fold(name))[0]})
		}
		last := &letters[len(letters)-1]
		last.Lines = append(last.Lines, l.Line)
	}
	return letters
}

func letter(folded string) string {
	first, _ := utf8.DecodeRuneInString(folded)
	if !unicode.IsLetter(first) {
		return digits
	}
	return string(unicode.ToUpper(first))
}

// natural compares with runs of digits taken as numbers: 9 before 10.
func natural(a, b string) int {
	for a != "" && b != "" {
		x, y := run(a), run(b)
		if x != "" && y != "" {
			p, q := strings.TrimLeft(x, "0"), strings.TrimLeft(y, "0")
			if order := cmp.Or(cmp.Compare(len(p), len(q)), cmp.Compare(p, q)); order != 0 {
				return order
			}
			a, b = a[len(x):], b[len(y):]
			continue
		}
		if order := cmp.Compare(a[0], b[0]); order != 0 {
			return order
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(a, b)
}

// run is the digits a text begins with.
func run(s string) string {
	return s[:len(s)-len(strings.TrimLeft(s, "0123456789"))]
}
