package matcher_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// What is said to part two sizes does: with the tool named, three readings at either
// figure leave that size alone. Where no tool is said to, readings half way name neither.
func TestWhatTellsApartDoes(t *testing.T) {
	bundle := mustBundle(t)
	parted, not := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		quantity := rapid.SampledFrom([]matcher.Dimension{"cap", "across"}).Draw(rt, "quantity")
		apart := float64(rapid.IntRange(2, 300).Draw(rt, "hundredths")) / 100
		cap, across := []float64{27, 27}, []float64{82, 82}
		if quantity == "cap" {
			cap[1] += apart
		} else {
			across[1] += apart
		}
		hold := rapid.SampledFrom([]matcher.Hold{"outside-clip", "inside-clip"}).Draw(rt, "hold")
		chart := matcher.Chart{Format: 1, Version: "two", Rows: []matcher.ChartRow{
			plainRow(0, hold, "published", cap[0], across[0], 2), plainRow(1, hold, "published", cap[1], across[1], 2),
		}}
		m := newMatcher(rt, bundle, chart)
		q := matcher.Query{Tool: rapid.SampledFrom(matcher.Tools).Draw(rt, "tool"), Condition: "new", Ends: []matcher.QueryEnd{{Hold: hold}}}
		if quantity == "cap" {
			q.Ends[0].Across = []string{"82.00 mm"}
		} else {
			q.Ends[0].Cap = []string{"27.00 mm"}
		}
		a := identify(rt, m, q)
		checkHonest(rt, a)
		if a.Verdict != matcher.Between || len(a.TellApart) != 1 || a.TellApart[0].Measure != quantity {
			rt.Fatalf("%+v: %s, %+v, want the %s to tell them apart", q, a.Verdict, a.TellApart, quantity)
		}
		tell := a.TellApart[0]
		if tell.Able && tell.Tool != q.Tool {
			rt.Errorf("able, with %s in hand, and %s named", q.Tool, tell.Tool)
		}
		can := tell.Able || tell.Tool != q.Tool
		q.Tool = tell.Tool
		read := func(share float64) matcher.Answer {
			if quantity == "cap" {
				q.Ends[0].Cap = slices.Repeat([]string{fmt.Sprintf("%.3f mm", cap[0]+share*(cap[1]-cap[0]))}, 3)
			} else {
				q.Ends[0].Across = slices.Repeat([]string{fmt.Sprintf("%.3f mm", across[0]+share*(across[1]-across[0]))}, 3)
			}
			return identify(rt, m, q)
		}
		if !can {
			not++
			if half := read(0.5); half.Verdict == matcher.Identified || half.Verdict == matcher.Possible {
				rt.Errorf("nothing is said to part them %v mm apart, yet half way %s %q", apart, half.Verdict, rows(half.Sizes))
			}
			return
		}
		parted++
		for i := range 2 {
			if after := read(float64(i)); len(after.Sizes) != 1 || after.Sizes[0].Rows[0] != chart.Rows[i].Ref {
				rt.Errorf("%s is said to part them %v mm apart; three readings at row %d leave %s %q", tell.Tool, apart, i, after.Verdict, rows(after.Sizes))
			}
		}
	})
	if parted == 0 || not == 0 {
		t.Errorf("%d parted, %d not: want some of either", parted, not)
	}
}
