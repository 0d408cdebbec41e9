package build

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables/compare"
)

// Comparing costs loading both charts, bundling the core, and the queries near what
// changed: under 0.5 s is meant for a row of the shipped chart, under 5 s for ten
// thousand rows.
func BenchmarkCompare(b *testing.B) {
	shipped := inEnglish().Tables
	whole, one, all := manyRows(0, ""), manyRows(0, "57.01"), manyRows(1, "")
	for _, edit := range []struct {
		name         string
		older, newer fs.FS
	}{
		{"133 rows, a plain one", shipped, moveAcross(b, "1000", "2.190")},
		{"133 rows, one with 16 conversions", shipped, moveAcross(b, "1310", "3.220")},
		{"10000 rows, one", whole, one},
		{"10000 rows, every one", whole, all},
	} {
		src := inEnglish()
		src.Tables = edit.newer
		b.Run(edit.name, func(b *testing.B) {
			for b.Loop() {
				c, problems, err := Compare(edit.older, src, false)
				if err != nil || c == nil || c.Empty() {
					b.Fatal(err, problems)
				}
				b.ReportMetric(float64(c.Asked), "queries")
				b.ReportMetric(float64(len(c.Changes)), "changes")
			}
		})
	}
}

// BenchmarkEffectQuery is what one query more costs, once the core has made its index:
// of those that a comparison asks first, in turn.
func BenchmarkEffectQuery(b *testing.B) {
	core, problems := static.Core(static.FS)
	if problems.Blocked() {
		b.Fatal(problems)
	}
	for _, edit := range []struct {
		name         string
		older, newer fs.FS
	}{
		{"133 rows, a plain one", inEnglish().Tables, moveAcross(b, "1000", "2.190")},
		{"133 rows, one with 16 conversions", inEnglish().Tables, moveAcross(b, "1310", "3.220")},
		{"10000 rows, one", manyRows(0, ""), manyRows(0, "57.01")},
	} {
		was, is := mustLoadTables(b, edit.older), mustLoadTables(b, edit.newer)
		c := &Comparison{Diff: compare.Sets(was, is)}
		asked := c.choose(Chart(was), Chart(is), false)
		m, err := matcher.New(core, Chart(is))
		if err != nil {
			b.Fatal(err)
		}
		for _, q := range asked { // the first makes the index
			if _, err := m.Identify(q.query); err != nil {
				b.Fatal(err)
			}
		}
		b.Run(edit.name, func(b *testing.B) {
			for n := 0; b.Loop(); n++ {
				if _, err := m.Identify(asked[n%len(asked)].query); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// manyRows is a made-up chart of 10,000 rows in ten tables: what is measured is the
// time, and no figure is a joint's. Later moves every cap, first is another distance
// across for the first row.
func manyRows(later int, first string) fs.FS {
	out := fstest.MapFS{}
	for t := range 10 {
		var b strings.Builder
		fmt.Fprintf(&b, "table: t%d\ntitle: Made up\nabout: To measure the time\nversion: 1.%d.0\ndate: 2026-11-25\nunit: mm\ncolumns:\n"+
			"  hold:   {label: Hold, kind: hold}\n  cap:    {label: Cap, kind: length, least: 10, greatest: 200}\n"+
			"  across: {label: Across, kind: length, least: 20, greatest: 600}\nrows:\n", t, later)
		for n := range 1000 {
			across := fmt.Sprintf("%d.%02d", 57+n/4, n%4*25)
			if t == 0 && n == 0 && first != "" {
				across = first
			}
			fmt.Fprintf(&b, "  - id: r%d-%d\n    hold:   {is: inside-clip, basis: memory}\n    cap:    {is: %d.%d, basis: memory}\n"+
				"    across: {is: %s, faces: groove-inner, basis: memory}\n", t, n, 20+t*10, n%5+later, across)
		}
		out[fmt.Sprintf("t%d.yaml", t)] = &fstest.MapFile{Data: []byte(b.String())}
	}
	return out
}
