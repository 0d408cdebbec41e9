package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/dop251/goja"

	"capspan/build"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// simulated is how many sets a column of these tests has; the whole bench has two thousand
// times as many (go run ./static/matcher/truth).
const simulated = 100

// simulate runs columns inside the Go program: slower than node, but nothing is needed.
func simulate(t *testing.T, chart matcher.Chart, ids ...string) map[string]tally {
	t.Helper()
	b := loaded(t)
	vm := goja.New()
	for _, text := range []string{string(b.core), string(b.simulator)} {
		if _, err := vm.RunString(text); err != nil {
			t.Fatal(err)
		}
	}
	if err := vm.Set("chartText", mustJSON(t, chart)); err != nil {
		t.Fatal(err)
	}
	if _, err := vm.RunString("const chart = JSON.parse(chartText)"); err != nil {
		t.Fatal(err)
	}
	out := map[string]tally{}
	for _, id := range ids {
		var r result
		v, err := vm.RunString(fmt.Sprintf("JSON.stringify(%s.run(%s.identify, chart, %s))", simulatorName, static.CoreName,
			mustJSON(t, job{Column: id, Seed: 1, To: simulated})))
		if err != nil {
			t.Fatalf("column %s: %v", id, err)
		}
		fromJSON(t, v.String(), &r)
		if r.Tally["sets"] < simulated/2 {
			t.Fatalf("column %s: %v sets were measured, want about %d", id, r.Tally["sets"], simulated)
		}
		out[id] = r.Tally
	}
	return out
}

// What the bench of truth is for, in small: nothing is named outright that is something
// else, what can be named is, and a slip is called by its name. The nearest-row rule
// names every joint that is in no row.
func TestTruthInSmall(t *testing.T) {
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	exact := []string{"millimetres-for-inches", "inches-for-millimetres", "cap-across-exchanged"}
	found := simulate(t, build.Chart(set), append([]string{"listed", "settled", "rule", "no-row", "no-row-edge"}, exact...)...)
	percent := func(id, name string) float64 { return share(found[id][name], found[id]["sets"]) }
	for id := range found {
		if n := found[id]["identified wrong"]; n != 0 {
			t.Errorf("column %s: %v sets are named outright and are something else, want none", id, n)
		}
	}
	// 97 % is the figure; of so few sets a share is known to about 1.7 points.
	if got := percent("settled", "identified right"); got < 94 {
		t.Errorf("settled joints named outright: %.1f %%, want 97 and in so few sets at least 94", got)
	}
	if got := found["rule"]["identified right"]; got != 0 {
		t.Errorf("a steel rule names %v joints outright that have another size within its reach, want none", got)
	}
	for _, id := range exact {
		if got := percent(id, "slip named"); got < 95 {
			t.Errorf("slip %s is called by its name in %.1f %%, want 98 and in so few sets at least 95", id, got)
		}
	}
	if got := percent("settled", "slip offered"); got > 0.7 {
		t.Errorf("a slip is offered on good readings in %.1f %%, want at most 0.5, which is no set of these", got)
	}
	if got := percent("no-row", "peer wrong"); got != 100 {
		t.Errorf("the nearest-row rule names %.1f %% of joints in no row, want all: it always names one", got)
	}
}

// Equal flags print equal figures, in however many parts the work is shared.
func TestPartsAddUp(t *testing.T) {
	first := denseChart(300, 7)
	if second := denseChart(300, 7); mustJSON(t, first) != mustJSON(t, second) {
		t.Error("the dense chart differs from one making to the next")
	}
	text := mustJSON(t, first)
	if other := mustJSON(t, denseChart(300, 8)); text == other {
		t.Error("the dense chart is the same for another seed")
	}
	twins := map[int]int{}
	for _, row := range first.Rows {
		twins[row.Size]++
	}
	if len(twins) == len(first.Rows) {
		t.Error("the dense chart has no twins")
	}
	b := loaded(t)
	whole := questionsOf(t, b, text, job{Column: "listed", Seed: 1, To: 6})
	parts := strings.TrimSuffix(questionsOf(t, b, text, job{Column: "listed", Seed: 1, To: 2}), "]") + "," +
		strings.TrimPrefix(questionsOf(t, b, text, job{Column: "listed", Seed: 1, From: 2, To: 6}), "[")
	if whole != parts {
		t.Errorf("six sets in one part and in two differ:\n%s\n%s", whole, parts)
	}
}
