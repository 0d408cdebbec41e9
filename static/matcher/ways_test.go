package matcher_test

import (
	"slices"
	"strings"
	"testing"

	"capspan/static/matcher"
)

// A 1310 yoke and a 1480 yoke: no listed joint has both, each is a known size.
func pairNoRowHas() matcher.Query {
	return matcher.Query{Ends: []matcher.QueryEnd{
		{Hold: "outside-clip", Cap: []string{"1.062 in", "1.062 in"}, Across: []string{"3.219 in", "3.220 in"}},
		{Hold: "outside-clip", Cap: []string{"1.375 in", "1.375 in"}, Across: []string{"4.188 in", "4.187 in"}},
	}}
}

// Every way names a listed joint that has one of the ends, and a plain size for the other.
func TestWays(t *testing.T) {
	m, chart := mustMatch(t)
	a := identify(t, m, pairNoRowHas())
	if a.Verdict != matcher.NotInChart || len(a.Ways) == 0 {
		t.Fatalf("got %s with %d ways", a.Verdict, len(a.Ways))
	}
	byRef := map[string]matcher.ChartRow{}
	for _, r := range chart.Rows {
		byRef[r.Ref] = r
	}
	plainOf := map[int]bool{}
	for _, w := range a.Ways {
		joint, ok := byRef[w.Joint]
		if !ok || len(w.Keeps) != 1 || w.Change != 1-w.Keeps[0] || len(w.To) == 0 {
			t.Errorf("got %+v, want a listed joint that keeps one yoke and changes the other", w)
			continue
		}
		keep := byRef[a.Ends[w.Keeps[0]].Rows[0]].Ends[0]
		to := byRef[w.To[0]].Ends[0]
		if !slices.ContainsFunc(joint.Ends, func(e matcher.ChartEnd) bool { return sameEnd(e, keep) }) {
			t.Errorf("%s has no end that fits the yoke it keeps, %+v", w.Joint, keep)
		}
		if !slices.ContainsFunc(joint.Ends, func(e matcher.ChartEnd) bool { return sameEnd(e, to) }) {
			t.Errorf("%s has no end for the new yoke, %q", w.Joint, w.To)
		}
		if len(joint.Ends) == 1 {
			plainOf[w.Keeps[0]] = true
		}
		if !strings.Contains(w.Says, joint.Name) || !strings.Contains(w.Says, byRef[w.To[0]].Name) {
			t.Errorf("%q does not name the joint and the size", w.Says)
		}
	}
	if !plainOf[0] || !plainOf[1] {
		t.Errorf("got %+v, want the plain joint of either end among the ways", a.Ways)
	}
	if !slices.ContainsFunc(a.Ways, func(w matcher.Way) bool { return w.Joint == "joints-conversion/1410-to-1480" }) {
		t.Errorf("got %+v, want the conversion joint to the size nearest the other yoke", a.Ways)
	}
}

func sameEnd(a, b matcher.ChartEnd) bool {
	return a.Hold == b.Hold && a.Cap != nil && b.Cap != nil && a.Across != nil && b.Across != nil &&
		a.Cap.MM == b.Cap.MM && a.Across.MM == b.Across.MM
}

// Turning the ends round turns the ways round.
func TestWaysTurned(t *testing.T) {
	m, _ := mustMatch(t)
	q := pairNoRowHas()
	a := identify(t, m, q)
	slices.Reverse(q.Ends)
	b := identify(t, m, q)
	key := func(ways []matcher.Way, flip bool) []string {
		var out []string
		for _, w := range ways {
			keeps := w.Keeps[0]
			if flip {
				keeps = 1 - keeps
			}
			out = append(out, strings.Join([]string{w.Joint, "keeps", []string{"first", "second"}[keeps]}, " "))
		}
		slices.Sort(out)
		return out
	}
	if got, want := key(b.Ways, true), key(a.Ways, false); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// There is no way out to tell while an end is not known, or when a joint has both.
func TestNoWays(t *testing.T) {
	m, _ := mustMatch(t)
	listed := pairNoRowHas()
	listed.Ends[1].Cap, listed.Ends[1].Across = []string{"1.062 in"}, []string{"3.625 in"}
	unknown := pairNoRowHas()
	unknown.Ends[1].Across = []string{"5.900 in"}
	one := pairNoRowHas()
	one.Ends = one.Ends[:1]
	for name, q := range map[string]matcher.Query{"a listed pair": listed, "an unknown end": unknown, "one end": one} {
		if a := identify(t, m, q); len(a.Ways) > 0 {
			t.Errorf("%s: got ways %+v, verdict %s", name, a.Ways, a.Verdict)
		}
	}
}

// Both yokes: the same two sizes read from bores and grooves lead to the same ways.
func TestWaysOfYokes(t *testing.T) {
	m, _ := mustMatch(t)
	a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{
		yoke("outside-clip", []string{"26.99 mm", "27.00 mm"}, []string{"84.78 mm"}, []string{"1.50 mm"}),
		yoke("outside-clip", []string{"34.95 mm", "34.94 mm"}, []string{"110.40 mm"}, []string{"2.00 mm"}),
	}})
	b := identify(t, m, pairNoRowHas())
	var got, want []string
	for _, w := range a.Ways {
		got = append(got, w.Joint)
	}
	for _, w := range b.Ways {
		want = append(want, w.Joint)
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q: %s %q", got, want, a.Verdict, a.Says.Because)
	}
}
