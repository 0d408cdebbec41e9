package words

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// Text is what one form says, in pieces.
type Text []Piece

// Mark is what a piece stands for.
type Mark int

const (
	Plain  Mark = iota // words
	Value              // a value, by name
	Link               // words that lead to an address, by name
	Strong             // words that matter
)

// Piece is some words, a value, or words with a mark.
type Piece struct {
	Mark  Mark
	Words string // of Plain, Link and Strong
	Name  string // of Value and Link
}

// marked finds what is not plain. A star or bracket that belongs to none stays as it is.
var marked = regexp.MustCompile(`\{[^{}]*\}|\[[^\[\]]+\]\([^()]*\)|\*\*[^*]+\*\*`)

var nameForm = regexp.MustCompile(`^[a-z][a-z0-9]*$`)

// parse takes a text apart.
func parse(source string) (Text, error) {
	var text Text
	plain := func(words string) error {
		if strings.ContainsAny(words, "{}") {
			return fmt.Errorf("a brace has no partner in %q", source)
		}
		if words != "" {
			text = append(text, Piece{Words: words})
		}
		return nil
	}
	rest := 0
	for _, at := range marked.FindAllStringIndex(source, -1) {
		if err := plain(source[rest:at[0]]); err != nil {
			return nil, err
		}
		found := source[at[0]:at[1]]
		rest = at[1]
		piece := Piece{}
		switch found[0] {
		case '{':
			piece = Piece{Mark: Value, Name: found[1 : len(found)-1]}
		case '[':
			words, name, _ := strings.Cut(found[1:len(found)-1], "](")
			piece = Piece{Mark: Link, Words: words, Name: name}
		case '*':
			piece = Piece{Mark: Strong, Words: found[2 : len(found)-2]}
		}
		if piece.Mark != Strong && !nameForm.MatchString(piece.Name) {
			return nil, fmt.Errorf("%q is no name: write lower-case letters and digits", piece.Name)
		}
		if piece.Mark != Value && strings.ContainsAny(piece.Words, "{}") {
			return nil, fmt.Errorf("a value stands inside %q, where only words can", found)
		}
		text = append(text, piece)
	}
	return text, plain(source[rest:])
}

// names are those of the values and addresses a text waits for, sorted.
func (t Text) names() []string {
	var names []string
	for _, p := range t {
		if p.Name != "" && !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
	}
	slices.Sort(names)
	return names
}

// prose reports whether a text has links or words that matter.
func (t Text) prose() bool {
	return slices.ContainsFunc(t, func(p Piece) bool { return p.Mark == Link || p.Mark == Strong })
}
