package matcher_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// partAround draws a query of readings near a row of a table.
func partAround(t *rapid.T, table matcher.PartTable) matcher.PartQuery {
	row := rapid.SampledFrom(table.Rows).Draw(t, "row")
	q := matcher.PartQuery{Table: table.ID, Values: map[string][]string{}, Edges: "same",
		Tool:      rapid.SampledFrom(matcher.Tools).Draw(t, "tool"),
		Condition: rapid.SampledFrom(matcher.Conditions).Draw(t, "condition")}
	holes := 0.0
	for _, c := range table.Columns {
		figure, given := row.Values[c.ID].(matcher.PartFigure)
		if !given || (c.Match != "exact" && rapid.IntRange(0, 3).Draw(t, "skip") == 0) {
			continue
		}
		is := number(t, figure.Is)
		if c.Match == "exact" {
			holes = is + float64(max(0, rapid.IntRange(-8, 1).Draw(t, "miscount")))
			q.Values[c.ID] = []string{fmt.Sprint(holes)}
			continue
		}
		if c.Match == "circle" {
			if holes = float64(holesOf(row, table)); holes == 0 {
				continue
			}
			is *= math.Sin(math.Pi / holes)
		}
		for range rapid.IntRange(1, 3).Draw(t, "readings") {
			off := rapid.IntRange(-150, 100).Draw(t, "hundredths")
			if rapid.Bool().Draw(t, "good") {
				off /= 25
			}
			if rapid.Bool().Draw(t, "inches") {
				q.Values[c.ID] = append(q.Values[c.ID], fmt.Sprintf("%.4f in", (is+float64(off)/100)/25.4))
			} else {
				q.Values[c.ID] = append(q.Values[c.ID], fmt.Sprintf("%.2f mm", is+float64(off)/100))
			}
		}
	}
	return q
}

func holesOf(row matcher.PartRow, table matcher.PartTable) int {
	for _, c := range table.Columns {
		if figure, given := row.Values[c.ID].(matcher.PartFigure); given && c.Match == "exact" {
			var n int
			fmt.Sscan(figure.Is, &n)
			return n
		}
	}
	return 0
}

// Whatever is asked: the order of rows changes nothing, nor does a row far away, nor the
// order of readings, and the same query gives the same answer.
func TestPartProperties(t *testing.T) {
	p, all := mustParts(t), partTables(t)
	rapid.Check(t, func(rt *rapid.T) {
		table := all[rapid.SampledFrom(slices.Sorted(mapKeys(all))).Draw(rt, "table")]
		q := partAround(rt, table)
		want := askPart(rt, p, table, q)
		checkPartHonest(rt, want)

		shuffled := table
		shuffled.Rows = rapid.Permutation(table.Rows).Draw(rt, "order")
		same(rt, "rows in another order", askPart(rt, p, shuffled, q), want)

		far := table
		far.Rows = append(slices.Clone(table.Rows), farRow(table))
		if got := askPart(rt, p, far, q); got.Verdict != want.Verdict || !slices.Equal(foundNames(got.Rows), foundNames(want.Rows)) {
			rt.Errorf("with a row far away: %s %q, without %s %q", got.Verdict, foundNames(got.Rows), want.Verdict, foundNames(want.Rows))
		}

		turned := q
		turned.Values = map[string][]string{}
		for column, list := range q.Values {
			turned.Values[column] = slices.Clone(list)
			slices.Reverse(turned.Values[column])
		}
		got := askPart(rt, p, table, turned)
		if got.Verdict != want.Verdict || !slices.Equal(foundNames(got.Rows), foundNames(want.Rows)) {
			rt.Errorf("readings in another order: %s %q, before %s %q", got.Verdict, foundNames(got.Rows), want.Verdict, foundNames(want.Rows))
		}
	})
}

