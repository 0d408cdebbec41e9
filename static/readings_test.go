package static_test

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/dop251/goja"

	"capspan/static"
)

// A comma stands before decimals or between readings, never both ways: what could be either
// is left whole, so that the core asks which is meant.
func TestSplitReadings(t *testing.T) {
	bundle, problems := static.Script(static.FS, "parts/identify/state.ts", "state")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	reading, more := static.Script(static.FS, "matcher/reading.ts", "reading")
	if more.Blocked() {
		t.Fatal(more)
	}
	vm := goja.New()
	for _, script := range [][]byte{bundle, reading} {
		if _, err := vm.RunString(string(script)); err != nil {
			t.Fatal(err)
		}
	}
	for text, want := range map[string][]string{
		"27,28":          {"27,28"},
		"27,28 mm":       {"27,28 mm"},
		"1,062":          {"1,062"},
		"1,062 in":       {"1,062 in"},
		"27,5, 28,1":     {"27,5", "28,1"},
		"27,5; 28,1":     {"27,5", "28,1"},
		"27,5\n28,1":     {"27,5", "28,1"},
		"1.187, 1.188":   {"1.187", "1.188"},
		"1.187,1.188":    {"1.187", "1.188"},
		"1.187 in,1.188": {"1.187 in", "1.188"},
		"27.5,28":        {"27.5,28"},   // two readings, or a slip of the finger
		"1,062.5":        {"1,062.5"},   // thousands, or two readings
		"27,5,28,1":      {"27,5,28,1"}, // two readings, or three
	} {
		if err := vm.Set("text", text); err != nil {
			t.Fatal(err)
		}
		v, err := vm.RunString(`JSON.stringify([state.splitReadings(text), state.splitReadings(text).map((one) => reading.parseReading(one, "mm").ok)])`)
		if err != nil {
			t.Fatal(err)
		}
		var got [2]json.RawMessage
		var parts []string
		var ok []bool
		if json.Unmarshal([]byte(v.String()), &got) != nil || json.Unmarshal(got[0], &parts) != nil || json.Unmarshal(got[1], &ok) != nil {
			t.Fatal(v)
		}
		if !slices.Equal(parts, want) {
			t.Errorf("%q is split into %q, want %q", text, parts, want)
		}
		asks := text == "27.5,28" || text == "1,062.5" || text == "27,5,28,1"
		if slices.Contains(ok, false) != asks {
			t.Errorf("%q: understood %v", text, ok)
		}
	}
}
