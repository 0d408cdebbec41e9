package content

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

// A language's pages have the slugs and heading ids of the English ones, and no folder of a
// language is among the English pages.
func TestLoadLanguage(t *testing.T) {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	fsys := fstest.MapFS{
		"measure/cap.md":       file("---\ntitle: Cap\n---\n\nSee [it](#how-much).\n\n## How much?\n\n::: step One\n### How much?\n:::\n\n## Float\n"),
		"es/measure/cap.md":    file("---\ntitle: Dado\n---\n\nVea [esto](#how-much).\n\n## ¿Cuánto?\n\n::: step Uno\n### Juego\n:::\n\n## Holgura\n"),
		"es/words/joint.yaml":  file("title: {of: T, is: T}\n"),
		"pt-BR/measure/cap.md": file("---\ntitle: Capa\n---\n"),
		"es/_draft/x.md":       file("no page"),
		"abcd/page.md":         file("---\ntitle: A folder of pages\n---\n"),
	}
	english, problems := Load(fsys, Options{})
	if len(problems) > 0 || len(english) != 2 || english[0].Slug != "abcd/page" || english[1].Title != "Cap" {
		t.Errorf("English: %v, %v", english, problems)
	}
	spanish, problems := Load(fsys, Options{Language: "es", Base: "/es/"})
	if len(problems) > 0 || len(spanish) != 1 {
		t.Fatalf("got %v, %v", spanish, problems)
	}
	p := spanish[0]
	if p.Slug != "measure/cap" || p.Title != "Dado" || p.Pos.File != "content/es/measure/cap.md" {
		t.Errorf("got %+v", p)
	}
	for _, want := range []string{`<h2 id="how-much">¿Cuánto?`, `<h3 id="how-much-2">Juego`, `<h2 id="float">Holgura`, `href="#how-much"`} {
		if !strings.Contains(string(p.HTML), want) {
			t.Errorf("%s is not in %s", want, p.HTML)
		}
	}
}

func TestOtherHeadings(t *testing.T) {
	english := "---\ntitle: Cap\n---\n\n## One\n\n### Two\n\n## Three\n"
	for body, want := range map[string]string{
		"## Uno\n\n### Dos\n":                         `content/cap.md:9:1: cap: the heading has none in its place in "content/es/cap.md" [other-headings]`,
		"## Uno\n\n### Dos\n\n## Tres\n\n## Cuatro\n": `content/es/cap.md:11:1: cap: the English page has no heading in this place [other-headings]`,
		"## Uno\n\n## Dos\n\n## Tres\n":               `content/es/cap.md:7:1: cap: is a heading of level 2, and the English one of level 3 [other-headings]`,
		"## Uno\n\n### Dos\n\n## Tres\n":              "[]",
	} {
		fsys := fstest.MapFS{"cap.md": {Data: []byte(english)}, "es/cap.md": {Data: []byte("---\ntitle: Dado\n---\n\n" + body)}}
		_, problems := Load(fsys, Options{Language: "es"})
		if got := fmt.Sprint(problems); !strings.Contains(got, want) || len(problems) > 1 {
			t.Errorf("%q: got %s, want %s", body, got, want)
		}
	}
}

func TestLanguageFolder(t *testing.T) {
	for name, want := range map[string]bool{"es": true, "fr": true, "pt-BR": true, "zh-Hant-TW": true, "en": false, "about": false, "ES": false, "e": false, "abcd": false, "es-": false, "es/x": false, "figure": false} {
		if got := LanguageFolder(name); got != want {
			t.Errorf("%q: got %t", name, got)
		}
	}
}
