package build

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"capspan/tables"
)

// functionWords tell English from Spanish: no sentence does without them, and none of them
// is a Spanish word.
var functionWords = strings.Fields("the and of with is are this that these those which when where what who from for by to in not it its was were " +
	"be been have had does do if then than there their they you your at into over under between each every any all only or on an but so")

var englishWord = regexp.MustCompile(`[A-Za-z']+`)

// englishRun finds two function words within seven words in a row, of four or more; what is
// written with accents, figures or marks between does not count as a row.
func englishRun(text string) string {
	for _, part := range regexp.MustCompile(`[^A-Za-z' \n\t]+`).Split(text, -1) {
		words := englishWord.FindAllString(part, -1)
		for i := 0; i+4 <= len(words); i++ {
			n, row := 0, words[i:min(i+7, len(words))]
			for _, word := range row {
				if slices.Contains(functionWords, strings.ToLower(word)) {
					n++
				}
			}
			if n >= 2 {
				return strings.Join(row, " ")
			}
		}
	}
	return ""
}

// On a Spanish page no sentence stands in English that is not marked as English. Code,
// titles of documents and what programs read are as they are.
func TestSpanishPagesSpeakSpanish(t *testing.T) {
	out, problems := siteOf(t, Embedded(), Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	if !slices.ContainsFunc(out.Languages, func(l Language) bool { return l.Folder == "es/" }) {
		t.Fatalf("no Spanish in %v", out.Languages)
	}
	titles := map[string]bool{}
	set, _ := tables.Load(Embedded().Tables)
	for _, source := range set.Sources {
		titles[source.Title] = true
	}
	pages, texts := 0, 0
	for _, f := range out.Files {
		if !strings.HasPrefix(f.Path, "es/") || !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		pages++
		for _, text := range spokenOn(t, f.Bytes) {
			texts++
			if run := englishRun(text); run != "" && !titles[text] {
				t.Errorf("%s: %q is English, in %q", f.Path, run, shortened(text))
			}
		}
	}
	if pages < 200 || texts < 20*pages {
		t.Errorf("only %d texts on %d pages", texts, pages)
	}
}

// Sentences of both languages, so that the finder can neither miss nor invent.
func TestEnglishRun(t *testing.T) {
	for text, english := range map[string]bool{
		"Lay the new joint beside the old one.":                             true,
		"This is the keeper's own word about the size.":                     true,
		"Mida el dado. Which faces are these?":                              true,
		"No lo sé: son las de la 1310, a uno y a otro lado, y no hay más.":  false,
		"Es de uso común; se va a ver en la fila 1330-to-1350 o la 3r.":     false,
		"Cardán, cruceta, horquilla, dado, anillo, placa, abrazadera.":      false,
		"Inglés: yoke, yoke ear, slip yoke, companion flange, snap ring.":   false,
		"Leído con un calibrador digital. Con él no se ve: a uno, o a dos.": false,
	} {
		if got := englishRun(text) != ""; got != english {
			t.Errorf("%q: got %t", text, got)
		}
	}
}

// asWritten are elements whose words are nobody's language.
var asWritten = []string{"script", "style", "code", "pre", "cite", "template"}

// spokenOn are the texts of a page in its own language: what is shown, and the attributes
// that are read out.
func spokenOn(t *testing.T, page []byte) []string {
	t.Helper()
	doc, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		if n.Type == html.ElementNode {
			lang := attribute(n, "lang")
			if slices.Contains(asWritten, n.Data) || lang != "" && n.Data != "html" {
				return
			}
			for _, key := range []string{"title", "alt", "aria-label", "placeholder"} {
				list = append(list, attribute(n, key))
			}
			if n.Data == "meta" && attribute(n, "name") == "description" {
				list = append(list, attribute(n, "content"))
			}
		}
		if n.Type == html.TextNode {
			list = append(list, n.Data)
		}
		for c := range n.ChildNodes() {
			walk(c)
		}
	}
	walk(doc)
	return slices.DeleteFunc(list, func(text string) bool { return strings.TrimSpace(text) == "" })
}

func shortened(text string) string {
	return fmt.Sprintf("%.120s", strings.Join(strings.Fields(text), " "))
}
