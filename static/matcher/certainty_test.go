package matcher_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// A row far from what was measured is no news: it may not change which size is likeliest,
// nor put a size where there was none. It takes a trace of what is likely from all others, so
// a slip that was just likely enough to be the verdict may be just too unlikely beside it.
func TestFarRowChangesNoWinner(t *testing.T) {
	bundle, strong := mustBundle(t), mustConstants(t).get("slip-strong-at")
	justStrong := func(before, after matcher.Answer) bool {
		if before.Verdict != matcher.MeasureAgain || after.Verdict != matcher.NotInChart || len(before.Slips) == 0 || len(after.Slips) == 0 {
			return false
		}
		was, is := before.Slips[0], after.Slips[0]
		return was.Slip == is.Slip && was.Probability >= strong && is.Probability < strong && was.Probability-is.Probability < 0.01
	}
	rapid.Check(t, func(rt *rapid.T) {
		chart := smallCharts().Draw(rt, "chart")
		q := nearRow(rt, chart, matcher.Tools[:5])
		before := identify(rt, newMatcher(rt, bundle, chart), q)
		wider := chart
		wider.Rows = slices.Clone(chart.Rows)
		for i := range rapid.IntRange(1, 3).Draw(rt, "far") {
			hold := rapid.SampledFrom([]matcher.Hold{"outside-clip", "plate", "inside-clip"}).Draw(rt, "hold")
			far := plainRow(100+i, hold, "published", 60+5*float64(i), 150+9*float64(i), 2)
			wider.Rows = slices.Insert(wider.Rows, rapid.IntRange(0, len(wider.Rows)).Draw(rt, "at"), far)
		}
		after := identify(rt, newMatcher(rt, bundle, wider), q)
		if len(before.Sizes) > 0 && (len(after.Sizes) == 0 || after.Sizes[0].Rows[0] != before.Sizes[0].Rows[0]) {
			if !tie(before) {
				rt.Errorf("%+v: %s %q, with a far row %s %q", q, before.Verdict, rows(before.Sizes), after.Verdict, rows(after.Sizes))
			}
		}
		if len(before.Sizes) == 0 && len(after.Sizes) > 0 {
			rt.Errorf("%+v: no size, with a far row %q", q, rows(after.Sizes))
		}
		if len(before.Sizes) == 0 && after.Verdict != before.Verdict && !justStrong(before, after) {
			rt.Errorf("%+v: %s (%s), with a far row %s (%s)", q, before.Verdict, before.Says.Head, after.Verdict, after.Says.Head)
		}
	})
}

// tie reports whether the two likeliest sizes differ by rounding only.
func tie(a matcher.Answer) bool {
	return len(a.Sizes) > 1 && math.Abs(a.Sizes[0].Probability-a.Sizes[1].Probability) < 1e-6
}

// byOther reports whether a size is left by another figure than it leads with.
func byOther(a matcher.Answer) bool {
	return slices.ContainsFunc(a.Sizes, func(s matcher.Size) bool { return strings.Contains(s.Because, "another figure given for it") })
}

// sharpness ranks a verdict by how much it claims.
func sharpness(v matcher.Verdict) int {
	return slices.Index([]matcher.Verdict{matcher.MeasureAgain, matcher.NotInChart, matcher.Between, matcher.Possible, matcher.Identified}, v)
}

// The same reading taken again, and again, at a row's own figures: the uncertainty never
// grows, the row stays the likeliest, and the claim is no weaker. A size that is named is
// no less likely than before. (One printed in whole millimetres may lose a little to a
// neighbour printed more finely: there the chart is what is not known.)
func TestRepeatingNeverLowersCertainty(t *testing.T) {
	m, chart := mustMatch(t)
	plain := slices.DeleteFunc(slices.Clone(chart.Rows), func(r matcher.ChartRow) bool { return len(r.Ends) != 1 })
	rapid.Check(t, func(rt *rapid.T) {
		row := rapid.SampledFrom(plain).Draw(rt, "row")
		end := row.Ends[0]
		tool := rapid.SampledFrom(matcher.Tools[:6]).Draw(rt, "tool")
		ask := func(times int) matcher.Answer {
			asked := matcher.QueryEnd{Hold: end.Hold}
			for quantity, v := range map[*[]string]*matcher.ChartValue{&asked.Cap: end.Cap, &asked.Across: end.Across} {
				if v != nil {
					*quantity = slices.Repeat([]string{fmt.Sprintf("%.3f mm", number(rt, v.MM))}, times)
				}
			}
			return identify(rt, m, matcher.Query{Ends: []matcher.QueryEnd{asked}, Tool: tool, Condition: "new"})
		}
		before := ask(1)
		for times := 2; times <= 5; times++ {
			after := ask(times)
			for i, r := range after.Readings {
				if r.Uncertainty > before.Readings[i].Uncertainty+1e-12 {
					rt.Errorf("%s of %s read %d times: ±%v, before ±%v", r.Quantity, row.Ref, times, r.Uncertainty, before.Readings[i].Uncertainty)
				}
			}
			at := slices.IndexFunc(before.Sizes, func(s matcher.Size) bool { return slices.Contains(s.Rows, row.Ref) })
			// A twin's figures may be the sharper ones, and so may those of a row that gives this one's as another figure.
			if at == 0 && !tie(before) && len(before.Sizes[0].Rows) == 1 && !byOther(before) && !byOther(after) {
				if len(after.Sizes) == 0 || !slices.Contains(after.Sizes[0].Rows, row.Ref) {
					rt.Errorf("%s read %d times: %q with %+v, before %+v", row.Ref, times, after.Verdict, after.Sizes, before.Sizes)
				} else if before.Verdict == matcher.Identified && after.Sizes[0].Probability < before.Sizes[0].Probability-1e-9 {
					rt.Errorf("%s read %d times has %v, before %v", row.Ref, times, after.Sizes[0].Probability, before.Sizes[0].Probability)
				}
				if sharpness(after.Verdict) < sharpness(before.Verdict) {
					rt.Errorf("%s read %d times: %s, before %s", row.Ref, times, after.Verdict, before.Verdict)
				}
			}
			before = after
		}
	})
}

