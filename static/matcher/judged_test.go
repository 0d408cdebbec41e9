package matcher_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"capspan/static/matcher"
)

// joint is a query of one end held by outside clips.
func joint(condition matcher.Condition, cap, across []string) matcher.Query {
	return matcher.Query{Condition: condition, Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: cap, Across: across}}}
}

func times(n int, mm float64) []string { return slices.Repeat([]string{fmt.Sprintf("%.3f mm", mm)}, n) }

// rangeBeyond is the chance that n readings of the standard normal spread more than w:
// 1 - n times the integral of phi(x) (Phi(x+w) - Phi(x))^(n-1), the studentized range
// with endless degrees of freedom.
func rangeBeyond(w float64, n int) float64 {
	normal := distuv.UnitNormal
	within := func(x float64) float64 {
		return normal.Prob(x) * math.Pow(normal.CDF(x+w)-normal.CDF(x), float64(n-1))
	}
	return 1 - float64(n)*quad.Fixed(within, -9, 9, 400, nil, 0)
}

// Readings are said to spread when chance would spread them so in one set of a hundred;
// the bound the core uses is exact for two readings and may only err to the wide side.
func TestSpreadIsJudgedByTheTool(t *testing.T) {
	c, bundle := mustConstants(t), mustBundle(t)
	m := newMatcher(t, bundle, matcher.Chart{Format: 1, Version: "test", Rows: []matcher.ChartRow{plainRow(0, "outside-clip", "published", 27, 82, 2)}})
	one := math.Hypot(c.get("cap-repeat"), c.get("digital-step")/math.Sqrt(12))
	for n := 2; n <= 6; n++ {
		spreads := func(w float64) bool {
			caps := append(times(n-1, 27), fmt.Sprintf("%.5f mm", 27+w*one))
			if n > 2 { // two at either end: nothing is set aside, and the spread stays
				caps = append(times(n/2, 27), slices.Repeat([]string{fmt.Sprintf("%.5f mm", 27+w*one)}, n-n/2)...)
			}
			a := identify(t, m, joint("used", caps, times(3, 82)))
			return strings.Contains(a.Readings[0].Why, "spread over")
		}
		low, high := 1.0, 8.0
		for range 30 {
			if middle := (low + high) / 2; spreads(middle) {
				high = middle
			} else {
				low = middle
			}
		}
		if chance := rangeBeyond(high, n); chance > 0.0101 || chance < 0.008 {
			t.Errorf("%d readings are said to spread at %.3f standard deviations: chance %.4f, want just under 0.01", n, high, chance)
		}
	}
}

// Worn parts read small and rusted ones large, so the same readings mean a larger part
// or a smaller one, and the worse the part, the less is known.
func TestConditionShiftsAndWidens(t *testing.T) {
	m, _ := mustMatch(t)
	value, uncertainty := map[matcher.Condition]float64{}, map[matcher.Condition]float64{}
	for _, condition := range matcher.Conditions {
		cap := identify(t, m, joint(condition, times(3, 27), nil)).Readings[0]
		value[condition], uncertainty[condition] = cap.Value, cap.Uncertainty
		if math.Abs(cap.Value-27) > cap.Uncertainty {
			t.Errorf("%s: 27 mm is put right to %.3f, farther than ±%.3f", condition, cap.Value, cap.Uncertainty)
		}
		if says := strings.Contains(cap.Why, "that is put right"); says != (math.Abs(cap.Value-27) > 0.005) {
			t.Errorf("%s: value %.3f of readings of 27 mm, said: %q", condition, cap.Value, cap.Why)
		}
	}
	if math.Abs(value["new"]-27) > 1e-9 || !(value["rusted"] < value["new"] && value["new"] < value["used"] && value["used"] < value["worn"]) {
		t.Errorf("readings of 27 mm are worth %v", value)
	}
	if !(uncertainty["new"] < uncertainty["used"] && uncertainty["used"] < uncertainty["worn"] && uncertainty["worn"] < uncertainty["rusted"]) {
		t.Errorf("readings of 27 mm are good to %v", uncertainty)
	}
}

