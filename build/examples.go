package build

import (
	"fmt"
	"html/template"
	"math"
	"slices"
	"strconv"
	"strings"

	"capspan/content"
	"capspan/static/matcher"
	"capspan/tables"
)

// exampleCore puts the guide's worked examples to the core while the site is built, so
// that their results are the chart's of today. The core is loaded when the first page
// asks; pages are read one after the other, so one is enough.
type exampleCore struct {
	*site
	core *matcher.Matcher
	err  error
}

func (e *exampleCore) load() (*matcher.Matcher, error) {
	if e.core == nil && e.err == nil {
		e.core, e.err = matcher.New(e.assets.Bytes("matcher.js"), Chart(e.set))
	}
	return e.core, e.err
}

// verdictNames are what the pages call a verdict.
var verdictNames = map[matcher.Verdict]string{
	matcher.Identified: "Identified", matcher.Possible: "Possible", matcher.Between: "Between sizes",
	matcher.NotInChart: "Not in the chart", matcher.MeasureAgain: "Measure again",
}

// answer is what the core says to a query in the form of the identify page's address.
func (e *exampleCore) answer(address string) (content.Answer, error) {
	core, err := e.load()
	if err != nil {
		return content.Answer{}, err
	}
	query, complaints, err := core.Decode(address)
	if err != nil {
		return content.Answer{}, err
	}
	if len(complaints) > 0 {
		return content.Answer{}, &content.Refusal{Rule: "bad-query", Fact: "the query cannot be read: " + complaints[0].Says}
	}
	answer, err := core.Identify(query)
	if err != nil {
		return content.Answer{}, err
	}
	made := content.Answer{Verdict: answer.Verdict}
	for _, size := range answer.Sizes {
		for _, ref := range size.Rows {
			made.Rows = append(made.Rows, ref[strings.IndexByte(ref, '/')+1:])
		}
	}
	w := &guideWriter{}
	w.raw(`<div class="answer"><div class="verdict verdict--`).text(answer.Verdict).raw(`"><p class="verdict__stamp">`)
	w.text(verdictNames[answer.Verdict]).raw(`</p><p class="verdict__head">`).text(answer.Says.Head).raw("</p></div>")
	w.sentences("Why", answer.Says.Because)
	for _, reading := range answer.Readings {
		if len(reading.SetAside) > 0 {
			w.raw("<p>").text(fmt.Sprintf("Not used: %s. %s", strings.Join(reading.SetAside, ", "), reading.Why)).raw("</p>")
		}
	}
	for _, slip := range answer.Slips {
		w.raw("<p>").text(slip.Says).raw("</p>")
	}
	e.rowsLeft(w, made.Rows)
	w.sentences("What it says to do next", answer.Says.Next)
	w.raw(`<p class="hint">Worked out when this page was made, with chart `).text(e.version.Name()).raw(". ")
	w.link(e.at("/identify/")+"#"+address, "Open these readings").raw("</p></div>")
	made.HTML = w.html()
	return made, nil
}

// rowsLeft names the rows an answer leaves, with their figures.
func (e *exampleCore) rowsLeft(w *guideWriter, ids []string) {
	const most = 6
	if len(ids) == 0 {
		return
	}
	w.raw("<p>Left: ")
	for n, id := range ids[:min(len(ids), most)] {
		if n > 0 {
			w.raw("; ")
		}
		link := e.rowLink(e.set.Find(id))
		w.link(link.Href, link.Text).text(" (" + link.Note + ")")
	}
	if len(ids) > most {
		w.text(fmt.Sprintf("; and %d more", len(ids)-most))
	}
	w.raw(".</p>")
}

func (w *guideWriter) sentences(title string, says []string) {
	if len(says) == 0 {
		return
	}
	w.raw("<p><strong>").text(title).raw("</strong></p><ul>")
	for _, s := range says {
		w.raw("<li>").text(s).raw("</li>")
	}
	w.raw("</ul>")
}

// The core's constants that say how far a reading with an instrument may be off, and
// what the pages call the instrument.
var apartTools = map[string]struct{ name, limit, step string }{
	"digital-caliper": {"a digital caliper", "caliper-limit-300", "digital-step"},
	"steel-rule":      {"a steel rule", "rule-limit", "rule-step"},
	"tape":            {"a tape", "tape-limit", "tape-step"},
}

// apart lists the sizes of the chart that an instrument cannot tell from a neighbour: the same
// hold and faces, and neither cap nor across further apart than two readings may be.
func (e *exampleCore) apart(tool string) (template.HTML, error) {
	known := []string{"digital-caliper", "steel-rule", "tape"}
	words, ok := apartTools[tool]
	if !ok {
		return "", &content.Refusal{Rule: "unknown-tool", Fact: fmt.Sprintf("no sizes are compared for the instrument %q", tool), Name: tool, Known: known}
	}
	core, err := e.load()
	if err != nil {
		return "", err
	}
	assumptions, err := core.Assumptions()
	if err != nil {
		return "", err
	}
	constant := func(id string) float64 {
		n := slices.IndexFunc(assumptions, func(a matcher.Assumption) bool { return a.ID == id })
		if n < 0 {
			panic("internal error: the core has no constant " + id)
		}
		return assumptions[n].Value
	}
	off := constant(words.limit) + constant(words.step)/2
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
	w.raw("<p>").text(fmt.Sprintf("One reading with %s may be off by %s: its limit and half a step. So two readings may differ by %s. "+
		"Of the %d sizes in the chart with known figures, %s a neighbour no further off than that.",
		words.name, inBoth(off), inBoth(2*off), len(sizes), have(len(groups)))).raw("</p>")
	const most = 12 // of a long list a few are enough to see the point
	if len(groups) > 0 {
		w.raw("<ul>")
		for _, group := range groups[:min(len(groups), most)] {
			w.raw("<li>").link(e.at(rowAddress(group[0].ID)), group[0].ID).text(" from ")
			for n, other := range group[1:] {
				if n > 0 {
					w.text(", ")
				}
				w.link(e.at(rowAddress(other.ID)), other.ID)
			}
			w.raw("</li>")
		}
		w.raw("</ul>")
		if len(groups) > most {
			w.raw("<p>").text(fmt.Sprintf("And %d more.", len(groups)-most)).raw("</p>")
		}
	}
	return w.html(), nil
}

// inBoth says a small length in millimetres and, to a thousandth, in inches.
func inBoth(mm float64) string {
	return fmt.Sprintf("%s mm (≈ %.3f in)", strconv.FormatFloat(math.Round(mm*1000)/1000, 'f', -1, 64), mm/25.4)
}

func have(n int) string {
	switch n {
	case 0:
		return "none has"
	case 1:
		return "one has"
	}
	return fmt.Sprintf("%d have", n)
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
