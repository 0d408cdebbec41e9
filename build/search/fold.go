// Package search makes what the site's search looks in: one [Index] of [Entry] values
// over rows, pages and their headings, words of the glossary, and sources, written as
// one JSON file which the browser fetches when somebody searches for the first time.
//
// [New] folds an entry's words; [Sections] and [Terms] take a page of the guide apart;
// [Letters] sorts everything for the page from A to Z, which needs no script. The asking
// is done in the browser by static/parts/search. What both sides must do alike is to
// [Fold] letters: testdata/fold.json is read by the tests of both.
package search

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Fold makes of a text its words in lower case, with one space between them. Accents,
// widths and dashes fall away, so that "Nadelhülse", "NADELHULSE" and "nadelhülse" in
// any composition are the same; "27 × 74,6" becomes "27 x 74.6", "13-10" becomes "13 10".
//
// The same is written in static/parts/search/fold.ts.
func Fold(text string) string {
	var b strings.Builder
	gap := false
	runes := []rune(norm.NFKD.String(text))
	for i, r := range runes {
		switch word := folded(unicode.ToLower(r)); {
		case dropped(r):
		case (r == '.' || r == ',') && digitAt(runes, i-1) && digitAt(runes, i+1):
			b.WriteByte('.')
		case word == "":
			gap = b.Len() > 0
		default:
			if gap {
				b.WriteByte(' ')
			}
			gap = false
			b.WriteString(word)
		}
	}
	return b.String()
}

// Squeeze drops the spaces of a folded text: a name is found however it is spaced.
func Squeeze(folded string) string { return strings.ReplaceAll(folded, " ", "") }

// dropped are the marks Unicode takes off a letter, and apostrophes.
func dropped(r rune) bool {
	return r >= 0x300 && r <= 0x36f || r == '\'' || r == '‘' || r == '’' || r == 'ʼ'
}

// alike are letters which Unicode does not take apart.
var alike = map[rune]string{'ß': "ss", 'æ': "ae", 'œ': "oe", 'ø': "o", 'đ': "d", 'ł': "l", 'ı': "i", 'ς': "σ", '×': "x"}

// folded is what stays of a lower-case rune; empty for one that parts words. The ranges
// are signs and punctuation: telling letters apart by Unicode's own lists would tie the
// two sides to one edition of them.
func folded(r rune) string {
	if same, ok := alike[r]; ok {
		return same
	}
	switch {
	case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
	case r < 0xc0, r == '÷', r >= 0x2000 && r <= 0x2bff, r >= 0x3000 && r <= 0x303f, r == 0xfffd:
		return ""
	}
	return string(r)
}

func digitAt(runes []rune, i int) bool {
	return i >= 0 && i < len(runes) && runes[i] >= '0' && runes[i] <= '9'
}