// A cap that reads below its size is told with both published figures (facts: Toyota
// 0.05 mm allowed, Dana renew above 0.006 in), and one that does not is not.
func TestWearIsTold(t *testing.T) {
	bundle := mustBundle(t)
	m := newMatcher(t, bundle, matcher.Chart{Format: 1, Version: "test", Rows: []matcher.ChartRow{plainRow(0, "outside-clip", "published", 27, 82, 2)}})
	for _, c := range []struct {
		cap         float64
		told, renew bool
	}{{27, false, false}, {26.96, false, false}, {26.90, true, false}, {26.86, true, false}, {26.83, true, true}} {
		a := identify(t, m, joint("worn", times(3, c.cap), times(3, 82)))
		if len(a.Sizes) != 1 {
			t.Fatalf("%.2f mm: %s, left %q", c.cap, a.Verdict, rows(a.Sizes))
		}
		all := strings.Join(said(a), "\n")
		told := strings.Contains(all, "below its size: wear") && strings.Contains(all, "Toyota") && strings.Contains(all, "Dana") && strings.Contains(all, "Sources differ")
		if told != c.told || strings.Contains(all, "Renew this joint") != c.renew {
			t.Errorf("%.2f mm for a cap of 27: told %v, want %v, renew %v:\n%s", c.cap, told, c.told, c.renew, all)
		}
	}
	a := identify(t, m, joint("used", times(3, 26.84), times(3, 82)))
	if a.Verdict != matcher.NotInChart || !strings.Contains(strings.Join(a.Says.Next, "\n"), "If the cap is worn, say so") {
		t.Errorf("a used cap of 26.84 beside 27: %s, %q", a.Verdict, a.Says.Next)
	}
}

// Two sizes that differ in the across alone, and the tool that parts them: when the tool in
// hand is said to, three readings of either with it must leave that size alone.
func TestToolThatPartsTwoSizes(t *testing.T) {
	bundle := mustBundle(t)
	for _, c := range []struct {
		tool  matcher.Tool
		apart float64
		able  bool
		take  matcher.Tool
	}{
		{"digital-caliper", 2, true, "digital-caliper"},
		{"digital-caliper", 0.05, false, "digital-caliper"}, // nothing parts them
		{"steel-rule", 4, true, "steel-rule"},
		{"steel-rule", 1, false, "vernier-caliper"},
		{"tape", 4, false, "steel-rule"},
	} {
		t.Run(fmt.Sprintf("%s %.2f mm", c.tool, c.apart), func(t *testing.T) {
			m := newMatcher(t, bundle, matcher.Chart{Format: 1, Version: "test", Rows: []matcher.ChartRow{
				plainRow(0, "outside-clip", "published", 27, 82, 2), plainRow(1, "outside-clip", "published", 27, 82+c.apart, 2)}})
			q := joint("used", times(2, 27), nil)
			q.Tool = c.tool
			a := identify(t, m, q)
			if len(a.TellApart) != 1 {
				t.Fatalf("%s: %+v", a.Verdict, a.TellApart)
			}
			tell := a.TellApart[0]
			if tell.Measure != "across" || tell.Able != c.able || tell.Tool != c.take || math.Abs(tell.Apart-c.apart) > 1e-9 {
				t.Errorf("got %+v, want able %v with %s", tell, c.able, c.take)
			}
			for _, text := range []string{"82.00 mm (3.228 in)", fmt.Sprintf("%.2f mm (%.3f in)", 82+c.apart, (82+c.apart)/25.4)} {
				if !strings.Contains(tell.Says, text) {
					t.Errorf("want %q in %q", text, tell.Says)
				}
			}
			if tell.Able {
				for i, at := range []float64{82, 82 + c.apart} {
					q := joint("used", times(3, 27), times(3, at))
					q.Tool = c.tool
					if got := rows(identify(t, m, q).Sizes); len(got) != 1 || got[0] != fmt.Sprintf("small/%d", i) {
						t.Errorf("%s is said to part them, and readings of %.2f leave %q", c.tool, at, got)
					}
				}
			}
		})
	}
}

