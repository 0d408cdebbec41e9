package search

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/text/language"
)

var english = In(language.English, "a and as how in is it not of that the to what")

// Spanish has ñ as a letter after n, and files á under a; German files ä under a; Swedish
// has it after z (Unicode CLDR's collation).
func TestLettersOfLanguages(t *testing.T) {
	for name, test := range map[string]struct {
		tag  language.Tag
		want [][]string
	}{
		"Spanish": {language.Spanish, [][]string{{"A", "ácido", "aguja", "Águja"}, {"N", "nuez"}, {"Ñ", "ñandú"}, {"O", "oreja"}, {"Z", "zapata"}}},
		"German":  {language.German, [][]string{{"A", "ácido", "aguja", "Águja"}, {"N", "ñandú", "nuez"}, {"O", "oreja"}, {"Z", "zapata"}}},
	} {
		t.Run(name, func(t *testing.T) {
			l := In(test.tag, "de la")
			var entries []Entry
			for _, word := range []string{"zapata", "oreja", "Águja", "nuez", "ñandú", "aguja", "ácido"} {
				entries = append(entries, l.New(Word, "/w/", word, "", nil, ""))
			}
			var got [][]string
			for _, letter := range l.Letters(entries) {
				line := []string{letter.Name}
				for _, x := range letter.Lines {
					line = append(line, x.Text)
				}
				got = append(got, line)
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestPassing(t *testing.T) {
	e := In(language.Spanish, "de la dónde").New(Guide, "/g/", "Dónde está la oreja de la horquilla", "", nil, "")
	if want := "esta oreja horquilla estaoreja orejahorquilla"; e.Words != want {
		t.Errorf("the words are %q, want %q", e.Words, want)
	}
}
