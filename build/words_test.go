package build

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"capspan/templates"
	catalogue "capspan/templates/words"
)

// english is a site that knows its words and nothing else.
var english = func() *site {
	words, problems := catalogue.Load(templates.FS, catalogue.English)
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
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	called, begun := map[string]bool{}, []string{}
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
			call, ok := n.(*ast.CallExpr)
			if !ok || len(call.Args) == 0 {
				return true
			}
			if method, ok := call.Fun.(*ast.SelectorExpr); !ok || method.Sel.Name != "word" {
				return true
			}
			at := fset.Position(call.Pos())
			key, whole := literal(call.Args[0])
			if key == "" {
				t.Errorf("%s: the key does not begin with a literal", at)
				return true
			}
			var names []string
			for i := 1; i < len(call.Args); i += 2 {
				name, _ := literal(call.Args[i])
				names = append(names, name)
			}
			if !whole {
				begun = append(begun, key)
				return true
			}
			called[key] = true
			if got, known := listed[key]; !known || got != strings.Join(names, " ") {
				t.Errorf("%s: %s is said with %q and listed with %q", at, key, names, got)
			}
			return true
		})
	}
	if len(called) < 50 {
		t.Errorf("only %d calls were found", len(called))
	}
	for key := range listed {
		ofGroup := slices.ContainsFunc(begun, func(b string) bool { return strings.HasPrefix(key, b) })
		if !called[key] && !ofGroup && !strings.HasPrefix(key, "tool.") { // choices says those
			t.Errorf("%s is listed and nobody says it", key)
		}
	}
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
