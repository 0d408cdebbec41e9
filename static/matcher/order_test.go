package matcher_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// essence is what must not change when a query is asked in another way.
func essence(a matcher.Answer) []string {
	return append([]string{a.Verdict}, rows(a.Sizes)...)
}

func TestOrderDoesNotMatter(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := around(rt, chart)
		want := essence(identify(rt, m, q))
		turned := q
		turned.Ends = slices.Clone(q.Ends)
		slices.Reverse(turned.Ends)
		for i := range turned.Ends {
			turned.Ends[i].Cap = slices.Clone(turned.Ends[i].Cap)
			turned.Ends[i].Across = slices.Clone(turned.Ends[i].Across)
			slices.Reverse(turned.Ends[i].Cap)
			slices.Sort(turned.Ends[i].Across)
		}
		if diff := cmp.Diff(want, essence(identify(rt, m, turned))); diff != "" {
			rt.Fatalf("%+v\nturned: %s", q, diff)
		}
	})
}

// Found by the test above: two conversion rows whose ends have the same across, one end
// recalled, are equally likely whichever end is measured first.
func TestSwappedEndsOfEqualAcross(t *testing.T) {
	m, _ := mustMatch(t)
	one := matcher.QueryEnd{Hold: "unknown", Across: []string{"92.09 mm"}}
	two := matcher.QueryEnd{Hold: "unknown", Across: []string{"92.08 mm"}}
	ask := func(ends ...matcher.QueryEnd) []string {
		return essence(identify(t, m, matcher.Query{Ends: ends, Condition: "new"}))
	}
	if diff := cmp.Diff(ask(one, two), ask(two, one)); diff != "" {
		t.Error(diff)
	}
}

// One inch is 25.4 mm exactly: thousandths that are whole in both units must give the
// same sizes.
func TestUnitsDoNotMatter(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		row := rapid.SampledFrom(chart.Rows).Draw(rt, "row")
		end := row.Ends[0]
		inches := matcher.QueryEnd{Hold: end.Hold}
		millimetres := matcher.QueryEnd{Hold: end.Hold}
		set := func(v *matcher.ChartValue, in, mm *[]string) {
			if v == nil {
				return
			}
			ten := math.Round(number(rt, v.MM)/0.254) + float64(rapid.IntRange(-3, 3).Draw(rt, "off")) // hundredths of an inch
			*in = []string{fmt.Sprintf("%.3f in", ten/100)}
			*mm = []string{fmt.Sprintf("%.3f mm", ten*0.254)}
		}
		set(end.Cap, &inches.Cap, &millimetres.Cap)
		set(end.Across, &inches.Across, &millimetres.Across)
		// A rule's own step is wider than either last digit, so that only the unit differs.
		ask := func(e matcher.QueryEnd) matcher.Answer {
			return identify(rt, m, matcher.Query{Ends: []matcher.QueryEnd{e}, Tool: "vernier-caliper-coarse"})
		}
		first, second := ask(inches), ask(millimetres)
		if diff := cmp.Diff(sharesOf(first), sharesOf(second), cmp.Comparer(nearly)); diff != "" {
			rt.Fatalf("%+v: %s", inches, diff)
		}
		// The digits are others, and so are the slips of writing: those alone may change the verdict.
		if first.Verdict != second.Verdict && len(first.Slips)+len(second.Slips) == 0 {
			rt.Fatalf("%+v: %s, in millimetres %s", inches, first.Verdict, second.Verdict)
		}
	})
}

// A bare number with a unit for the whole query is the number with that unit beside it,
// and a decimal comma is a decimal point.
func TestWritingDoesNotMatter(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := around(rt, chart)
		bare := matcher.Query{Unit: "mm", Tool: q.Tool, Condition: q.Condition}
		comma := rapid.Bool().Draw(rt, "comma")
		for _, end := range q.Ends {
			for _, list := range []*[]string{&end.Cap, &end.Across} {
				*list = slices.Clone(*list)
				for i, r := range *list {
					(*list)[i] = strings.TrimSuffix(r, " mm")
					if comma {
						(*list)[i] = strings.ReplaceAll((*list)[i], ".", ",")
					}
				}
			}
			bare.Ends = append(bare.Ends, end)
		}
		if diff := cmp.Diff(identify(rt, m, q), identify(rt, m, bare)); diff != "" {
			rt.Fatalf("%+v written otherwise: %s", q, diff)
		}
	})
}

// sharesOf is every size left with its probability, whatever row of it speaks first.
func sharesOf(a matcher.Answer) map[string]float64 {
	out := map[string]float64{}
	for _, s := range a.Sizes {
		out[strings.Join(slices.Sorted(slices.Values(s.Rows)), " ")] = math.Round(s.Probability*1e9) / 1e9
	}
	return out
}

// A chart is a set of rows: shuffled, it gives the same verdict, sizes and probabilities.
func TestOrderOfRowsDoesNotMatter(t *testing.T) {
	bundle := mustBundle(t)
	m, chart := mustMatch(t)
	random := rand.New(rand.NewPCG(5, 6)) // fixed: the same orders every time
	for range 2 {
		shuffled := chart
		shuffled.Rows = slices.Clone(chart.Rows)
		random.Shuffle(len(shuffled.Rows), func(i, j int) {
			shuffled.Rows[i], shuffled.Rows[j] = shuffled.Rows[j], shuffled.Rows[i]
		})
		other := newMatcher(t, bundle, shuffled)
		rapid.Check(t, func(rt *rapid.T) {
			q := around(rt, chart)
			first, second := identify(rt, m, q), identify(rt, other, q)
			if first.Verdict != second.Verdict {
				rt.Errorf("%s, of a shuffled chart %s", first.Verdict, second.Verdict)
			}
			if diff := cmp.Diff(sharesOf(first), sharesOf(second), cmp.Comparer(nearly)); diff != "" {
				rt.Errorf("sizes left:\n%s", diff)
			}
			if diff := cmp.Diff(slipsOf(first), slipsOf(second), cmp.Comparer(nearly)); diff != "" {
				rt.Errorf("slips:\n%s", diff)
			}
			if rt.Failed() {
				rt.Logf("%+v", q)
			}
		})
	}
}

func nearly(a, b float64) bool { return math.Abs(a-b) < 1e-8 }

// slipsOf leaves out the rows: of several that a slip would explain equally well, the
// chart's first is spoken of first.
func slipsOf(a matcher.Answer) map[string]float64 {
	out := map[string]float64{}
	for _, s := range a.Slips {
		out[fmt.Sprint(s.Slip, " ", s.End, " ", s.Look)] += s.Probability
	}
	return out
}

// Found by the test above: two sizes as likely as each other, and neither likely, were
// settled by which stands first in the chart.
func TestTossUpKeepsBoth(t *testing.T) {
	m, _ := mustMatch(t)
	a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{
		{Hold: "unknown", Cap: []string{"34.77 mm", "34.80 mm"}}, {Hold: "outside-clip", Cap: []string{"34.92 mm", "34.92 mm"}},
	}})
	checkHonest(t, a)
	left := rows(a.Sizes)
	if slices.Contains(left, "joints-metric/35x94") != slices.Contains(left, "joints-metric/35x98") {
		t.Errorf("%s %q: one of two alike is left", a.Verdict, left)
	}
}
