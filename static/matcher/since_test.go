package matcher_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"capspan/static"
	"capspan/static/matcher"
)

// record is a made-up record of three issues; the chart's own name is the newest.
func record(now string) matcher.Record {
	change := func(of, column, what, old, new, why string, rows ...string) matcher.IssuedChange {
		return matcher.IssuedChange{Of: of, Column: column, What: what, Old: old, New: new, Why: why, Rows: append([]string{}, rows...)}
	}
	return matcher.Record{Format: 1, Chart: now, Issues: []matcher.Issue{
		{Chart: "2026-11-24-0000003", Date: "2026-11-24", Why: "two readers measured it", Changes: []matcher.IssuedChange{
			change("joints-inch/1310", "across", "value", "3.20 in", "3.219 in", "", "joints-inch/1310", "joints-conversion/7260-to-1310"),
			change("joints-inch/1610", "cap", "value", "1.9 in", "1.88 in", "", "joints-inch/1610")}},
		{Chart: "2026-11-10-0000002", Date: "2026-11-10", Why: "a year of letters", Changes: []matcher.IssuedChange{
			change("joints-inch/1350", "cap", "value", "1.06 in", "1.188 in", "the digits were another row's", "joints-inch/1350"),
			change("joints-metric/27x82-old", "", "retired", "cap 27 mm", "27x82", "printed twice", "joints-metric/27x82"),
			change("sources/profi", "", "title", "a", "b", "")}},
		{Chart: "2026-11-01-0000001", From: "2026-11-01-0000000", Date: "2026-11-01", Why: "the first", Changes: []matcher.IssuedChange{
			change("joints-inch/1310", "cap", "value", "1.060 in", "1.062 in", "", "joints-inch/1310")}},
	}}
}

// asked1310 is the answer to readings of a 1310.
func asked1310(t testing.TB) matcher.Answer {
	m, _ := mustMatch(t)
	return identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: []string{"1.062 in"}, Across: []string{"3.22 in"}}}})
}

func since(t testing.TB, r matcher.Record, made string, answer any) matcher.Since {
	t.Helper()
	s, err := matcher.ChangedSince(static.FS, r, made, answer)
	if err != nil {
		t.Fatalf("%q: %v", made, err)
	}
	return s
}

// An older link is told which of its rows changed, with old and new in both units and why;
// rows that have nothing to do with its answer are not told of.
func TestChangedSince(t *testing.T) {
	answer := asked1310(t)
	now := "2026-11-24-0000003"
	for _, c := range []struct {
		made, standing string
		rows           []string
		says           []string
	}{
		{now, "same", nil, nil},
		{"2026-11-10-0000002", "older", []string{"joints-inch/1310"},
			[]string{"1 row its answer rests on has changed.", "1310: across was 3.20 in (≈ 81.28 mm) and is 3.219 in (≈ 81.76 mm), in chart 2026-11-24-0000003. Two readers measured it."}},
		// 1350 is not named by the answer: by its cap of then it would have been.
		{"2026-11-01-0000001", "older", []string{"joints-inch/1310", "joints-inch/1350"},
			[]string{"2 rows", "1350: cap was 1.06 in (≈ 26.92 mm) and is 1.188 in (≈ 30.18 mm), in chart 2026-11-10-0000002. The digits were another row's."}},
		// The chart before the first recorded one is known by name.
		{"2026-11-01-0000000", "older", []string{"joints-inch/1310", "joints-inch/1350"}, []string{"1310: cap was 1.060 in (≈ 26.92 mm) and is 1.062 in (≈ 26.97 mm), in chart 2026-11-01-0000001. The first."}},
		{"2026-10-30-abcdef0", "partly", []string{"joints-inch/1310", "joints-inch/1350"}, []string{"is not in the record of changes", "more may have changed"}},
		{"2026-11-24-abcdef0", "unknown", nil, []string{"there is no record of it"}},
		{"2027-01-01-abcdef0", "newer", nil, []string{"newer than chart 2026-11-24-0000003", "Load the page again"}},
		{"yesterday", "no-name", nil, []string{"no chart is called so"}},
	} {
		got := since(t, record(now), c.made, answer)
		slices.Sort(got.Rows)
		said := got.Head + "\n" + strings.Join(got.Changes, "\n")
		if got.Standing != c.standing || !slices.Equal(got.Rows, append([]string{}, c.rows...)) {
			t.Errorf("%s: %s %q, want %s %q\n%s", c.made, got.Standing, got.Rows, c.standing, c.rows, said)
		}
		for _, words := range c.says {
			if !strings.Contains(said, words) {
				t.Errorf("%s: nothing says %q:\n%s", c.made, words, said)
			}
		}
		if strings.Contains(said, "1610") || strings.Contains(said, "profi") {
			t.Errorf("%s: told of what does not matter:\n%s", c.made, said)
		}
		if (c.standing == "same") != (got.Head == "") {
			t.Errorf("%s: head %q", c.made, got.Head)
		}
	}
	// None that matters changed, and that is said; a chart that was not recorded says that too.
	far := matcher.Record{Format: 1, Chart: "2026-11-25-0000004", Issues: record(now).Issues}
	far.Issues[0].Changes = far.Issues[0].Changes[1:]
	got := since(t, far, "2026-11-10-0000002", answer)
	if !strings.Contains(got.Head, "None of the rows its answer rests on has changed since.") || !strings.Contains(got.Head, "2026-11-25-0000004 is not in the record of changes yet") {
		t.Errorf("nothing changed: %s", got.Head)
	}
}

