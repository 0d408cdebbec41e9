package matcher

import (
	"encoding/json"
	"sync"
	"testing"

	"github.com/dop251/goja"

	"capspan/build/diag"
	"capspan/static"
)

// coreScripts are the core, and parts of it that the browser finds in other scripts, or in
// none by themselves; compiled once for all tests.
var coreScripts = sync.OnceValues(func() ([]*goja.Program, diag.List) {
	var list []*goja.Program
	add := func(name string, script []byte, problems diag.List) diag.List {
		if len(problems) > 0 {
			return problems
		}
		list = append(list, goja.MustCompile(name, string(script), false))
		return nil
	}
	core, problems := static.Core(static.FS)
	problems = add("matcher.js", core, problems)
	for source, global := range map[string]string{"matcher/request.ts": "request", "matcher/gum.ts": "gum", "matcher/birge.ts": "birge"} {
		part, found := static.Script(static.FS, source, global)
		problems.Add(add(source, part, found)...)
	}
	return list, problems
})

// mustCore loads the core with an empty chart, for tests of its functions by themselves.
func mustCore(t testing.TB) *Matcher {
	t.Helper()
	scripts, problems := coreScripts()
	if len(problems) > 0 {
		t.Fatalf("bundle the core: %v", problems)
	}
	m, err := NewOf(scripts[0], Chart{Format: 1, Version: "test", Rows: []ChartRow{}})
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range scripts[1:] {
		if _, err := m.vm.RunProgram(part); err != nil {
			t.Fatal(err)
		}
	}
	return m
}

// run evaluates an expression over the core, named core, and the arguments, named a,
// and decodes what comes out.
func (m *Matcher) run(t testing.TB, out any, expression string, args ...any) {
	t.Helper()
	if err := m.vm.Set("a", args); err != nil {
		t.Fatal(err)
	}
	v, err := m.vm.RunString("JSON.stringify((core => " + expression + ")(" + static.CoreName + "))")
	if err != nil {
		t.Fatalf("%s of %v: %v", expression, args, err)
	}
	if err := json.Unmarshal([]byte(v.String()), out); err != nil {
		t.Fatalf("%s of %v gives %s: %v", expression, args, v, err)
	}
}

func (m *Matcher) number(t testing.TB, expression string, args ...any) float64 {
	t.Helper()
	var x float64
	m.run(t, &x, expression, args...)
	return x
}
