package diag_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/build/diag"
)

func at(file string, line, col int) diag.Pos { return diag.Pos{File: file, Line: line, Col: col} }

// The form every contributor reads: place, path, fact, rule, then hints and notes.
func TestProblemString(t *testing.T) {
	for _, test := range []struct {
		name string
		p    diag.Problem
		want string
	}{
		{"whole", diag.Problem{Pos: at("tables/a.yaml", 41, 14), Path: "a/1310.cap", Fact: "10.62 in is outside 0.3..4 in", Rule: "implausible",
			Hints: []string{"1.062 would fit"}, Notes: []diag.Note{{Text: "first defined at", Pos: at("tables/b.yaml", 3, 1)}}},
			"tables/a.yaml:41:14: a/1310.cap: 10.62 in is outside 0.3..4 in [implausible]\n    hint: 1.062 would fit\n    note: first defined at tables/b.yaml:3:1"},
		{"no column", diag.Problem{Pos: at("a", 2, 0), Fact: "f", Rule: "r"}, "a:2: f [r]"},
		{"the file", diag.Problem{Pos: at("a", 0, 0), Fact: "f", Rule: "r", Level: diag.Warning}, "a: warning: f [r]"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, test.p.String()); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestListSortsByPlaceThenText(t *testing.T) {
	l := diag.List{
		{Pos: at("b", 1, 1), Rule: "x"}, {Pos: at("a", 10, 1), Rule: "x"}, {Pos: at("a", 9, 2), Rule: "y"},
		{Pos: at("a", 9, 2), Rule: "x"}, {Pos: at("a", 9, 1), Rule: "z"},
	}
	l.Sort()
	var got []string
	for _, p := range l {
		got = append(got, p.Pos.String()+" "+p.Rule)
	}
	if diff := cmp.Diff([]string{"a:9:1 z", "a:9:2 x", "a:9:2 y", "a:10:1 x", "b:1:1 x"}, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestListCounts(t *testing.T) {
	warning := diag.Problem{Level: diag.Warning}
	for _, test := range []struct {
		list    diag.List
		blocked bool
		want    string
	}{
		{nil, false, "no problems"},
		{diag.List{{}}, true, "1 error"},
		{diag.List{warning, warning}, false, "2 warnings"},
		{diag.List{{}, {}, warning}, true, "2 errors, 1 warning"},
	} {
		if got := test.list.Summary(); got != test.want || test.list.Blocked() != test.blocked {
			t.Errorf("%q, blocked %v; want %q, %v", got, test.list.Blocked(), test.want, test.blocked)
		}
	}
}

func TestListAsJSONAndText(t *testing.T) {
	l := diag.List{{Pos: at("a", 1, 2), Fact: "f", Rule: "r"}, {Pos: at("b", 0, 0), Fact: "g", Rule: "s", Level: diag.Warning}}
	got, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	want := `[{"pos":{"file":"a","line":1,"col":2},"fact":"f","rule":"r","level":"error"},{"pos":{"file":"b"},"fact":"g","rule":"s","level":"warning"}]`
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Errorf("JSON (-want +got):\n%s", diff)
	}
	var text strings.Builder
	if err := l.Print(&text); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff("a:1:2: f [r]\nb: warning: g [s]\n", text.String()); diff != "" {
		t.Errorf("text (-want +got):\n%s", diff)
	}
}