// A conversion joint follows the rows its ends are like, and a part its own table.
func TestChangedSinceThroughOthers(t *testing.T) {
	m, _ := mustMatch(t)
	answer := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "inside-clip", Faces: "groove-inner", Cap: []string{"1.062 in"}, Across: []string{"2.54 in"}},
		{Hold: "outside-clip", Cap: []string{"1.062 in"}, Across: []string{"3.219 in"}}}})
	answer.Near, answer.SameFigures, answer.Ends = nil, nil, nil
	answer.Sizes = []matcher.Size{{Rows: []string{"joints-conversion/7260-to-1310"}}}
	answer.Near, answer.SameFigures, answer.Ends, answer.Conversions = []matcher.Size{}, []matcher.Size{}, []matcher.EndFound{}, []string{}
	answer.Slips, answer.Ways = []matcher.SlipFound{}, []matcher.Way{}
	got := since(t, record("2026-11-24-0000003"), "2026-11-10-0000002", answer)
	if !slices.Equal(got.Rows, []string{"joints-conversion/7260-to-1310"}) || !strings.HasPrefix(got.Changes[0], "7260-to-1310 (by 1310): across was") {
		t.Errorf("%q: %q", got.Rows, got.Changes)
	}

	p, all := mustParts(t), partTables(t)
	part := askPart(t, p, all["pto-shafts"], matcher.PartQuery{Table: "pto-shafts", Values: map[string][]string{"splines": {"6"}, "diameter": {"34.80 mm"}}})
	r := matcher.Record{Format: 1, Chart: "2026-11-24-0000003", Issues: []matcher.Issue{{Chart: "2026-11-24-0000003", Date: "2026-11-24", Changes: []matcher.IssuedChange{
		{Of: "pto-shafts/pto-type-1", Column: "splines", What: "value", Old: "8", New: "6", Why: "miscounted", Rows: []string{"pto-shafts/pto-type-1"}},
		{Of: "pto-shafts/pto-type-4", Column: "diameter", What: "value", Old: "57 mm", New: "57.5 mm", Rows: []string{"pto-shafts/pto-type-4"}}}},
		{Chart: "2026-11-01-0000001", Date: "2026-11-01", Changes: []matcher.IssuedChange{}}}}
	got = since(t, r, "2026-11-01-0000001", part)
	if !slices.Equal(got.Rows, []string{"pto-shafts/pto-type-1"}) || got.Changes[0] != "pto-type-1: splines was 8 and is 6, in chart 2026-11-24-0000003. Miscounted." {
		t.Errorf("%q: %q", got.Rows, got.Changes)
	}
}

// Whatever stands in an address as a chart's name, something is said and nothing throws.
func FuzzChangedSince(f *testing.F) {
	answer := asked1310(f)
	for _, made := range []string{"2026-11-10-0000002", "9999-99-99-fffffff", "__proto__", "", "2026-11-10-000000g", "\U0001f600"} {
		f.Add(made)
	}
	f.Fuzz(func(t *testing.T, made string) {
		if !utf8.ValidString(made) {
			return
		}
		if got := since(t, record("2026-11-24-0000003"), made, answer); got.Head == "" {
			t.Errorf("%q: nothing is said", made)
		}
	})
}
