package static

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// A part imports its words by its own name and is given those of the language, which stand
// in a folder of content under the same names; so do the sentences of the core, whose
// imports are found where the English ones are. What the language lacks is said in English.
func TestInLanguage(t *testing.T) {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	fsys := small()
	fsys["parts/table/table.ts"] = file("import { words } from \"words:table\";\nimport { more } from \"words:more\";\ndocument.title = words.hello + more;\n")
	fsys["words/en/table.ts"] = file("export const words = { hello: \"Good day\" };\n")
	fsys["words/en/more.ts"] = file("import { by } from \"./by\";\nexport const more = \"More\" + by;\n")
	fsys["words/en/by.ts"] = file("export const by = \"By\";\n")
	fsys["matcher/index.ts"] = file("import { says } from \"./speech-next\";\nexport const four = says();\n")
	fsys["matcher/speech-next.ts"] = file("export const says = () => \"Measure\";\n")
	content := fstest.MapFS{
		"de/scripts/table.ts":       file("export const words = { hello: \"Guten Tag\" };\n"),
		"de/scripts/by.ts":          file("export const by = \"Von\";\n"),
		"de/matcher/speech-next.ts": file("import { twice } from \"./twice\";\nexport const says = () => \"Messen\" + twice(21);\n"),
		"de/matcher/index.ts":       file("export const four = \"nie\";\n"), // no sentences: never read
	}
	for language, want := range map[string][]string{"": {"Good day", "More", "By", "Measure"}, "en": {"Good day", "More", "By", "Measure"}, "de": {"Guten Tag", "More", "Von", "Messen"}} {
		assets, problems := Bundle(In(fsys, content, language))
		both := string(assets.Bytes("table.js")) + string(assets.Bytes("matcher.js"))
		for _, w := range want {
			if problems.Blocked() || !strings.Contains(both, w) {
				t.Errorf("%q: got %s and %v, want %q in it", language, both, problems, w)
			}
		}
		if strings.Contains(both, "nie") || language == "de" && strings.Contains(both, "Measure") {
			t.Errorf("%q: got %s", language, both)
		}
	}
	for source, want := range map[string]string{
		`import "words:send";`:      `static/parts/table/table.ts:1:8: no file "static/words/en/send.ts" [bundle]`,
		`import "words:../../a/b";`: `static/parts/table/table.ts:1:8: "words:../../a/b" is the name of no part [bundle]`,
	} {
		fsys["parts/table/table.ts"] = file(source)
		if _, problems := Bundle(In(fsys, content, "de")); !strings.Contains(fmt.Sprint(problems), want) {
			t.Errorf("%s: got %v, want %s", source, problems, want)
		}
	}
	content["de/matcher/speech-next.ts"] = file("\nexport const says = ;\n")
	if _, problems := Bundle(In(fsys, content, "de")); !strings.Contains(fmt.Sprint(problems), `content/de/matcher/speech-next.ts:2:21: Unexpected ";" [bundle]`) {
		t.Errorf("got %v", problems)
	}
}

// sentence is a literal of two words or more, which only a reader needs.
var sentence = regexp.MustCompile("[\"`>][A-Z]\\pL+,? \\pL[^\"`]*[\"`]")

// What a part says to a reader stands among its words. Faults that a developer made are
// no words; nor are comments.
func TestNoWordsInParts(t *testing.T) {
	read := 0
	err := fs.WalkDir(FS, "parts", func(name string, d fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".ts" {
			return err
		}
		read++
		source, err := fs.ReadFile(FS, name)
		if err != nil {
			return err
		}
		for n, line := range strings.Split(string(source), "\n") {
			code, _, _ := strings.Cut(line, "// ")
			trimmed := strings.TrimSpace(code)
			if strings.HasPrefix(trimmed, "*") || strings.HasPrefix(trimmed, "/*") || strings.Contains(code, "new Error(") {
				continue
			}
			if found := sentence.FindString(code); found != "" {
				t.Errorf("static/%s:%d: %s stands in the script: put it into static/words/en", name, n+1, found)
			}
		}
		return nil
	})
	if err != nil || read < 40 {
		t.Errorf("%d scripts were read: %v", read, err)
	}
}
