package driveline_test

import (
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/dop251/goja"
	"pgregory.net/rapid"

	"capspan/static"
)

// mustSpanish is the folder static as it speaks Spanish.
func mustSpanish(t testing.TB) fs.FS {
	t.Helper()
	return static.In(static.FS, os.DirFS("../../content"), "es")
}

// What constants, formulas and limits say for themselves is said in Spanish too, by the very
// text: one that is changed in English loses its Spanish here.
func TestSpanishGroundsAreWhole(t *testing.T) {
	spanish := mustSpanish(t)
	said := map[string]string{}
	for _, name := range static.Calculations {
		bundle, problems := static.Script(spanish, "driveline/speech-"+name+".ts", "it")
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		vm := goja.New()
		v, err := vm.RunString(string(bundle) + "; JSON.stringify(it." + name + ".grounds ?? {})")
		if err != nil {
			t.Fatal(err)
		}
		var own map[string]string
		mustDecode(t, v.String(), &own)
		maps.Copy(said, own)
	}
	places, problems := static.Script(spanish, "driveline/speech-result.ts", "result")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	files, err := fs.Glob(static.FS, "driveline/given-*.ts")
	if err != nil || len(files) < 9 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	wordsOf := regexp.MustCompile(`\b(?:[a-z]{2,}|sin)\b`)
	signs := []string{"cos", "tan", "sqrt", "pi", "rho", "tau", "mu", "sigma", "pp", "fig"}
	for _, file := range files {
		c := mustRun(t, file)
		v, err := c.vm.RunString(`JSON.stringify(` + calculationsName + `)`)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := c.vm.RunString(string(places)); err != nil {
			t.Fatal(err)
		}
		var all any
		mustDecode(t, v.String(), &all)
		walkGrounds(all, path.Base(file), func(at string, g map[string]any) {
			for _, field := range []string{"says", "text", "valid", "at"} {
				text, _ := g[field].(string)
				words := slices.DeleteFunc(wordsOf.FindAllString(text, -1), func(w string) bool { return slices.Contains(signs, w) })
				if len(words) == 0 {
					continue
				}
				if field != "at" {
					if said[text] == "" {
						t.Errorf("%s: %q has no Spanish", at, text)
					}
					continue
				}
				if err := c.vm.Set("text", text); err != nil {
					t.Fatal(err)
				}
				if place, err := c.vm.RunString(`result.placeIn(text, "", true)`); err != nil || place.String() == ", "+text {
					t.Errorf("%s: %q has no Spanish (%v)", at, text, err)
				}
			}
		})
	}
}

// A number in print is read back as the same number, whichever sign it has.
func TestNumbersInPrintGoRound(t *testing.T) {
	machines := map[string]*calculations{}
	for name, fsys := range map[string]fs.FS{"english": static.FS, "spanish": mustSpanish(t)} {
		print, problems := static.Script(fsys, "driveline/print.ts", "print")
		number, more := static.Script(fsys, "driveline/number.ts", "number")
		sign, again := static.Script(fsys, "matcher/speech-number.ts", "sign")
		if problems.Add(append(more, again...)...); len(problems) > 0 {
			t.Fatal(problems)
		}
		c := mustRun(t, "driveline/units.ts")
		for _, script := range [][]byte{print, number, sign} {
			if _, err := c.vm.RunString(string(script)); err != nil {
				t.Fatal(err)
			}
		}
		machines[name] = c
	}
	eval := func(t *rapid.T, c *calculations, expression string, args ...any) string {
		if err := c.vm.Set("a", args); err != nil {
			t.Fatal(err)
		}
		v, err := c.vm.RunString(expression)
		if err != nil {
			t.Fatal(err)
		}
		return v.String()
	}
	rapid.Check(t, func(t *rapid.T) {
		value := float64(rapid.IntRange(-9_999_999, 9_999_999).Draw(t, "thousandths")) / 1000
		digits := rapid.IntRange(0, 4).Draw(t, "digits")
		english := eval(t, machines["english"], "print.number(a[0], a[1])", value, digits)
		spanish := eval(t, machines["spanish"], "print.number(a[0], a[1])", value, digits)
		if strings.Contains(english, ",") || strings.Contains(spanish, ".") || strings.ReplaceAll(spanish, ",", ".") != english {
			t.Fatalf("%v is %q in English and %q in Spanish", value, english, spanish)
		}
		want := eval(t, machines["english"], `number.parseNumber(a[0], "number", "").value`, english)
		for name, c := range machines {
			for _, text := range []string{english, spanish} {
				if got := eval(t, c, `number.parseNumber(a[0], "number", "").value`, text); got != want {
					t.Fatalf("%s reads %q as %s, want %s", name, text, got, want)
				}
			}
			// What a field shows has one meaning only.
			shown := eval(t, c, "sign.fromField(sign.toField(a[0]))", strings.ReplaceAll(english, "−", "-"))
			if got := eval(t, c, `JSON.stringify([number.parseNumber(a[0], "number", "").value, number.parseNumber(a[0], "number", "").thousands])`, shown); got != fmt.Sprintf("[%s,null]", want) {
				t.Fatalf("%s shows %q in a field as %q, which is read as %s, want %s alone", name, english, shown, got, want)
			}
		}
	})
}
