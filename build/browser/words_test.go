//go:build browser

package browser

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build/translation"
	"capspan/content"
	"capspan/static"
)

// typesIn checks the scripts as they speak a language: its files stand in the place of the
// English ones, so whatever takes a sentence from them is held to what it takes. The
// projects are folders of static with settings of their own.
func typesIn(t *testing.T, language string, content fs.FS, projects ...string) (said string, ok bool) {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, static.In(os.DirFS("../../static"), content, language)); err != nil {
		t.Fatal(err)
	}
	for _, project := range projects {
		out, err := exec.Command(filepath.Join(tools, ".bin", "tsc"), "-p", filepath.Join(dir, project)).CombinedOutput()
		if _, exit := err.(*exec.ExitError); err != nil && !exit {
			t.Fatalf("run the type check: %v; build/test.sh installs it", err)
		}
		if err != nil {
			said += string(out)
		}
	}
	return said, said == ""
}

// Every language has the words and sentences that the scripts ask for, with the values they
// give.
func TestWordsOfScripts(t *testing.T) {
	for _, language := range append([]string{static.English}, translation.Languages(content.FS)...) {
		if said, ok := typesIn(t, language, content.FS, "matcher", "driveline", "order", "shaft", "parts"); !ok {
			t.Errorf("%s: %s", language, said)
		}
	}
}

// A language that lacks a word, a value or a sentence fails the check.
func TestWordsOfScriptsFinds(t *testing.T) {
	for name, fault := range map[string]struct{ project, english, place, old, new, want string }{
		"word":     {"parts", "words/en/card.ts", "xx/scripts/card.ts", "  start: \"Start\",\n", "", "Property 'start' does not exist"},
		"value":    {"parts", "words/en/table.ts", "xx/scripts/table.ts", "sortBy: (column: string)", "sortBy: (column: string, way: string)", "Expected 2 arguments"},
		"sentence": {"matcher", "matcher/speech-address.ts", "xx/matcher/speech-address.ts", "export const tooLong", "const tooLong", "tooLong"},
		"id":       {"matcher", "matcher/speech-words.ts", "xx/matcher/speech-words.ts", "\"outside-clip\": \"outside clips\"", "\"anillo-exterior\": \"anillos\"", "anillo-exterior"},
		"page":     {"driveline", "driveline/page-angles.ts", "xx/driveline/page-angles.ts", "  about: ", "  sobre: ", "sobre"},
	} {
		t.Run(name, func(t *testing.T) {
			text, err := fs.ReadFile(static.FS, fault.english)
			if err != nil || !strings.Contains(string(text), fault.old) {
				t.Fatalf("%s does not hold %q: %v", fault.english, fault.old, err)
			}
			other := fstest.MapFS{fault.place: {Data: []byte(strings.Replace(string(text), fault.old, fault.new, 1))}}
			if said, ok := typesIn(t, "xx", other, fault.project); ok || !strings.Contains(said, fault.want) {
				t.Errorf("got %v and %s, want %s", ok, said, fault.want)
			}
		})
	}
}
