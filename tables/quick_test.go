package tables

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capspan/build/diag"
)

// sameNodes compares what quickParse reads with what the YAML library reads of the same
// file. Where the quick one gives up, nothing is to be compared.
func sameNodes(t interface {
	Helper()
	Fatalf(string, ...any)
}, src []byte) (quick bool) {
	t.Helper()
	got, done, ok := quickParse(src)
	if !ok {
		return false
	}
	defer done()
	list := diag.List{}
	want := (&reader{file: "x.yaml", lim: limits{depth: 100, text: 1 << 20}, list: &list}).parseWhole(src)
	if want == nil || len(list) > 0 {
		t.Fatalf("quickParse reads what the library refuses: %v\n%s", list, src)
	}
	if where := differs(got, want); where != "" {
		t.Fatalf("%s\n%s", where, src)
	}
	return true
}

// differs says where two trees are not the same to the loader, which looks at all this and
// at no tag but those of nothing and of a merged key.
func differs(got, want *node) string {
	special := want.Tag == "!!null" || want.Tag == "!!merge"
	if got.Kind != want.Kind || got.Style != want.Style || got.Value != want.Value || got.Anchor != want.Anchor || special ||
		got.Line != want.Line || got.Column != want.Column || len(got.Content) != len(want.Content) {
		return fmt.Sprintf("got  %+v\nwant %+v", *got, *want)
	}
	for i := range got.Content {
		if where := differs(got.Content[i], want.Content[i]); where != "" {
			return where
		}
	}
	return ""
}

// The files of the chart, and each way of writing that is read quickly or left alone.
func TestQuickParse(t *testing.T) {
	quick := 0
	for name, src := range shippedFiles(t) {
		if sameNodes(t, src) {
			quick++
		} else {
			t.Logf("%s is left to the library", name)
		}
	}
	if quick < 8 {
		t.Errorf("only %d files of the chart are read quickly", quick)
	}
	tests := []struct {
		src   string
		quick bool
	}{
		{"a: b\n", true},
		{"a: b", true},
		{"a:   b   \n\n# c\nd: e\n", true},
		{"a: \"b: c, d\"\n", true},
		{"a: []\n", true},
		{"a: [ ]\nb: c\n", true},
		{"a: [b, \"c\", {d: e, f: [g]}]\n", true},
		{"a: { b: c , d: e }\n", true},
		{"rows:\n  - id: a\n    b: c\n\n  - id: d\n", true},
		{"rows:\n    - id: a\n      b: c\n", true},
		{"a:\n  - b c\n  - d, e\n", true},
		{"a:\n  b:\n    c: d\n  e: f\n", true},
		{"a: 1 3/8\nb: 0.5\nc: 2026-11-25\nd: true\n", true},
		{"a: b\na: c\n", true}, // the walker says what is wrong with that
		{"", false},
		{"# nothing\n", false},
		{" a: b\n", false},
		{"a: b\n c: d\n", false},
		{"a: b\n  c\n", false},
		{"a:\n", false},
		{"a:\nb: c\n", false},
		{"a:\n- b\n", false},
		{"a: ~\n", false},
		{"a: null\n", false},
		{"null: a\n", false},
		{"a: {b: Null}\n", false},
		{"a: b # c\n", false},
		{"a: {b: c} # d\n", false},
		{"a: {b: c}d\n", false},
		{"a: {b: c\n  d: e}\n", false},
		{"a: {b: c,}\n", false},
		{"a: {b}\n", false},
		{"a: {b:c}\n", false},
		{"a: {}\n", false},
		{"a: [b, ]\n", false},
		{"a: [b c: d]\n", false},
		{"a: 'b'\n", false},
		{"a: \"b\\n\"\n", false},
		{"a: \"b\n  c\"\n", false},
		{"a: &b c\n", false},
		{"a: *b\n", false},
		{"a: !!str b\n", false},
		{"<<: b\n", false},
		{"a: |\n  b\n", false},
		{"a: b: c\n", false},
		{"a : b\n", false},
		{"a: é\n", false},
		{"a:\tb\n", false},
		{"a: b\r\n", false},
		{"---\na: b\n", false},
		{"a: b\n---\nc: d\n", false},
		{"a: b\n...\n", false},
		{"- a\n", false},
		{"a:\n  -  b: c\n", false},
		{"a:\n  - - b\n", false},
		{"a:\n  - b: c\n   d: e\n", false},
		{"a: " + strings.Repeat("[", 1000) + "b" + strings.Repeat("]", 1000) + "\n", false},
	}
	for _, tt := range tests {
		if got := sameNodes(t, []byte(tt.src)); got != tt.quick {
			t.Errorf("%q: read quickly: %t", tt.src, got)
		}
	}
}

// Files made by chance of the pieces that matter, right and wrong, and files of the chart
// with a line of another put in, give the same nodes whenever they are read quickly.
func TestQuickParseAgreesWithTheLibrary(t *testing.T) {
	var lines []string
	for _, src := range shippedFiles(t) {
		lines = append(lines, strings.Split(string(src), "\n")...)
	}
	pieces := []string{"a", "b-c", "1 3/8", "0.5", "null", "~", ": ", ":", " ", "  ", "- ", "-", "{", "}", "[", "]", ", ", ",", "\"", "'", "# ", "\n", "\n  ",
		"\n    ", "is: 3", "{is: 3, basis: memory}", "\"x y\"", "<<", "&a ", "*a", "!t ", "|", ">", "%", "@", "=", "?", "? ", "---", "..."}
	quick := 0
	rapid.Check(t, func(t *rapid.T) {
		var src string
		if rapid.Bool().Draw(t, "lines") {
			at := rapid.IntRange(0, len(lines)-1).Draw(t, "at")
			part := append([]string{}, lines[at:min(len(lines), at+rapid.IntRange(1, 12).Draw(t, "n"))]...)
			part[rapid.IntRange(0, len(part)-1).Draw(t, "where")] = rapid.SampledFrom(lines).Draw(t, "line")
			src = "a:\n" + strings.Join(part, "\n") + "\n"
		} else {
			src = "a: " + strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 1, 14).Draw(t, "pieces"), "")
		}
		if sameNodes(t, []byte(src)) {
			quick++
		}
	})
	if quick < 5 {
		t.Errorf("only %d files of those made by chance were read quickly", quick)
	}
}

func FuzzQuickParse(f *testing.F) {
	for _, src := range []string{"a: b\n", "rows:\n  - id: a\n    b: {is: 1, basis: memory, others: [{is: \"2\"}]}\n    c: [d, e]\n", "a:\n  b: c # d\n", "a: {b: [c]\n"} {
		f.Add([]byte(src))
	}
	f.Fuzz(func(t *testing.T, src []byte) { sameNodes(t, src) })
}
