package content

import (
	"math"
	"regexp"
	"strings"
	"testing"
)

var (
	sentenceEnd = regexp.MustCompile(`[.!?:;](\s|$)`)
	spelled     = regexp.MustCompile(`[\p{L}][\p{L}'’]*`)
)

func readingEase(prose []string) float64 {
	words, sentences, sounded := counted(prose, syllables)
	if words == 0 {
		return 100
	}
	return 206.835 - 1.015*words/sentences - 84.6*sounded/words
}

// counted are the words, sentences and syllables of texts.
func counted(prose []string, syllables func(word string) int) (words, sentences, sounded float64) {
	for _, text := range prose {
		found := spelled.FindAllString(text, -1)
		if len(found) == 0 {
			continue
		}
		sentences += float64(max(1, len(sentenceEnd.FindAllString(strings.TrimSpace(text), -1))))
		for _, w := range found {
			words++
			sounded += float64(syllables(w))
		}
	}
	return words, sentences, sounded
}

var vowels = regexp.MustCompile(`[aeiouy]+`)

// apart are neighbouring vowels that sound apart: di-a-meter, ra-di-us, ide-o.
var (
	apart       = regexp.MustCompile(`ia|iu|ua|eo|[^cstgx]io`)
	silentEs    = regexp.MustCompile(`es$`)
	soundedEs   = regexp.MustCompile(`([sxzcg]|ch|sh|[^aeiouy][lr])es$`)
	silentEd    = regexp.MustCompile(`ed$`)
	soundedEd   = regexp.MustCompile(`([td]|[^aeiouy][lr])ed$`)
	silentE     = regexp.MustCompile(`[^e]e$`)
	soundedLast = regexp.MustCompile(`[^aeiouy][lr]e$`) // need-le, cen-tre
)

// syllables counts the groups of vowels of an English word, less a silent ending. It
// is right for most words, and TestSyllables says for which.
func syllables(word string) int {
	w := strings.ToLower(word)
	n := len(vowels.FindAllString(w, -1)) + len(apart.FindAllString(w, -1))
	if silentEs.MatchString(w) && !soundedEs.MatchString(w) || silentEd.MatchString(w) && !soundedEd.MatchString(w) ||
		silentE.MatchString(w) && !soundedLast.MatchString(w) {
		n--
	}
	return max(n, 1)
}

// Syllables as a dictionary of English divides the words.
func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"cap": 1, "measure": 2, "caliper": 3, "micrometer": 4, "universal": 4, "needle": 2, "yoke": 1, "faces": 2,
		"bearing": 2, "diameter": 4, "groove": 1, "grooves": 1, "pushed": 1, "needed": 2, "inches": 2, "the": 1,
		"conversion": 3, "reading": 2, "clips": 1, "three": 1, "workshop": 2, "millimetre": 4, "across": 2, "handles": 2,
		"centre": 2, "handled": 2, "radius": 3, "section": 2, "identify": 4, "published": 2, "thickness": 2, "size": 1, "sizes": 2, "identification": 6,
	} {
		if got := syllables(word); got != want {
			t.Errorf("%q: got %d syllables, want %d", word, got, want)
		}
	}
}

// Six words of one syllable in one sentence: 206.835 - 1.015×6 - 84.6×1. And a passage as
// hard as the law writes falls through.
func TestReadingEaseFormula(t *testing.T) {
	if got := readingEase([]string{"The cat sat on the mat."}); math.Abs(got-116.145) > 1e-9 {
		t.Errorf("got %v, want 116.145", got)
	}
	hard := []string{"Notwithstanding the aforementioned considerations, the identification of appropriate intermediate " +
		"configurations necessitates comprehensive dimensional verification of every individual component."}
	if got := readingEase(hard); got >= 60 {
		t.Errorf("a hard passage scores %.1f, want less than 60", got)
	}
}