var comesWithin = regexp.MustCompile(`comes within (?:[0-9.]+ in \()?([0-9.]+) mm`)

// "Nothing else comes within": every other row that could be meant is farther off than
// that in cap or across, and some row is not much farther.
func TestNothingElseComesWithin(t *testing.T) {
	m, chart := mustMatch(t)
	told := 0
	for _, row := range chart.Rows {
		end := row.Ends[0]
		if len(row.Ends) != 1 || end.Cap == nil || end.Across == nil {
			continue
		}
		a := identify(t, m, matcher.Query{Condition: "new", Ends: []matcher.QueryEnd{{Hold: end.Hold, Faces: end.Faces,
			Cap: times(3, number(t, end.Cap.MM)), Across: times(3, number(t, end.Across.MM))}}})
		found := comesWithin.FindStringSubmatch(strings.Join(a.Says.Because, "\n"))
		if (found != nil) != (a.Verdict == matcher.Identified) {
			t.Errorf("%s: %s, said %v", row.Ref, a.Verdict, found)
		}
		if found == nil {
			continue
		}
		told++
		said, least := number(t, found[1]), math.Inf(1)
		for _, other := range chart.Rows {
			if len(other.Ends) == 1 && !slices.Contains(a.Sizes[0].Rows, other.Ref) {
				least = min(least, awayFrom(t, other.Ends[0], end, a))
			}
		}
		if least < said || least > said+0.1001 {
			t.Errorf("%s: nothing is said to come within %.2f mm, and a row is %.3f mm off", row.Ref, said, least)
		}
	}
	if told < 20 {
		t.Errorf("only %d rows were named", told)
	}
}

// awayFrom is how far a row lies from the readings of an answer, by the quantity that is
// farther off, or without end when it is held or measured otherwise.
func awayFrom(t *testing.T, other, asked matcher.ChartEnd, a matcher.Answer) float64 {
	unlike := func(x, y string) bool { return x != y && x != "unknown" && y != "unknown" }
	if unlike(string(other.Hold), string(asked.Hold)) || unlike(string(other.Faces), string(asked.Faces)) {
		return math.Inf(1)
	}
	most := 0.0
	for i, v := range []*matcher.ChartValue{other.Cap, other.Across} {
		if v == nil {
			continue
		}
		near := math.Abs(number(t, v.MM) - a.Readings[i].Value)
		for _, o := range v.Others {
			near = min(near, math.Abs(number(t, o.MM)-a.Readings[i].Value))
		}
		most = max(most, near)
	}
	return most
}

// Names of one size are sent back to the joint, not to the caliper.
func TestTwinsAreLookedAt(t *testing.T) {
	m, _ := mustMatch(t)
	a := identify(t, m, joint("used", times(3, 30.18), times(3, 92.07)))
	next := strings.Join(a.Says.Next, "\n")
	for _, want := range []string{"no more caliper work", "1350 stands under", "30.2x92 stands under", "grease fitting"} {
		if !strings.Contains(next, want) {
			t.Errorf("%s: want %q in %q", a.Verdict, want, next)
		}
	}
}

// The unit of most readings is spoken first.
func TestUnitOfMostReadingsLeads(t *testing.T) {
	m, _ := mustMatch(t)
	for _, c := range []struct {
		across []string
		want   *regexp.Regexp
	}{
		{[]string{"3.219 in", "3.220 in"}, regexp.MustCompile(`^Cap 1\.06\d in \(2\d\.\d\d mm\)\. .* yours is 0\.\d+ in \(0\.\d\d mm\)`)},
		{[]string{"81.77 mm", "81.78 mm"}, regexp.MustCompile(`^Cap 2\d\.\d\d mm \(1\.06\d in\)\. .* yours is 0\.\d\d mm \(0\.\d+ in\)`)},
	} {
		a := identify(t, m, joint("used", []string{"1.060 in"}, c.across))
		if len(a.Says.Because) == 0 || !c.want.MatchString(a.Says.Because[0]) {
			t.Errorf("with %q: %q", c.across, a.Says.Because)
		}
	}
}
