package tables

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"
)

// crowded draws a chart in which many joints are near each other, equal or held otherwise.
func crowded(t *rapid.T) *Set {
	var b strings.Builder
	b.WriteString("table: x\ntitle: X\nabout: Invented\nversion: 1.0.0\ndate: 2026-11-25\nunit: mm\ncolumns:\n" +
		"  hold:   {label: Hold, kind: hold}\n  cap:    {label: Cap, kind: length, least: 1, greatest: 900}\n" +
		"  across: {label: Across, kind: length, least: 1, greatest: 900}\nrows:\n")
	n := rapid.IntRange(1, 30).Draw(t, "rows")
	pick := func(words ...string) string { return rapid.SampledFrom(words).Draw(t, "word") }
	for i := range n {
		if i > 2 && rapid.IntRange(0, 4).Draw(t, "conversion") == 0 {
			one, other := rapid.IntRange(0, 2).Draw(t, "one"), rapid.IntRange(0, 2).Draw(t, "other")
			fmt.Fprintf(&b, "  - id: r%d\n    ends: [{like: r%d}, {like: r%d}]\n    basis: memory\n", i, one, other)
			continue
		}
		fmt.Fprintf(&b, "  - id: r%d\n    hold:   {is: %s, basis: memory}\n    cap:    {is: %s, basis: memory}\n    across: {is: %s, faces: unknown, basis: memory}\n",
			i, pick("outside-clip", "inside-clip", "unknown"), pick("27", "27.0", "27.04", "28", "30"), pick("80", "80.1", "80.15", "82", "90"))
		if i > 0 && rapid.Bool().Draw(t, "twin") {
			fmt.Fprintf(&b, "    twins: [r%d]\n", rapid.IntRange(0, i-1).Draw(t, "of"))
		}
	}
	set, _ := Load(fstest.MapFS{"x.yaml": {Data: []byte(b.String())}}) // twins that cannot be are no twins
	return set
}

// What the index finds is what a plain look at the whole chart finds, in the same order.
func TestNeighboursAreThoseOfAPlainScan(t *testing.T) {
	compare := func(t interface{ Fatalf(string, ...any) }, set *Set) {
		for row := range set.rows() {
			for _, n := range []int{0, 1, 3, 50} {
				if got, want := ids(set.Near(row, n)), ids(nearByScan(set, row, n)); !slices.Equal(got, want) {
					t.Fatalf("near %s: %v, want %v", row.ID, got, want)
				}
			}
			group := func(other *Row) any { // four groups, of which one is passed over
				if other.at%4 == 0 {
					return nil
				}
				return other.at % 4
			}
			var others []*Row
			for _, other := range nearByScan(set, row, len(ids(slices.Collect(set.rows())))) {
				if g := group(other); g != nil && len(others) < 2 && !slices.ContainsFunc(others, func(o *Row) bool { return group(o) == g }) {
					others = append(others, other)
				}
			}
			if got, want := ids(set.NearOthers(row, 2, group)), ids(others); !slices.Equal(got, want) {
				t.Fatalf("groups near %s: %v, want %v", row.ID, got, want)
			}
			var same, like []*Row
			size := set.sizeOf(row)
			for other := range set.rows() {
				alike := endsAgree(row, other, func(e, f *End) bool { return figuresAgree(e, f, false) })
				if other != row && alike && !sameHold(row, other) && !slices.Contains(row.Twins, other) {
					same = append(same, other)
				}
				if slices.ContainsFunc(other.Ends, func(e End) bool { return e.Like != nil && slices.Contains(size, e.Like) }) {
					like = append(like, other)
				}
			}
			if got, want := ids(set.SameFigures(row)), ids(same); !slices.Equal(got, want) {
				t.Fatalf("the figures of %s: %v, want %v", row.ID, got, want)
			}
			if got, want := ids(set.Conversions(row)), ids(like); !slices.Equal(got, want) {
				t.Fatalf("conversions of %s: %v, want %v", row.ID, got, want)
			}
		}
	}
	compare(t, shippedSet(t))
	rapid.Check(t, func(t *rapid.T) { compare(t, crowded(t)) })
}

func nearByScan(set *Set, row *Row, n int) []*Row {
	type near struct {
		row *Row
		mm  float64
	}
	var found []near
	size := set.sizeOf(row)
	for other := range set.rows() {
		if other == row || slices.Contains(size, other) || slices.Contains(row.Twins, other) || !sameHold(row, other) {
			continue
		}
		if mm := away(row, other); !math.IsInf(mm, 1) {
			found = append(found, near{other, mm})
		}
	}
	slices.SortStableFunc(found, func(a, b near) int { return cmp.Compare(a.mm, b.mm) })
	var out []*Row
	for _, f := range found[:min(n, len(found))] {
		out = append(out, f.row)
	}
	return out
}