// The tools from finest to coarsest.
var finestFirst = []matcher.Tool{"digital-caliper", "vernier-caliper", "vernier-caliper-coarse", "steel-rule", "tape"}

// With a coarser tool the same readings never claim more. At the very edge of agreeing a
// wider interval may take in a row a narrow one leaves out, and a size that fits the
// finer readings badly may be the only likely one for coarse ones; it still may not be
// named outright where the finer tool could not, nor a standard uncertainty be smaller.
func TestCoarserToolClaimsNoMore(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := around(rt, chart)
		q.Tool = finestFirst[0]
		finer := identify(rt, m, q)
		for _, tool := range finestFirst[1:] {
			q.Tool = tool
			coarser := identify(rt, m, q)
			noFiner(rt, finer, coarser, tool)
			if len(finer.Sizes) > 0 && finer.Verdict != matcher.Identified && coarser.Verdict == matcher.Identified {
				rt.Errorf("%+v: %s %q, with %s %s %q", q, finer.Verdict, rows(finer.Sizes), tool, coarser.Verdict, rows(coarser.Sizes))
			}
			finer = coarser
		}
	})
}

// noFiner compares standard uncertainties: an expanded one may fall by a thousandth when
// a component of endless degrees of freedom grows (JCGM 100 G.4.1), which means nothing.
func noFiner(t errorer, before, after matcher.Answer, what string) {
	t.Helper()
	for i, r := range after.Readings {
		b := before.Readings[i] // which readings are set aside depends on the tool
		if len(r.Used) == len(b.Used) && fromBudget(r).standard < fromBudget(b).standard-1e-12 {
			t.Errorf("%s %q: standard uncertainty %v, with %s %v", r.Quantity, r.Used, fromBudget(b).standard, what, fromBudget(r).standard)
		}
	}
}

// Nor is a worse condition ever worth more.
func TestWorseConditionIsNoFiner(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := around(rt, chart)
		q.Condition = "new"
		better := identify(rt, m, q)
		for _, condition := range []matcher.Condition{"used", "worn", "rusted"} {
			q.Condition = condition
			worse := identify(rt, m, q)
			noFiner(rt, better, worse, condition)
			better = worse
		}
	})
}

// A rule never names a size while another lies within its reach: two rows no farther
// apart than the half millimetre it is read to.
func TestRuleNamesNoneOfTwo(t *testing.T) {
	bundle := mustBundle(t)
	random := rand.New(rand.NewPCG(7, 8)) // fixed: the same pairs every time
	for range 40 {
		apart := 0.1 + 0.4*random.Float64()
		chart := matcher.Chart{Format: 1, Version: "two", Rows: []matcher.ChartRow{
			plainRow(0, "outside-clip", "published", 27, 80, 2), plainRow(1, "outside-clip", "published", 27, 80+apart, 2),
		}}
		a := identify(t, newMatcher(t, bundle, chart), matcher.Query{Tool: "steel-rule",
			Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: []string{"27.0 mm"}, Across: []string{"80.0 mm", "80.5 mm", "80.0 mm"}}}})
		if a.Verdict != matcher.Between || len(rows(a.Sizes)) != 2 {
			t.Errorf("%.2f mm apart: %s %q, want it between both", apart, a.Verdict, rows(a.Sizes))
		}
		checkHonest(t, a)
	}
}
