package build

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"unicode"

	"github.com/google/go-cmp/cmp"

	"capspan/build/diag"
	"capspan/build/pseudo"
	"capspan/content/figure"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// english is a site that knows its words and nothing else.
var english = func() *site {
	words, problems := catalogue.Load(templates.FS, nil, catalogue.English)
	if problems.Blocked() {
		panic(problems)
	}
	return &site{inputs: inputs{words: words}}
}()

// What this package says is what it says that it says: the list is what a chart of
// somebody's own is checked against, and the calls are what would fail.
func TestSpoken(t *testing.T) {
	listed := map[string]string{}
	for _, use := range said() {
		listed[use.Key] = strings.Join(use.Names, " ")
	}
	called, begun := map[string]bool{}, []string{}
	inspect(t, func(n ast.Node, at token.Position) {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return
		}
		if method, ok := call.Fun.(*ast.SelectorExpr); !ok || method.Sel.Name != "word" {
			return
		}
		key, whole := literal(call.Args[0])
		if key == "" {
			t.Errorf("%s: the key does not begin with a literal", at)
			return
		}
		var names []string
		for i := 1; i < len(call.Args); i += 2 {
			name, _ := literal(call.Args[i])
			names = append(names, name)
		}
		if !whole {
			begun = append(begun, key)
			return
		}
		called[key] = true
		if got, known := listed[key]; !known || got != strings.Join(names, " ") {
			t.Errorf("%s: %s is said with %q and listed with %q", at, key, names, got)
		}
	})
	if len(called) < 50 {
		t.Errorf("only %d calls were found", len(called))
	}
	for key := range listed {
		ofGroup := slices.ContainsFunc(begun, func(b string) bool { return strings.HasPrefix(key, b) })
		if !called[key] && !ofGroup && !strings.HasPrefix(key, "tool.") && !strings.HasPrefix(key, "command.") && // choices and cmd/capspan say those
			!strings.HasPrefix(key, figure.Room) { // and drawings these
			t.Errorf("%s is listed and nobody says it", key)
		}
	}
}

// inspect visits every node of the package's sources.
func inspect(t *testing.T, visit func(n ast.Node, at token.Position)) {
	t.Helper()
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	fset := token.NewFileSet()
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if n != nil {
				visit(n, fset.Position(n.Pos()))
			}
			return true
		})
	}
}

// viewWords are the fields of views and descriptions that a reader is shown.
var viewWords = []string{"Title", "Sheet", "About", "Text", "Note", "Label", "How", "See", "SeeYoke", "Caption", "Lead", "Basis",
	"Truth", "Why", "Alt", "alt", "Name", "Description", "Foot"}

// markupOnly is what stands between tags in a literal.
var markupOnly = regexp.MustCompile(`<[^>]*(>|$)|^[^<]*>`)

// No view is filled with words of this package's own, nor is a page written with them.
func TestNoWordsInViews(t *testing.T) {
	inspect(t, func(n ast.Node, at token.Position) {
		switch n := n.(type) {
		case *ast.CompositeLit:
			fields := map[string]ast.Expr{}
			for _, element := range n.Elts {
				if pair, ok := element.(*ast.KeyValueExpr); ok {
					if name, ok := pair.Key.(*ast.Ident); ok {
						fields[name.Name] = pair.Value
					}
				}
			}
			if fields["Pos"] != nil {
				return // of a problem, which contributors read
			}
			for _, name := range viewWords {
				text, _ := literal(fields[name])
				text = strings.ReplaceAll(text, "Capspan", "")
				if strings.ContainsFunc(text, unicode.IsLetter) {
					t.Errorf("%s: %s is %q: put it into templates/words/en and say it by its key", at, name, text)
				}
			}
		case *ast.CallExpr:
			method, ok := n.Fun.(*ast.SelectorExpr)
			if !ok || method.Sel.Name != "raw" && method.Sel.Name != "text" || len(n.Args) != 1 {
				return
			}
			text, _ := literal(n.Args[0])
			if method.Sel.Name == "raw" {
				text = markupOnly.ReplaceAllString(text, "")
			}
			if strings.ContainsFunc(text, unicode.IsLetter) {
				t.Errorf("%s: %q is written into a page: put it into templates/words/en and say it by its key", at, text)
			}
		}
	})
}

// A translation that is behind its English stops a build, but not somebody who writes the
// English and looks at it under serve. The tables' words stop nobody.
func TestTranslationBehind(t *testing.T) {
	src := inEnglish()
	folder := must(pseudo.Folder(src.Content))
	replace := func(name, old, new string) {
		text := string(folder[name].Data)
		if !strings.Contains(text, old) {
			t.Fatalf("%s does not hold %q", name, old)
		}
		folder[name] = &fstest.MapFile{Data: []byte(strings.Replace(text, old, new, 1))}
	}
	replace("measure/cap.md", "Rust and paint read thick.", "Rust, paint and dirt read thick.\n:::\n\n## More\n\n::: step And so on")
	replace(other+"tables.yaml", "Power take-off shaft ends", "Power take-off shafts")
	src.Content = folder
	_, problems := siteOf(t, src, Options{Language: pseudo.Language})
	found := map[string]diag.Level{}
	for _, p := range problems {
		found[p.Rule+" "+p.Pos.File] = p.Level
	}
	want := map[string]diag.Level{"stale-translation content/measure/cap.md": diag.Error, "other-headings content/measure/cap.md": diag.Error,
		"missing-translation tables/pto-shafts.yaml": diag.Warning, "unused-translation content/" + other + "tables.yaml": diag.Warning}
	if diff := cmp.Diff(want, found); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if out, problems := siteOf(t, src, Options{Language: pseudo.Language, Live: "/_live"}); problems.Blocked() || len(out.Files) == 0 {
		t.Errorf("under serve: %v", problems)
	}
	if _, problems := siteOf(t, src, Options{Language: "fr"}); len(problems) != 1 || !strings.Contains(problems[0].String(), `content: there is no language "fr" [bad-language]`) {
		t.Errorf("got %v", problems)
	}
}

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

// literal is a string as written, or what a sum of strings begins with.
func literal(e ast.Expr) (text string, whole bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, err == nil
	case *ast.BinaryExpr:
		text, _ := literal(e.X)
		return text, false
	}
	return "", false
}
