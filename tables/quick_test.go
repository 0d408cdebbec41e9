package tables

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"go.yaml.in/yaml/v4"
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
	got, ok := quickParse(src)
	byRow, also := nodesByRow(src)
	if also && !ok {
		t.Fatalf("what is read row by row is not read at once\n%s", src)
	}
	if !ok {
		return false
	}
	list := diag.List{}
	want := (&reader{file: "x.yaml", lim: limits{depth: 100, text: 1 << 20}, list: &list}).parseWhole(src)
	if want == nil || len(list) > 0 {
		t.Fatalf("quickParse reads what the library refuses: %v\n%s", list, src)
	}
	if where := differs(got, want); where != "" {
		t.Fatalf("%s\n%s", where, src)
	}
	rows, last := 0, got.Content[len(got.Content)-1]
	for i := 0; i < len(got.Content); i += 2 {
		if got.Content[i].Value == rowsKey {
			rows++
		}
	}
	if rows == 1 && got.Content[len(got.Content)-2].Value == rowsKey && last.Kind == yaml.SequenceNode && last.Style == 0 && !also {
		t.Fatalf("rows are not read one by one\n%s", src)
	}
	if also {
		if where := differs(byRow, want); where != "" {
			t.Fatalf("row by row: %s\n%s", where, src)
		}
	}
	return true
}

// nodesByRow puts together again what is read row by row; ok is false where there are no such
// rows, or it came to no end.
func nodesByRow(src []byte) (root *node, ok bool) {
	q := quickReaderOf(src, 0)
	if q == nil {
		return nil, false
	}
	rows := &quickRows{q: q, depth: 100}
	q.rows = rows
	if !q.try(func() { root = q.whole() }) || rows.list == nil {
		return nil, false
	}
	for _, row := range rows.all {
		rows.list.Content = append(rows.list.Content, copied(row))
	}
	return root, q.ended && !rows.stuck
}

func copied(n *node) *node {
	out := *n
	out.Content = nil
	for _, c := range n.Content {
		out.Content = append(out.Content, copied(c))
	}
	return &out
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
		{"rows:\n  - id: a\n  - id: b\nz: c\n", true},
		{"rows:\n  - a\n  - {b: c}\n", true},
		{"rows:\n  - id: a\n b: c\n", false},
		{"rows:\n  - id: a\n    - b\n", false},
		{"rows:\n  b: c\n", true},
		{"rows:\n- id: a\n", false},
		{"rows:\n", false},
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
			src = rapid.SampledFrom([]string{"a", rowsKey}).Draw(t, "key") + ":\n" + strings.Join(part, "\n") + "\n"
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
	for _, src := range []string{"a: b\n", "a: b\nrows:\n  - id: c\n\n  - id: d\n    e: [f]\n", "rows:\n  - id: a\n    b: {is: 1, basis: memory, others: [{is: \"2\"}]}\n    c: [d, e]\n", "a:\n  b: c # d\n", "a: {b: [c]\n"} {
		f.Add([]byte(src))
	}
	f.Fuzz(func(t *testing.T, src []byte) { sameNodes(t, src) })
}

// A table read row by row gives the chart and the problems that the library's nodes give,
// wherever the reading has to begin again.
func TestRowByRow(t *testing.T) {
	head := "table: t\ntitle: T\nabout: About it.\nversion: 1.0.0\ndate: 2026-11-25\nunit: mm\ncolumns:\n" +
		"  length: {label: Length, kind: length, least: 1, greatest: 9}\n"
	row := func(id, is string) string { return "  - id: " + id + "\n    length: {is: " + is + ", basis: memory}\n" }
	tests := map[string]string{
		"well":                      head + "rows:\n" + row("a", "1") + row("b", "2"),
		"a row with a problem":      head + "rows:\n" + row("a", "100") + row("b", "2"),
		"odd behind a problem":      head + "rows:\n" + row("a", "100") + row("b", "'2'"),
		"odd behind an id":          head + "rows:\n" + row("a", "1") + "  - id: b\n    length: 'odd'\n",
		"rows before the rest":      "rows:\n" + row("a", "100") + head,
		"rows twice":                head + "rows:\n" + row("a", "100") + "rows:\n" + row("b", "2"),
		"rows that are a word":      head + "rows: none\nrows:\n" + row("a", "100"),
		"rows that nobody reads":    head + "rows: none\nrows:\n" + row("a", "1}}"),
		"rows that are no list":     head + "rows:\n  a: b\n",
		"rows of nothing":           head + "rows: []\n",
		"a row too deep":            head + "rows:\n" + row("a", "100") + row("b", "[[[[[[2]]]]]]"),
		"a head too deep":           "cautions: [[[[[[[[a]]]]]]]]\n" + head + "rows:\n" + row("a", "1"),
		"a row that is a word":      head + "rows:\n  - word\n" + row("a", "1"),
		"a row further in":          head + "rows:\n" + row("a", "1") + "   - id: b\n",
		"a key behind, less far in": head + "rows:\n" + row("a", "100") + " more: b\n",
	}
	for name, text := range tests {
		for _, ending := range []string{"", "# plain\n"} {
			quick, found := Load(fstest.MapFS{"t.yaml": {Data: []byte(text + ending)}})
			whole, said := Load(fstest.MapFS{"t.yaml": {Data: []byte(text + "# é\n")}}) // which the library reads
			if !reflect.DeepEqual(found, said) {
				t.Errorf("%s: the problems are\n%v\nwant\n%v", name, found, said)
			}
			if len(found) == 0 && (quick.Version() != whole.Version() || len(quick.Tables[0].Rows) != len(whole.Tables[0].Rows)) {
				t.Errorf("%s: %d rows, version %v, want %v", name, len(quick.Tables[0].Rows), quick.Version(), whole.Version())
			}
		}
	}
}
