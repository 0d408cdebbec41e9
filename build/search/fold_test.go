package search

import (
	"encoding/json"
	"os"
	"testing"
	"unicode"

	"github.com/dop251/goja"
	"pgregory.net/rapid"

	"capspan/static"
)

// mustFold is the browser's side of the fold, in the same bundle form as it gets it.
func mustFold(t *testing.T) func(string) string {
	t.Helper()
	bundle, problems := static.Script(static.FS, "parts/search/fold.ts", "Folding")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	vm := goja.New()
	if _, err := vm.RunString(string(bundle)); err != nil {
		t.Fatal(err)
	}
	var fold func(string) string
	if err := vm.ExportTo(vm.Get("Folding").ToObject(vm).Get("fold"), &fold); err != nil {
		t.Fatal(err)
	}
	return fold
}

// The cases both sides must agree on. What Unicode takes apart is by UAX 15 (NFKD), what
// becomes of single letters is our own rule. The browser test asks Chromium the same.
func TestFold(t *testing.T) {
	text, err := os.ReadFile("testdata/fold.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct{ Text, Fold string }
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) < 20 {
		t.Fatalf("%d cases", len(cases))
	}
	browser := mustFold(t)
	for _, c := range cases {
		if got := Fold(c.Text); got != c.Fold {
			t.Errorf("Fold(%q) = %q, want %q", c.Text, got, c.Fold)
		}
		if got := browser(c.Text); got != c.Fold {
			t.Errorf("fold.ts: fold(%q) = %q, want %q", c.Text, got, c.Fold)
		}
	}
}

// Whatever is written, both sides fold it alike, and folding twice is folding once.
func TestFoldAlike(t *testing.T) {
	browser := mustFold(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.OneOf(
			rapid.RuneFrom([]rune(" .,-'/x×½0123456789abcÄéßØıİΣς…—")),
			rapid.RuneFrom(nil, unicode.Latin, unicode.Greek, unicode.Cyrillic),
			rapid.Rune()), 0, 24, -1).Draw(t, "text")
		once := Fold(text)
		if got := browser(text); got != once {
			t.Fatalf("%q: Go folds to %q, the browser's side to %q", text, once, got)
		}
		if twice := Fold(once); twice != once {
			t.Fatalf("%q folds to %q, and that to %q", text, once, twice)
		}
	})
}
