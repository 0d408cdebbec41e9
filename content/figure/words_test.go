package figure

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	catalogue "capspan/templates/words"
)

// english is the language of the tests.
var english = func() Words {
	words, problems := catalogue.Load(os.DirFS("../../templates"), nil, catalogue.English)
	if problems.Blocked() {
		panic(problems)
	}
	return Words{Say: words.Say}
}()

// What the drawings say is what they say that they say: a catalogue is checked against the
// list, and here every drawing there is was asked.
func TestSpoken(t *testing.T) {
	said := map[string]bool{}
	gallery(Words{Say: func(key string, named ...any) string {
		use := strings.TrimPrefix(key, Room)
		for i := 0; i < len(named); i += 2 {
			use += fmt.Sprint(" ", named[i])
		}
		said[use] = true
		return english.Say(key, named...)
	}})
	listed := Spoken()
	for use := range said {
		if !slices.Contains(listed, use) {
			t.Errorf("%q is said and not listed", use)
		}
	}
	for _, use := range listed {
		if !said[use] {
			t.Errorf("%q is listed and no drawing says it", use)
		}
	}
}

// A drawing speaks the language it is made of, down to the sign of its decimals, and says
// nothing else.
func TestOtherWords(t *testing.T) {
	other := Words{Decimal: ",", Say: func(key string, named ...any) string {
		for i := 1; i < len(named); i += 2 {
			named[i] = fmt.Sprintf("<%v>", named[i])
		}
		return "«" + strings.ToUpper(english.Say(key, named...)) + "»"
	}}
	for name, svg := range gallery(other) {
		drawn := mustRead(t, svg)
		for _, text := range append([]string{drawn.title, drawn.desc}, texts(drawn)...) {
			if strings.Contains(text, "«") {
				continue
			}
			for _, word := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ()≈⌀:+×=;.″", r) }) {
				if strings.Trim(word, "0123456789.,\"'-") != "" && !slices.Contains([]string{"mm", "in", "A", "B", "C", "D"}, word) {
					t.Errorf("%s: %q is no word of the catalogue", name, text)
				}
			}
		}
	}
	if got := mustRead(t, string(other.Instrument("p", readings["vernier-mm"]))); !got.says("26 mm + 49 × 0,02 mm = 26,98 mm") {
		t.Errorf("a vernier says %q", texts(got))
	}
}

// Words have little room on a drawing: in no language do they run off it, stand on a part
// or touch.
func TestWordsFit(t *testing.T) {
	folders, err := filepath.Glob("../??/words")
	if err != nil || len(folders) == 0 {
		t.Fatalf("%d languages: %v", len(folders), err)
	}
	languages := map[string]Words{catalogue.English: english}
	for _, folder := range folders {
		language := filepath.Base(filepath.Dir(folder))
		only := func(name, folder string) fstest.MapFS {
			text, err := os.ReadFile(folder + "/figure.yaml")
			if err != nil {
				t.Fatal(err)
			}
			return fstest.MapFS{name: &fstest.MapFile{Data: text}}
		}
		words, problems := catalogue.Load(only("words/en/figure.yaml", "../../templates/words/en"),
			only(language+"/words/figure.yaml", folder), language)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		languages[language] = Words{Say: words.Say, Decimal: ","}
	}
	for language, words := range languages {
		for name, svg := range gallery(words) {
			check := keepsApart
			if strings.HasPrefix(name, "joint-") {
				check = keepsClear
			}
			check(t, language+" "+name, mustRead(t, svg))
		}
	}
}

func texts(d drawing) []string {
	var list []string
	for _, l := range d.texts {
		list = append(list, l.words)
	}
	return list
}
