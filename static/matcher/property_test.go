package matcher_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capspan/static/matcher"
)

func identify(t interface{ Fatal(...any) }, m *matcher.Matcher, q matcher.Query) matcher.Answer {
	a, err := m.Identify(q)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func number(t interface{ Fatal(...any) }, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// around draws a query of readings near a row, with errors up to a millimetre; some are
// read on a bare yoke.
func around(t *rapid.T, chart matcher.Chart) matcher.Query {
	row := rapid.SampledFrom(chart.Rows).Draw(t, "row")
	q := matcher.Query{
		Tool:      rapid.SampledFrom(matcher.Tools).Draw(t, "tool"),
		Condition: rapid.SampledFrom(matcher.Conditions).Draw(t, "condition"),
	}
	for _, end := range row.Ends {
		asked := matcher.QueryEnd{Hold: end.Hold}
		if rapid.IntRange(0, 3).Draw(t, "look") == 0 {
			asked.Hold = "unknown"
		}
		draw := func(v *matcher.ChartValue) []string {
			if v == nil {
				return nil
			}
			var out []string
			for range rapid.IntRange(0, 4).Draw(t, "readings") {
				off := rapid.IntRange(-100, 100).Draw(t, "hundredths")
				if rapid.Bool().Draw(t, "good") {
					off /= 20
				}
				out = append(out, fmt.Sprintf("%.2f mm", number(t, v.MM)+float64(off)/100))
			}
			return out
		}
		asked.Cap, asked.Across = draw(end.Cap), draw(end.Across)
		if rapid.IntRange(0, 3).Draw(t, "bare") == 0 { // the same figures read on a yoke with clips of 1.5 mm, or without
			asked.Taken = "yoke"
			if strings.HasSuffix(asked.Hold, "clip") && rapid.Bool().Draw(t, "clip") {
				asked.Clip = []string{"1.50 mm"}
				for i, r := range asked.Across {
					asked.Across[i] = fmt.Sprintf("%.2f mm", number(t, strings.TrimSuffix(r, " mm"))+3.05)
				}
			}
		}
		q.Ends = append(q.Ends, asked)
	}
	return q
}

func TestAnswersAreHonest(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := around(rt, chart)
		a := identify(rt, m, q)
		checkHonest(rt, a)
		if rt.Failed() {
			rt.Logf("query %+v", q)
		}
	})
}

// A joint at the figures of a row from memory is never named outright, and one at the
// figures of any row keeps that row among what is left.
func TestEveryRowAtItsOwnFigures(t *testing.T) {
	m, chart := mustMatch(t)
	for _, row := range chart.Rows {
		q := matcher.Query{}
		for _, end := range row.Ends {
			asked := matcher.QueryEnd{Hold: end.Hold, Faces: end.Faces}
			if end.Cap != nil {
				asked.Cap = []string{fmt.Sprintf("%.3f mm", number(t, end.Cap.MM)), fmt.Sprintf("%.3f mm", number(t, end.Cap.MM))}
			}
			if end.Across != nil {
				asked.Across = []string{fmt.Sprintf("%.3f mm", number(t, end.Across.MM)), fmt.Sprintf("%.3f mm", number(t, end.Across.MM))}
			}
			if end.Hold != "unknown" && end.Faces == "unknown" {
				asked.Faces = ""
			}
			q.Ends = append(q.Ends, asked)
		}
		a := identify(t, m, q)
		if !slices.Contains(rows(a.Sizes), row.Ref) {
			t.Errorf("%s at its own figures: %s, left %q", row.Ref, a.Verdict, rows(a.Sizes))
		}
		if row.Basis == "memory" && a.Verdict == matcher.Identified && a.Sizes[0].Basis == "memory" {
			t.Errorf("%s is from memory and identified", row.Ref)
		}
		if row.Basis != "memory" && a.Verdict == matcher.Identified && a.Sizes[0].Rows[0] != row.Ref && !slices.Contains(a.Sizes[0].Rows, row.Ref) {
			t.Errorf("%s is taken for %s", row.Ref, a.Sizes[0].Rows[0])
		}
		checkHonest(t, a)
	}
}

