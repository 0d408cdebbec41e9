package build

import (
	"fmt"
	"html/template"
	"maps"
	"math"
	"slices"
	"strconv"

	"capspan/content"
	"capspan/content/figure"
	"capspan/static/matcher"
	"capspan/tables"
)

// The core's constants that say how far a reading with an instrument may be off.
var apartTools = map[string]struct{ limit, step string }{
	"digital-caliper": {"caliper-limit-300", "digital-step"},
	"steel-rule":      {"rule-limit", "rule-step"},
	"tape":            {"tape-limit", "tape-step"},
}

// apart lists the sizes of the chart that an instrument cannot tell from a neighbour: the same
// hold and faces, and neither cap nor across further apart than two readings may be.
func (e *exampleCore) apart(tool string) (template.HTML, error) {
	of, ok := apartTools[tool]
	if !ok {
		return "", &content.Refusal{Rule: "unknown-tool", Fact: fmt.Sprintf("no sizes are compared for the instrument %q", tool), Name: tool, Known: slices.Sorted(maps.Keys(apartTools))}
	}
	if e.unbundled != nil {
		return "", nil // a check has asked what it can
	}
	constant := func(id string) float64 {
		n := slices.IndexFunc(e.method, func(a matcher.Assumption) bool { return a.ID == id })
		if n < 0 {
			panic("internal error: the core has no constant " + id)
		}
		return e.method[n].Value
	}
	off := constant(of.limit) + constant(of.step)/2
	sizes := measurable(e.set)
	var groups [][]*tables.Row
	for _, row := range sizes {
		group := []*tables.Row{row}
		for _, other := range sizes {
			if other != row && alike(row, other, 2*off) {
				group = append(group, other)
			}
		}
		if len(group) > 1 {
			groups = append(groups, group)
		}
	}
	w := &guideWriter{}
	w.raw("<p>").text(e.word("apart."+tool, "off", e.figures(inBoth(off)), "twice", e.figures(inBoth(2*off))) + " " +
		e.neighbours(len(sizes), len(groups))).raw("</p>")
	const most = 12 // of a long list a few are enough to see the point
	if len(groups) > 0 {
		w.raw("<ul>")
		for _, group := range groups[:min(len(groups), most)] {
			w.raw("<li>").link(e.at(e.placeOf(group[0])), group[0].ID).text(" " + e.word("apart.from") + " ")
			for n, other := range group[1:] {
				if n > 0 {
					w.text(", ")
				}
				w.link(e.at(e.placeOf(other)), other.ID)
			}
			w.raw("</li>")
		}
		w.raw("</ul>")
		if len(groups) > most {
			w.raw("<p>").text(e.word("apart.more", "n", len(groups)-most)).raw("</p>")
		}
	}
	return w.html(), nil
}

// neighbours says how many of the sizes have one too near to tell.
func (e *exampleCore) neighbours(all, n int) string {
	if n == 0 {
		return e.word("apart.no-sizes", "all", all)
	}
	return e.word("apart.sizes", "all", all, "n", n)
}

// inBoth says a small length in millimetres and, to a thousandth, in inches.
func inBoth(mm float64) string {
	return fmt.Sprintf("%s mm (≈ %.3f in)", strconv.FormatFloat(math.Round(mm*1000)/1000, 'f', -1, 64), mm/figure.MMPerInch)
}

// measurable gives one row for each size of a plain joint that has a hold, faces, cap
// and across to compare.
func measurable(set *tables.Set) []*tables.Row {
	var rows []*tables.Row
	for _, size := range set.Sizes() {
		row := size[0]
		if len(row.Ends) != 1 {
			continue
		}
		end := row.Ends[0]
		if end.Hold.State == tables.Given && end.Cap.State == tables.Given && end.Across.State == tables.Given {
			rows = append(rows, row)
		}
	}
	return rows
}

func alike(a, b *tables.Row, within float64) bool {
	x, y := a.Ends[0], b.Ends[0]
	const rounding = 1e-9 // floats of exact figures: an equal gap still counts as within
	return x.Hold.Text == y.Hold.Text && x.Across.Faces == y.Across.Faces &&
		math.Abs(x.Cap.Quantity.Float()-y.Cap.Quantity.Float()) <= within+rounding &&
		math.Abs(x.Across.Quantity.Float()-y.Across.Quantity.Float()) <= within+rounding
}
