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

// A part imports its words by its own name and is given those of the bundle's language.
func TestWordsImport(t *testing.T) {
	fsys := small()
	fsys["parts/table/table.ts"] = &fstest.MapFile{Data: []byte("import { words } from \"words:table\";\ndocument.title = words.hello;\n")}
	fsys["words/en/table.ts"] = &fstest.MapFile{Data: []byte("export const words = { hello: \"Good day\" };\n")}
	fsys["words/de/table.ts"] = &fstest.MapFile{Data: []byte("export const words = { hello: \"Guten Tag\" };\n")}
	for language, want := range map[string]string{"en": "Good day", "de": "Guten Tag"} {
		assets, problems := Bundle(fsys, language)
		if script := string(assets.Bytes("table.js")); problems.Blocked() || !strings.Contains(script, want) {
			t.Errorf("%s: got %s and %v, want %q in it", language, script, problems, want)
		}
	}
	for source, want := range map[string]string{
		`import "words:send";`:                                 `static/parts/table/table.ts:1:8: no file "static/words/de/send.ts" [bundle]`,
		`import "words:../../a/b";`:                            `static/parts/table/table.ts:1:8: "words:../../a/b" is the name of no part [bundle]`,
		`import {no} from "words:table"; document.title = no;`: `No matching export in "static:words/de/table.ts" for import "no"`,
	} {
		fsys["parts/table/table.ts"] = &fstest.MapFile{Data: []byte(source)}
		if _, problems := Bundle(fsys, "de"); !strings.Contains(fmt.Sprint(problems), want) {
			t.Errorf("%s: got %v, want %s", source, problems, want)
		}
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
