package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"capspan/build/diag"
	"capspan/templates"
	"capspan/templates/words"
)

func english(t *testing.T) *words.Catalogue {
	t.Helper()
	catalogue, problems := words.Load(templates.FS, nil, words.English)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return catalogue
}

// What the command says is in the catalogue, with the values it gives, and nothing of its
// part there is said by nobody.
func TestCommandWords(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var uses []words.Use
	fset := token.NewFileSet()
	for _, name := range files {
		file, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			if method, ok := call.Fun.(*ast.SelectorExpr); !ok || method.Sel.Name != "word" {
				return true
			}
			key, err := text(call.Args[0])
			if err != nil {
				return true // of a verdict or a quantity: those below
			}
			at := fset.Position(call.Pos())
			use := words.Use{Key: "command." + key, Pos: diag.Pos{File: at.Filename, Line: at.Line}}
			for i := 1; i < len(call.Args); i += 2 {
				value, err := text(call.Args[i])
				if err != nil {
					t.Errorf("%s: a value has no name", at)
				}
				use.Names = append(use.Names, value)
			}
			uses = append(uses, use)
			return true
		})
	}
	if len(uses) < 40 {
		t.Errorf("only %d calls were found", len(uses))
	}
	for _, key := range []string{"identified", "possible", "between", "not-in-chart", "measure-again", "cap", "across", "clip",
		"met-within", "met-above", "met-below", "met-not-known"} {
		uses = append(uses, words.Use{Key: "command." + key})
	}
	for _, p := range english(t).Check(uses) {
		if strings.HasPrefix(p.Path, "command.") {
			t.Error(p)
		}
	}
}

func text(e ast.Expr) (string, error) {
	literal, ok := e.(*ast.BasicLit)
	if !ok {
		return "", strconv.ErrSyntax
	}
	return strconv.Unquote(literal.Value)
}

// A language with another decimal mark has it between digits, and nowhere else.
func TestNumberInLanguage(t *testing.T) {
	p := &printer{words: english(t)}
	if got := p.number("30.2 mm"); got != "30.2 mm" {
		t.Errorf("got %q", got)
	}
}
