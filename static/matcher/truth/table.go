package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
)

// counted is a column with what was counted in it.
type counted struct {
	column
	result
}

// table prints what was counted over one chart.
type table struct {
	title   string
	dense   bool
	rows    int
	columns []counted
	bins    []float64
}

func (t table) print(w io.Writer) {
	fmt.Fprintf(w, "\n== Over %s, %d rows\n", t.title, t.rows)
	t.verdicts(w)
	t.slips(w)
	t.reliability(w)
	t.wanted(w)
	fmt.Fprintln(w, "\nColumns")
	for _, c := range t.columns {
		fmt.Fprintf(w, "  %-24s %5.0f rows  %s\n", c.ID, c.Tally["rows"], c.Says)
	}
	for _, c := range t.columns {
		for _, s := range c.Shown {
			fmt.Fprintf(w, "  named wrongly in %s: %s\n", c.ID, s)
		}
	}
}

func share(x, n float64) float64 {
	if n == 0 {
		return 0
	}
	return 100 * x / n
}

func (t table) verdicts(w io.Writer) {
	fmt.Fprintf(w, "\nVerdicts, percent of the sets; right: the joint's own size is named or among those left. Alike: another row's size is named, and the joint is within what that row allows.\n")
	fmt.Fprintf(w, "%-24s%9s |%11s%11s%11s%9s%9s%9s%9s%9s%9s |%8s |%9s%9s\n", "", "sets", "identified", "identified", "identified", "possible", "possible",
		"between", "between", "not in", "measure", "slip", "nearest", "nearest")
	fmt.Fprintf(w, "%-24s%9s |%11s%11s%11s%9s%9s%9s%9s%9s%9s |%8s |%9s%9s\n", "column", "", "right", "alike", "wrong", "right", "wrong",
		"right", "wrong", "chart", "again", "offered", "right", "wrong")
	for _, c := range t.columns {
		if c.Slip {
			continue
		}
		n := c.Tally["sets"]
		p := func(name string) float64 { return share(c.Tally[name], n) }
		fmt.Fprintf(w, "%-24s%9.0f |%11.3f%11.4f%11.4f%9.3f%9.3f%9.3f%9.3f%9.3f%9.3f |%8.3f |%9.3f%9.3f\n", c.ID, n,
			p("identified right"), p("identified alike"), p("identified wrong"), p("possible right"), p("possible wrong"), p("between right"), p("between wrong"),
			p("not-in-chart"), p("measure-again"), p("slip offered"), p("peer right"), p("peer wrong"))
	}
}

func (t table) slips(w io.Writer) {
	t.offered(w)
	fmt.Fprintf(w, "\nSlips, percent of the sets; named: first of the slips offered; \"plainly a row\": the readings agree with a row as they are, so no slip is looked for; \"of the rest\": named rightly where they do not.\n")
	fmt.Fprintf(w, "%-24s%9s |%8s%9s%9s%9s |%10s%10s%9s\n", "slip", "sets", "named", "of the", "and size", "another", "identified", "plainly", "nothing")
	fmt.Fprintf(w, "%-24s%9s |%8s%9s%9s%9s |%10s%10s%9s\n", "", "", "", "rest", "named", "offered", "wrong", "a row", "offered")
	for _, c := range t.columns {
		if !c.Slip {
			continue
		}
		n := c.Tally["sets"]
		p := func(name string) float64 { return share(c.Tally[name], n) }
		rows := p("identified right") + p("identified alike") + p("identified wrong") + p("possible right") + p("possible wrong") + p("between right") + p("between wrong")
		fmt.Fprintf(w, "%-24s%9.0f |%8.2f%9.2f%9.2f%9.2f |%10.3f%10.2f%9.2f\n", c.ID, n, p("slip named"), share(p("slip named"), 100-rows), p("slip and size named"),
			p("slip offered")-p("slip named"), p("identified wrong"), rows, 100-p("slip offered")-rows)
	}
}

func (t table) reliability(w io.Writer) {
	for _, c := range t.columns {
		if c.ID != "mixed" {
			continue
		}
		fmt.Fprintf(w, "\nReliability, column mixed: of answers that give their likeliest size a probability p, how many are right.\n")
		fmt.Fprintf(w, "%16s%10s%9s%9s%9s%9s\n", "p", "answers", "mean p", "right", "off by", "± s.e.")
		for i := 1; i < len(t.bins); i++ {
			n := c.Tally[fmt.Sprintf("bin %d", i)]
			if n == 0 {
				continue
			}
			p, right := c.Tally[fmt.Sprintf("bin %d p", i)]/n, c.Tally[fmt.Sprintf("bin %d right", i)]/n
			fmt.Fprintf(w, "%7.2f ..%6.2f%10.0f%9.3f%9.3f%9.3f%9.3f\n", t.bins[i-1], t.bins[i], n, p, right, right-p, math.Sqrt(right*(1-right)/n))
		}
	}
}

// offered lists the slips that were offered where none was made.
func (t table) offered(w io.Writer) {
	for _, c := range t.columns {
		if c.Slip || c.Tally["slip offered"] == 0 {
			continue
		}
		var list []string
		for name, n := range c.Tally {
			if slip, ok := strings.CutPrefix(name, "offered "); ok {
				list = append(list, fmt.Sprintf("%s %.3f", slip, share(n, c.Tally["sets"])))
			}
		}
		slices.Sort(list)
		fmt.Fprintf(w, "  offered in %s, percent: %s\n", c.ID, strings.Join(list, ", "))
	}
}
