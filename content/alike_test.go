package content

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Every shipped page has its page in every language, alike in all but words. No language
// has a page of its own.
func TestShippedPagesAreAlike(t *testing.T) {
	for _, language := range []string{"es"} {
		translated := translatedSources(t, language)
		for name, source := range shippedSources(t) {
			translation, there := translated[name]
			if !there {
				t.Errorf("%s: no page for %s", language, name)
				continue
			}
			delete(translated, name)
			for _, p := range Alike(name, source, path.Join(language, name), translation) {
				t.Error(p)
			}
		}
		for name := range translated {
			t.Errorf("%s: %s is made of no page", language, name)
		}
	}
}

// shippedSources are the pages in English, by name.
func shippedSources(t *testing.T) map[string][]byte {
	t.Helper()
	sources := map[string][]byte{}
	for _, pattern := range []string{"*.md", "*/*.md", "*/*/*.md"} {
		names, err := fs.Glob(FS, pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			if first, _, _ := strings.Cut(name, "/"); LanguageFolder(first) {
				continue
			}
			source, err := fs.ReadFile(FS, name)
			if err != nil {
				t.Fatal(err)
			}
			sources[name] = source
		}
	}
	if len(sources) < 35 {
		t.Fatalf("only %d pages", len(sources))
	}
	return sources
}

