package search

import (
	"strings"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"
)

// Language is what the search must know of the language of the pages. It is not for
// several goroutines at once.
type Language struct {
	list    []string // words that tell no entry from another, folded: left out of texts and of questions
	passing map[string]bool
	order   *collate.Collator // of words: numbers by their value, and letters as the language has them
	letters *collate.Collator // the same without accents, but for those that make another letter: ñ
}

// In knows a language by its tag, and by the words in it that tell no entry from another,
// with a space between them.
func In(tag language.Tag, passing string) *Language {
	l := &Language{passing: map[string]bool{}, order: collate.New(tag, collate.Numeric), letters: collate.New(tag, collate.Loose)}
	for _, word := range strings.Fields(Fold(passing)) {
		if !l.passing[word] {
			l.passing[word] = true
			l.list = append(l.list, word)
		}
	}
	return l
}
