package matcher

import (
	"encoding/json"
	"testing"

	"capspan/static"
)

// mustCore loads the core with an empty chart, for tests of its functions by themselves.
func mustCore(t testing.TB) *Matcher {
	t.Helper()
	bundle, problems := static.Core(static.FS)
	if len(problems) > 0 {
		t.Fatalf("bundle the core: %v", problems)
	}
	m, err := New(bundle, Chart{Format: 1, Version: "test", Rows: []ChartRow{}})
	if err != nil {
		t.Fatal(err)
	}
	// Parts of the core that the browser finds in other scripts, or in none by themselves.
	for source, global := range map[string]string{"matcher/request.ts": "request", "matcher/gum.ts": "gum", "matcher/birge.ts": "birge"} {
		part, problems := static.Script(static.FS, source, global)
		if len(problems) > 0 {
			t.Fatalf("bundle %s: %v", source, problems)
		}
		if _, err := m.vm.RunScript(source, string(part)); err != nil {
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
