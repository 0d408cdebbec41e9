package main

import (
	"fmt"
	"io"
	"math"
)

// A figure is something the bench is asked to show, in percent of a column's sets.
type figure struct {
	column, says, count string
	limit               float64
	atLeast             bool // else at most
}

// figures are those of the columns that are no slips; a slip has its own in slips.ts.
// The shipped chart may name one listed joint in 100,000 wrongly, the dense one in 10,000.
func figures(dense bool) []figure {
	listed := 0.001
	if dense {
		listed = 0.01
	}
	return []figure{
		{"listed", "named outright and wrongly", "identified wrong", listed, false},
		{"settled", "named outright and wrongly", "identified wrong", listed, false},
		{"no-row", "named outright", "identified wrong", 0.01, false},
		{"no-row-edge", "named outright", "identified wrong", 0.01, false},
		{"settled", "named outright and rightly", "identified right", 97, true},
		{"rule", "named outright", "identified right", 0, false},
		{"listed", "a slip offered on good readings", "slip offered", 0.5, false},
		{"settled", "a slip offered on good readings", "slip offered", 0.5, false},
	}
}

// calibrated is how far, in points, a share may lie from the probability that was given.
const calibrated = 0.02

// wanted prints each figure beside what was counted.
func (t table) wanted(w io.Writer) {
	fmt.Fprintln(w, "\nFigures asked for")
	for _, f := range figures(t.dense) {
		for _, c := range t.columns {
			if c.ID == f.column {
				verdict(w, c.ID, f.says, share(c.Tally[f.count], c.Tally["sets"]), f.limit, f.atLeast)
			}
		}
	}
	for _, c := range t.columns {
		if c.Tally["several in reach"] > 0 {
			verdict(w, c.ID, "all named, of several in reach", share(c.Tally["all in reach named"], c.Tally["several in reach"]), 99, true)
		}
		if c.Slip && c.Least > 0 {
			verdict(w, c.ID, "called by its name", share(c.Tally["slip named"], c.Tally["sets"]), 100*c.Least, true)
		}
		if c.ID == "mixed" {
			t.calibration(w, c)
		}
	}
}

func verdict(w io.Writer, column, says string, got, limit float64, atLeast bool) {
	most, met := "at most", got <= limit
	if atLeast {
		most, met = "at least", got >= limit
	}
	fmt.Fprintf(w, "  %-8s %-24s %-34s %8.4f %%, %s %g\n", word(met), column, says, got, most, limit)
}

func word(met bool) string {
	if met {
		return "met"
	}
	return "NOT MET"
}

// calibration counts the answers that stand in a line of the reliability table that is
// off by more than may be, chance allowed for: a line is out when two standard errors do
// not bring it in.
func (t table) calibration(w io.Writer, c counted) {
	var out, all float64
	for i := 1; i < len(t.bins); i++ {
		n := c.Tally[fmt.Sprintf("bin %d", i)]
		if n == 0 {
			continue
		}
		p, right := c.Tally[fmt.Sprintf("bin %d p", i)]/n, c.Tally[fmt.Sprintf("bin %d right", i)]/n
		all += n
		if math.Abs(right-p)-2*math.Sqrt(right*(1-right)/n) > calibrated {
			out += n
		}
	}
	verdict(w, c.ID, "answers off by more than 2 points", share(out, all), 0, false)
}
