package build

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"go.yaml.in/yaml/v4"

	"capspan/static"
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
		if !called[key] && !ofGroup && !strings.HasPrefix(key, "tool.") { // choices says those
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

// A second language is a folder of words and no code. Its words are made here of the
// English ones, in brackets; what a reader is told outside them came past the catalogue.
func TestSecondLanguage(t *testing.T) {
	src := Embedded()
	for _, folder := range []*fs.FS{&src.Templates, &src.Static} {
		dir := t.TempDir()
		if err := os.CopyFS(dir, *folder); err != nil {
			t.Fatal(err)
		}
		*folder = os.DirFS(dir)
		switch folder {
		case &src.Templates:
			bracketed(t, filepath.Join(dir, "words"))
		case &src.Static:
			if err := os.CopyFS(filepath.Join(dir, "words", "eo"), must(fs.Sub(static.FS, "words/en"))); err != nil {
				t.Fatal(err)
			}
			send := filepath.Join(dir, "words", "eo", "send.ts")
			text := strings.Replace(string(must(os.ReadFile(send))), "Please measure a joint", "Bonvolu mezuri", 1)
			if err := os.WriteFile(send, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	out, problems := Site(src, Options{Language: "eo"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	made, problems := Book(src, BookOptions{Language: "eo"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, want := range []string{`<html lang="eo"`, ">[The guide]<", " [(page 000)]<", "@bottom-left{content:\"[Capspan, chart "} {
		if !strings.Contains(string(made.HTML(nil)), want) {
			t.Errorf("the book lacks %q", want)
		}
	}
	files := contents(out)
	for path, want := range map[string][]string{
		"index.html":                   {`lang="eo"`, ">[Chart]</a>", `aria-label="[Main]"`, "[A joint and a caliper]", "] in ["},
		"joint/1310/index.html":        {"[clip outside]", `basis--common-practice">[common practice]`, `aria-label="[Title block]"`},
		"chart/joints-inch/index.html": {"[Find a row: a word, or a size]", "[over the caps]"},
		"measure/cap/index.html":       {`[The joint is with somebody else? <a href="/send/#take=cap">Send them a link</a> that leads them through it.]`},
		"identify/index.html":          {`placeholder="[next reading]"`, "[Digital caliper]", "[groove to groove]"},
		"site.webmanifest":             {`"lang": "eo"`, "[Capspan, a chart of joint sizes]"},
	} {
		for _, w := range want {
			if !strings.Contains(string(files[path]), w) {
				t.Errorf("%s lacks %q", path, w)
			}
		}
	}
	for path, content := range files {
		if strings.HasPrefix(path, "assets/send.") && !strings.Contains(string(content), "Bonvolu mezuri") {
			t.Errorf("%s speaks another language", path)
		}
	}
}

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

// bracketed writes a language whose words are the English ones in brackets.
func bracketed(t *testing.T, folder string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "en", "*.yaml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files of words: %v", len(files), err)
	}
	if err := os.Mkdir(filepath.Join(folder, "eo"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		var english yaml.Node
		if err := yaml.Unmarshal(must(os.ReadFile(name)), &english); err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for i, n := range english.Content[0].Content {
			switch {
			case i%2 == 0:
				fmt.Fprintf(&b, "%s: ", n.Value)
			case n.Kind == yaml.ScalarNode:
				fmt.Fprintf(&b, "{of: %q, is: %q}\n", n.Value, "["+n.Value+"]")
			default:
				var parts, forms []string
				for j := 0; j < len(n.Content); j += 2 {
					category, said := n.Content[j].Value, n.Content[j+1].Value
					parts = append(parts, category, said)
					forms = append(forms, fmt.Sprintf("%s: %q", category, "["+said+"]"))
				}
				fmt.Fprintf(&b, "{of: %q, is: {%s}}\n", strings.Join(parts, " "), strings.Join(forms, ", "))
			}
		}
		if err := os.WriteFile(filepath.Join(folder, "eo", filepath.Base(name)), []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
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