// The same lengths in the other unit, with digits enough, lead to the same verdict.
func TestPartUnits(t *testing.T) {
	p, all := mustParts(t), partTables(t)
	rapid.Check(t, func(rt *rapid.T) {
		table := all[rapid.SampledFrom(slices.Sorted(mapKeys(all))).Draw(rt, "table")]
		q := partAround(rt, table)
		other := q
		other.Values = map[string][]string{}
		for column, list := range q.Values {
			for _, text := range list {
				var x float64
				var unit string
				if n, _ := fmt.Sscan(text, &x, &unit); n == 2 && unit == "mm" {
					text = fmt.Sprintf("%.8f in", x/25.4)
				}
				other.Values[column] = append(other.Values[column], text)
			}
		}
		// The last digit read is a line of the budget: give the first as fine a one.
		for column, list := range q.Values {
			for i, text := range list {
				if number, mm := strings.CutSuffix(text, " mm"); mm {
					q.Values[column][i] = number + "000000 mm"
				}
			}
		}
		a, b := askPart(rt, p, table, q), askPart(rt, p, table, other)
		if a.Verdict != b.Verdict || !slices.Equal(foundNames(a.Rows), foundNames(b.Rows)) {
			rt.Errorf("%v: %s %q\n%v: %s %q", q.Values, a.Verdict, foundNames(a.Rows), other.Values, b.Verdict, foundNames(b.Rows))
		}
	})
}

// A coarser instrument never sharpens: with one reading of each, every row left by a finer
// one is left, and what it named is named, or less than named, and nothing else.
func TestPartCoarserNeverSharpens(t *testing.T) {
	p, all := mustParts(t), partTables(t)
	scale := []string{"digital-caliper", "vernier-caliper-coarse", "steel-rule", "tape"}
	rapid.Check(t, func(rt *rapid.T) {
		table := all[rapid.SampledFrom(slices.Sorted(mapKeys(all))).Draw(rt, "table")]
		q := partAround(rt, table)
		for column, list := range q.Values {
			q.Values[column] = list[:1]
		}
		var finer matcher.PartAnswer
		for i, tool := range scale {
			q.Tool = tool
			a := askPart(rt, p, table, q)
			if i > 0 && finer.Verdict != matcher.MeasureAgain {
				for _, name := range foundNames(finer.Rows) {
					if !slices.Contains(foundNames(a.Rows), name) {
						rt.Errorf("%s leaves %q, the finer tool left %q", tool, foundNames(a.Rows), foundNames(finer.Rows))
					}
				}
				if a.Verdict == matcher.Identified && finer.Verdict != matcher.Identified {
					rt.Errorf("%s names %q, the finer tool said %s", tool, foundNames(a.Rows), finer.Verdict)
				}
			}
			finer = a
		}
	})
}

func askPart(t interface{ Fatal(...any) }, p *matcher.Parts, table matcher.PartTable, q matcher.PartQuery) matcher.PartAnswer {
	a, err := p.Identify(table, q)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func same(t *rapid.T, what string, got, want matcher.PartAnswer) {
	a, _ := json.Marshal(got)
	b, _ := json.Marshal(want)
	if string(a) != string(b) {
		t.Errorf("%s:\n%s\nbefore:\n%s", what, a, b)
	}
}

func mapKeys(m map[string]matcher.PartTable) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

func farRow(table matcher.PartTable) matcher.PartRow {
	row := matcher.PartRow{Ref: table.ID + "/zz-far", Name: "zz-far", Also: []string{}, Values: map[string]any{}, Beside: []matcher.Beside{}}
	for _, c := range table.Columns {
		row.Values[c.ID] = matcher.PartFigure{Is: "9999", Half: "0.5", Text: "9999", Basis: "published"}
	}
	return row
}

// Readings that lie just as far apart as they may are taken in either unit: 121.95 mm and
// 4.80118110 in are one length, and to what side of a limit it falls is not for the last
// digit of a binary number to say.
func TestPartUnitsAtTheLimit(t *testing.T) {
	p, table := mustParts(t), partTables(t)["flanges-cross-tooth"]
	for _, readings := range [][]string{
		{"122.00000000 mm", "121.95000000 mm", "122.25000000 mm"},
		{"4.80314961 in", "4.80118110 in", "4.81299213 in"},
	} {
		a := askPart(t, p, table, matcher.PartQuery{Table: table.ID, Edges: "same", Tool: "digital-caliper", Condition: "new",
			Values: map[string][]string{"holes": {"4"}, "outside": readings}})
		if a.Verdict != matcher.Possible || !slices.Equal(foundNames(a.Rows), []string{"cross-tooth-120"}) {
			t.Errorf("%q: %s %q, want the row as possible", readings, a.Verdict, foundNames(a.Rows))
		}
	}
}
