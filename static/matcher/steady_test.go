package matcher_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// Twins are one size: nobody is asked to choose between names of the same thing.
func TestTwinsAreOneSize(t *testing.T) {
	m, chart := mustMatch(t)
	size := map[string]int{}
	for _, row := range chart.Rows {
		if len(row.Ends) == 1 {
			size[row.Ref] = row.Size
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		a := identify(rt, m, around(rt, chart))
		seen := map[int]bool{}
		for _, s := range a.Sizes {
			n, plain := size[s.Rows[0]]
			if plain && seen[n] {
				rt.Fatalf("size of %s is left twice: %q", s.Rows[0], rows(a.Sizes))
			}
			seen[n] = plain
		}
	})
}

func TestSameAnswerTwice(t *testing.T) {
	m, _ := mustMatch(t)
	fresh, _ := mustMatch(t)
	query := matcher.Query{Ends: []matcher.QueryEnd{{Hold: "unknown", Cap: []string{"27.0 mm"}}}}
	first, err := m.Identify(query)
	if err != nil {
		t.Fatal(err)
	}
	for _, again := range []*matcher.Matcher{m, fresh} {
		second, err := again.Identify(query)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(first, second); diff != "" {
			t.Error(diff)
		}
	}
}

func TestManyReadingsDoNotFreeze(t *testing.T) {
	m, _ := mustMatch(t)
	caps := slices.Repeat([]string{"1.062 in"}, 100)
	a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: caps, Across: slices.Repeat([]string{"3.219 in"}, 100)}}})
	if a.Verdict != matcher.Identified {
		t.Errorf("100 readings: got %s", a.Verdict)
	}
	a = identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: slices.Repeat(caps, 100)}}})
	if a.Verdict != matcher.MeasureAgain || len(a.Complaints) != 1 {
		t.Errorf("10000 readings: got %s, %d complaints", a.Verdict, len(a.Complaints))
	}
}

func BenchmarkIdentify(b *testing.B) {
	m, chart := mustMatch(b)
	b.ReportMetric(float64(len(chart.Rows)), "rows")
	for _, bench := range []struct {
		name string
		end  matcher.QueryEnd
	}{
		{"identified", matcher.QueryEnd{Hold: "outside-clip", Cap: []string{"1.060 in", "1.061 in"}, Across: []string{"3.226 in", "3.221 in", "3.222 in"}}},
		{"cap-only", matcher.QueryEnd{Hold: "unknown", Cap: []string{"27.00 mm"}}},
	} {
		b.Run(bench.name, func(b *testing.B) {
			for b.Loop() {
				identify(b, m, matcher.Query{Ends: []matcher.QueryEnd{bench.end}})
			}
		})
	}
}