// Wrong and confident is the one thing that must not happen: joints of every row, made and
// measured with the errors the method assumes, are never named as another size.
func TestNeverNamedAsAnotherSize(t *testing.T) {
	m, chart := mustMatch(t)
	random := rand.New(rand.NewPCG(3, 4)) // fixed: the same joints every time
	measure := func(v *matcher.ChartValue, made, repeat float64) []string {
		if v == nil {
			return nil
		}
		size := number(t, v.MM) + made*(2*random.Float64()-1) - 0.05*random.Float64() // worn by up to 0.05 mm
		tool := 0.02 * (2*random.Float64() - 1)
		var out []string
		for range 1 + random.IntN(3) {
			out = append(out, fmt.Sprintf("%.2f mm", size+tool+repeat*random.NormFloat64()))
		}
		return out
	}
	named, found := 0, 0
	for range 3 {
		for _, row := range chart.Rows {
			q := matcher.Query{}
			for _, end := range row.Ends {
				q.Ends = append(q.Ends, matcher.QueryEnd{Hold: end.Hold, Cap: measure(end.Cap, 0.01, 0.01), Across: measure(end.Across, 0.08, 0.05)})
			}
			a := identify(t, m, q)
			checkHonest(t, a)
			if slices.Contains(rows(a.Sizes), row.Ref) {
				found++
			}
			if a.Verdict != matcher.Identified {
				continue
			}
			named++
			if !slices.Contains(a.Sizes[0].Rows, row.Ref) {
				t.Errorf("%s is named %q from %+v", row.Ref, a.Sizes[0].Rows, q)
			}
		}
	}
	// The other way round: caution must not make the answer useless.
	if all := 3 * len(chart.Rows); found < all*98/100 || named < all/4 {
		t.Errorf("of %d joints %d are among what is left and %d are named", all, found, named)
	}
}

// A size farther from every row than any reading can be off is in no row. Now and then a
// slip would make a listed size of it by chance; it is never more than asked about.
func TestFarSizesAreInNoRow(t *testing.T) {
	m, chart := mustMatch(t)
	random := rand.New(rand.NewPCG(1, 2)) // fixed: the same sizes every time
	tried, slipped := 0, 0
	for tried < 300 {
		cap, across := 12+random.Float64()*70, 35+random.Float64()*190
		if cap >= across || nearAny(t, chart, cap, across, 2) {
			continue
		}
		tried++
		hold := matcher.Holds[random.IntN(len(matcher.Holds))]
		if hold == "wing" { // its rows have no cap to be far from
			hold = "plate"
		}
		a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{
			Hold: hold, Cap: []string{fmt.Sprintf("%.2f mm", cap)}, Across: []string{fmt.Sprintf("%.2f mm", across)},
		}}})
		if a.Verdict != matcher.NotInChart && (a.Verdict != matcher.MeasureAgain || len(a.Slips) == 0) {
			t.Errorf("%s %.2f x %.2f: got %s %q", hold, cap, across, a.Verdict, rows(a.Sizes))
		}
		if a.Verdict == matcher.MeasureAgain {
			slipped++
		}
		checkHonest(t, a)
	}
	if slipped > tried/20 {
		t.Errorf("of %d far sizes %d are taken for slips", tried, slipped)
	}
}

// nearAny reports whether a figure of a row, or another given for it, is that near in
// both quantities.
func nearAny(t testing.TB, chart matcher.Chart, cap, across, mm float64) bool {
	near := func(v *matcher.ChartValue, x float64) bool {
		if v == nil {
			return true
		}
		for _, o := range append([]matcher.OtherValue{{MM: v.MM}}, v.Others...) {
			if math.Abs(number(t, o.MM)-x) < mm {
				return true
			}
		}
		return false
	}
	for _, row := range chart.Rows {
		for _, end := range row.Ends {
			if near(end.Cap, cap) && near(end.Across, across) {
				return true
			}
		}
	}
	return false
}