func translatedSources(t *testing.T, language string) map[string][]byte {
	t.Helper()
	sources := map[string][]byte{}
	err := filepath.WalkDir(language, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".md" {
			return err
		}
		sources[strings.TrimPrefix(filepath.ToSlash(name), language+"/")], err = os.ReadFile(name)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return sources
}

// A page with every part and thing there is, and a translation with nothing wrong.
const (
	alikeSource = `---
title: Cap
about: How thick.
next: [measure/across]
---

A cap of {reading 1.062 in} is 13 µm wider. See [why](/about/#why) and [there](https://example.org/a#b).

## Measure

::: step Turn it 2 times
Write ` + "`unknown`" + `.
:::

::: figure instrument kind=dial reading="26.98 mm" alt="It reads 26.98 mm"
![Jaws](/jaws.png)
:::

| a | b |
|---|---|
| 0.05 | 1 1/16 |

:: apart tool=tape

` + "```sh\ncapspan fmt # order\n```\n\n```md\n**Which?**\n```\n"
	alikeTranslation = `---
title: Dado
about: Qué grueso.
next: [measure/across]
---

Vea [allí](https://example.org/a#b) y [por qué](/about/#por-qué). Es 13 µm más ancho un dado de {reading 1.062 in}.

## Mida

::: step Gírelo 2 veces
Escriba ` + "`unknown`" + `.
:::

::: figure instrument kind=dial reading="26.98 mm" alt="Marca 26,98 mm"
![Bocas](/jaws.png)
:::

| a | b |
|---|---|
| 0,05 | 1 1/16 |

:: apart tool=tape

` + "```sh\ncapspan fmt # orden\n```\n\n```md\n**¿Cuál?**\n```\n"
)

func TestAlike(t *testing.T) {
	if problems := Alike("cap.md", []byte(alikeSource), "es/cap.md", []byte(alikeTranslation)); len(problems) > 0 {
		t.Errorf("a true translation: %v", problems)
	}
	for _, c := range []struct{ old, changed, want string }{
		{"{reading 1.062 in}", "1.062 in", `content/es/cap.md:6:1: es/cap: {reading 1.062 in} is not between here and the next part [translation-loses]`},
		{"{reading 1.062 in}", "{reading 1.602 in}", `content/es/cap.md:7:97: es/cap: {reading 1.602 in} is not in this part of the page it is made of [translation-adds]`},
		{"13 µm", "31 µm", `content/es/cap.md:7:70: es/cap: the figure 31 is not in this part of the page it is made of [translation-adds]`},
		{"13 µm", "unos µm", `content/es/cap.md:6:1: es/cap: the figure 13 is not between here and the next part [translation-loses]`},
		{"/about/#por-qué", "/measure/#por-qué", `content/es/cap.md:6:1: es/cap: a link to /about/# is not between here and the next part [translation-loses]`},
		{"/about/#por-qué", "/about/", `content/es/cap.md:6:1: es/cap: a link to /about/# is not between here and the next part [translation-loses]`},
		{"a#b", "a#c", `content/es/cap.md:6:1: es/cap: a link to https://example.org/a#b is not between here and the next part [translation-loses]`},
		{"## Mida", "### Mida", `content/es/cap.md:9:1: es/cap: "a heading of level 3" stands where the page it is made of has "a heading of level 2" [translation-differs]`},
		{"## Mida\n", "", `content/es/cap.md:10:1: es/cap: "::: step" stands where the page it is made of has "a heading of level 2" [translation-differs]`},
		{"Gírelo 2", "Gírelo tres", `content/es/cap.md:11:1: es/cap: the figure 2 is not between here and the next part [translation-loses]`},
		{"`unknown`", "desconocido", "content/es/cap.md:11:1: es/cap: `unknown` is not between here and the next part [translation-loses]"},
		{"kind=dial", "kind=vernier", `content/es/cap.md:15:1: es/cap: "::: figure instrument kind=vernier reading=26.98 mm" stands where the page it is made of has "::: figure instrument kind=dial reading=26.98 mm" [translation-differs]`},
		{"Marca 26,98", "Marca 26,89", `content/es/cap.md:15:63: es/cap: the figure 26.89 is not in this part of the page it is made of [translation-adds]`},
		{"/jaws.png", "/bocas.png", `content/es/cap.md:15:1: es/cap: the image /jaws.png is not between here and the next part [translation-loses]`},
		{"0,05", "0,50", `content/es/cap.md:21:3: es/cap: the figure 0.50 is not in this part of the page it is made of [translation-adds]`},
		{"| 0,05 | 1 1/16 |\n", "", `content/es/cap.md:22:1: es/cap: ":: apart tool=tape" stands where the page it is made of has "a table's row of 2 cells" [translation-differs]`},
		{"tool=tape", "tool=steel-rule", `content/es/cap.md:23:1: es/cap: ":: apart tool=steel-rule" stands where the page it is made of has ":: apart tool=tape" [translation-differs]`},
		{"capspan fmt", "capspan check", `content/es/cap.md:25:1: es/cap: "code in sh: capspan check" stands where the page it is made of has "code in sh: capspan fmt" [translation-differs]`},
		{"**¿Cuál?**\n```\n", "**¿Cuál?**\n```\n\n## Más\n", `content/es/cap.md:33:1: es/cap: "a heading of level 2" stands where the page it is made of has "the end" [translation-differs]`},
		{"measure/across", "chart", `content/es/cap.md:1:1: es/cap: "next" is ["chart"] here, and ["measure/across"] in the page it is made of [translation-differs]`},
		{"about: Qué grueso.\n", "", `content/es/cap.md:1:1: es/cap: only one of the two pages has "about" [translation-differs]`},
	} {
		changed := strings.Replace(alikeTranslation, c.old, c.changed, 1)
		if changed == alikeTranslation {
			t.Fatalf("%q is not in the translation", c.old)
		}
		var said []string
		for _, p := range Alike("cap.md", []byte(alikeSource), "es/cap.md", []byte(changed)) {
			line, _, _ := strings.Cut(p.String(), "\n")
			said = append(said, line)
			if len(p.Notes) != 1 || p.Notes[0].Pos.File != "content/cap.md" || p.Notes[0].Pos.Line == 0 {
				t.Errorf("%s: it does not say where in the page it is made of: %v", line, p.Notes)
			}
		}
		if !slices.Contains(said, c.want) {
			t.Errorf("%q changed to %q:\nwant %s\ngot  %s", c.old, c.changed, c.want, strings.Join(said, "\n     "))
		}
	}
}

// Whatever a stranger sends as a translation, Alike says places that are in it.
func FuzzAlike(f *testing.F) {
	f.Add(alikeTranslation)
	f.Add(alikeSource)
	f.Add("---\n---\n:::: figure alt=\"9\n::: step 1\n:: 2\n|1|\n|-|\n```md")
	f.Fuzz(func(t *testing.T, translation string) {
		lines := strings.Count(translation, "\n") + 1
		for _, p := range Alike("cap.md", []byte(alikeSource), "es/cap.md", []byte(translation)) {
			if p.Pos.Line < 1 || p.Pos.Line > lines || p.Pos.Col < 1 {
				t.Errorf("%s is not in a text of %d lines", p.Pos, lines)
			}
		}
	})
}
