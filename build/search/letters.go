package search

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
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

// Letters sorts entries by their names as the language does, numbers by their value, under
// the first letter of each.
func (l *Language) Letters(entries []Entry) []Letter {
	type named struct {
		Line
		letter, words string
	}
	var lines []named
	put := func(text string, e Entry, also bool) {
		words := plainWords(text)
		lines = append(lines, named{Line{Text: text, Entry: e, Also: also}, l.letter(words), words})
	}
	for _, e := range entries {
		put(e.Title, e, false)
		for _, name := range e.Also {
			put(name, e, true)
		}
	}
	slices.SortStableFunc(lines, func(a, b named) int {
		return cmp.Or(l.byLetter(a.letter, b.letter), l.order.CompareString(a.words, b.words), cmp.Compare(a.Text, b.Text))
	})
	var letters []Letter
	for _, line := range lines {
		name := line.letter
		if n := len(letters); n == 0 || letters[n-1].Name != name {
			letters = append(letters, Letter{Name: name, ID: "letter-" + letterID(name)})
		}
		last := &letters[len(letters)-1]
		last.Lines = append(last.Lines, line.Line)
	}
	return letters
}

// Compare orders two names as the list from A to Z does.
func (l *Language) Compare(a, b string) int {
	return cmp.Or(l.order.CompareString(plainWords(a), plainWords(b)), cmp.Compare(a, b))
}

// plainWords are the words of a text in lower case, with their accents and without the marks
// between them.
func plainWords(text string) string {
	text = strings.Map(func(r rune) rune {
		if dropped(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, norm.NFC.String(text))
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}

// letter is what a word stands under: its first letter without an accent, unless the
// language has that as a letter of its own.
func (l *Language) letter(word string) string {
	first, _ := utf8.DecodeRuneInString(norm.NFC.String(word))
	if !unicode.IsLetter(first) {
		return digits
	}
	own := string(unicode.ToUpper(first))
	plain, _ := utf8.DecodeRuneInString(Fold(own))
	if l.letters.CompareString(own, string(plain)) != 0 {
		return own
	}
	return string(unicode.ToUpper(plain))
}

// byLetter orders headings; numbers come first.
func (l *Language) byLetter(a, b string) int {
	switch {
	case a == b:
		return 0
	case a == digits:
		return -1
	case b == digits:
		return 1
	}
	return l.order.CompareString(a, b)
}

// letterID names the place of a heading.
func letterID(name string) string {
	if name == digits {
		return "0"
	}
	return strings.ToLower(name)
}
