package driveline_test

import (
	"encoding/json"
	"io/fs"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/dop251/goja"

	"capspan/static"
)

// calculations are the functions of index.ts in a machine of their own.
type calculations struct {
	vm *goja.Runtime
}

const calculationsName = "CapspanCalculations"

// in is an input as a page hands it over: numbers in SI, words, lists.
type in map[string]any

// complaint mirrors types.ts.
type complaint struct {
	Input, Wrong, Remedy, Unit, Beside string
	Bound                              *float64
}

func mustCalculate(t testing.TB) *calculations {
	t.Helper()
	return mustRun(t, "driveline/index.ts")
}

// mustRun loads one source of package static with its exports under calculationsName.
func mustRun(t testing.TB, source string) *calculations {
	t.Helper()
	bundle, problems := static.Script(static.FS, source, calculationsName)
	if len(problems) > 0 {
		t.Fatalf("bundle %s: %v", source, problems)
	}
	vm := goja.New()
	if _, err := vm.RunScript(source, string(bundle)); err != nil {
		t.Fatalf("load %s: %v", source, err)
	}
	return &calculations{vm: vm}
}

// failer is a test, or a check of package rapid.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// ask calls a function and returns what came out as JSON. The input is handed over as a value,
// not as JSON, so that NaN and infinity reach it too.
func (c *calculations) ask(t failer, name string, input any) string {
	t.Helper()
	if err := c.vm.Set("asked", plain(input)); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	v, err := c.vm.RunString(`JSON.stringify(` + calculationsName + `.` + name + `(asked), (k, x) => {
		if (typeof x === "number" && !Number.isFinite(x)) throw new Error(k + " is " + x);
		return x;
	})`)
	if err != nil {
		t.Fatalf("%s of %+v: %v", name, input, err)
	}
	return v.String()
}

// plain turns lists of Go into arrays of the machine's own.
func plain(x any) any {
	switch x := x.(type) {
	case in:
		out := map[string]any{}
		for k, v := range x {
			out[k] = plain(v)
		}
		return out
	case []in:
		out := make([]any, len(x))
		for i, v := range x {
			out[i] = plain(v)
		}
		return out
	case []float64:
		out := make([]any, len(x))
		for i, v := range x {
			out[i] = v
		}
		return out
	case []any:
		out := make([]any, len(x))
		for i, v := range x {
			out[i] = plain(v)
		}
		return out
	}
	return x
}

// run calls a function that must give a result, and decodes it.
func (c *calculations) run(t failer, out any, name string, input any) {
	t.Helper()
	var outcome struct {
		OK         bool
		Result     json.RawMessage
		Complaints []complaint
		Formulas   []struct{ ID, Text, Valid, Basis, Source string }
	}
	text := c.ask(t, name, input)
	if err := json.Unmarshal([]byte(text), &outcome); err != nil {
		t.Fatalf("%s of %+v gives %s: %v", name, input, text, err)
	}
	if !outcome.OK {
		t.Fatalf("%s of %+v complains: %+v", name, input, outcome.Complaints)
	}
	if err := json.Unmarshal(outcome.Result, out); err != nil {
		t.Fatalf("%s of %+v gives %s: %v", name, input, outcome.Result, err)
	}
}

// number is one number of a result: "speed", "joints.0.angle".
func (c *calculations) number(t failer, name string, input any, path string) float64 {
	t.Helper()
	var result any
	c.run(t, &result, name, input)
	for _, key := range strings.Split(path, ".") {
		switch r := result.(type) {
		case map[string]any:
			result = r[key]
		case []any:
			result = r[int(key[0]-'0')]
		}
	}
	x, ok := result.(float64)
	if !ok {
		t.Fatalf("%s of %+v: %s is %v, no number", name, input, path, result)
	}
	return x
}

// complaints of a function that must refuse.
func (c *calculations) complaints(t failer, name string, input any) []complaint {
	t.Helper()
	var outcome struct {
		OK         bool
		Complaints []complaint
	}
	text := c.ask(t, name, input)
	if err := json.Unmarshal([]byte(text), &outcome); err != nil || outcome.OK || len(outcome.Complaints) == 0 {
		t.Fatalf("%s of %+v gives %s, want complaints (%v)", name, input, text, err)
	}
	return outcome.Complaints
}

// sourceOf is the file a function is exported from, by index.ts.
func sourceOf(t testing.TB, name string) string {
	t.Helper()
	text, err := fs.ReadFile(static.FS, "driveline/index.ts")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile(`export \{([^}]*)\} from "\./([a-z-]+)"`).FindAllStringSubmatch(string(text), -1) {
		for _, word := range strings.Split(m[1], ",") {
			if strings.TrimSpace(word) == name {
				return "driveline/" + m[2] + ".ts"
			}
		}
	}
	t.Fatalf("index.ts does not export %s", name)
	return ""
}

func mustDecode(t testing.TB, text string, out any) {
	t.Helper()
	if err := json.Unmarshal([]byte(text), out); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
}

// Units of the tests, by their definitions and not by units.ts.
const (
	degree = math.Pi / 180
	rpm    = 2 * math.Pi / 60
	inch   = 0.0254
	lbf    = 0.45359237 * 9.80665
	lbfFt  = lbf * 12 * inch
	lbfIn  = lbf * inch
	psi    = lbf / (inch * inch)
	hour   = 3600.0
	mm     = 0.001
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, within)
	}
}

// level is an attitude read with a level, from degrees.
func level(side, plan float64) in {
	return in{"side": side * degree, "plan": plan * degree, "read": "level"}
}
