//go:build browser

package browser

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// typesIn checks the page parts of a folder static with the words of a language.
func typesIn(t *testing.T, static, language string) (said string, ok bool) {
	t.Helper()
	settings := filepath.Join(t.TempDir(), "tsconfig.json")
	text := fmt.Sprintf(`{"extends": %q, "compilerOptions": {"paths": {"words:*": [%q]}}}`,
		filepath.Join(static, "parts", "tsconfig.json"), filepath.Join(static, "words", language, "*"))
	if err := os.WriteFile(settings, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(filepath.Join(tools, ".bin", "tsc"), "-p", settings).CombinedOutput()
	if _, exit := err.(*exec.ExitError); err != nil && !exit {
		t.Fatalf("run the type check: %v; build/test.sh installs it", err)
	}
	return string(out), err == nil
}

// Every language has the words that the parts ask for, with the values they give.
func TestWordsOfScripts(t *testing.T) {
	static, err := filepath.Abs("../../static")
	if err != nil {
		t.Fatal(err)
	}
	languages, err := os.ReadDir(filepath.Join(static, "words"))
	if err != nil || len(languages) == 0 {
		t.Fatalf("%d languages: %v", len(languages), err)
	}
	for _, language := range languages {
		if said, ok := typesIn(t, static, language.Name()); !ok {
			t.Errorf("%s: %s", language.Name(), said)
		}
	}
}

// A language that lacks a word, a part's file or a value fails the check.
func TestWordsOfScriptsFinds(t *testing.T) {
	static := t.TempDir()
	if err := os.CopyFS(static, os.DirFS("../../static")); err != nil {
		t.Fatal(err)
	}
	english := filepath.Join(static, "words", "en")
	for name, fault := range map[string]struct{ file, old, new, want string }{
		"word":  {"card.ts", "  start: \"Start\",\n", "", "Property 'start' does not exist"},
		"value": {"table.ts", "sortBy: (column: string)", "sortBy: (column: string, way: string)", "Expected 2 arguments"},
		"part":  {"offline.ts", "", "", "Cannot find module 'words:offline'"},
	} {
		t.Run(name, func(t *testing.T) {
			other := filepath.Join(static, "words", "xx-"+name)
			if err := os.CopyFS(other, os.DirFS(english)); err != nil {
				t.Fatal(err)
			}
			file := filepath.Join(other, fault.file)
			text, err := os.ReadFile(file)
			if err != nil || !strings.Contains(string(text), fault.old) {
				t.Fatalf("%s does not hold %q: %v", fault.file, fault.old, err)
			}
			if err := os.Remove(file); err != nil {
				t.Fatal(err)
			}
			if fault.old != "" {
				if err := os.WriteFile(file, []byte(strings.Replace(string(text), fault.old, fault.new, 1)), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if said, ok := typesIn(t, static, "xx-"+name); ok || !strings.Contains(said, fault.want) {
				t.Errorf("got %v and %s, want %s", ok, said, fault.want)
			}
		})
	}
}
