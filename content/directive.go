package content

import (
	"cmp"
	"fmt"
	"html"
	"slices"
	"strconv"
	"strings"

	"capspan/content/figure"
)

// The names of the directives, by their shape.
var (
	containers = []string{"caution", "figure", "step"}
	leaves     = []string{"answer", "apart", "contributing", "table"}
	inlines    = []string{"reading", "row"}
)

// resolving is the work on one page: the figures are numbered, so that their ids differ.
type resolving struct {
	*document
	page     *Page
	chart    Resolver
	base     string
	language string
	spoken   spokenNames
	words    figure.Words
	figures  int
}

// container checks a container's line and makes what needs the chart or the drawings.
func (r *resolving) container(c *container) {
	switch c.name {
	case "caution":
		r.parameters(c.name, c.Pos(), r.attributes(c.rest, c.at), 0)
	case "step":
		c.html = html.EscapeString(c.rest)
	case "figure":
		r.figure(c)
	default:
		hints := hintOf(c.name, containers)
		if slices.Contains(leaves, c.name) {
			hints = []string{fmt.Sprintf(`%q holds no text: write it on one line with two colons, ":: %s ..."`, c.name, c.name)}
		}
		r.problem(c.Pos(), "unknown-directive", fmt.Sprintf("unknown directive %q", c.name), hints...)
	}
	if !c.closed {
		r.problem(c.Pos(), "unclosed-directive", fmt.Sprintf("directive %q is not closed", c.name),
			fmt.Sprintf("end it with a line of %q", strings.Repeat(":", c.colons)))
	}
}

// leaf checks a directive of one line and asks the chart for what it shows.
func (r *resolving) leaf(l *leaf) {
	list := r.attributes(l.rest, l.at)
	switch l.name {
	case "table":
		r.table(l, list)
	case "answer":
		r.answer(l, list)
	case "apart":
		p := r.parameters(l.name, l.Pos(), list, 0, "tool")
		if tool, ok := p.need("tool"); ok && r.chart.Apart != nil {
			made, err := r.chart.Apart(tool.value)
			if err != nil {
				r.refuse(tool.at, err)
				return
			}
			l.html = string(made)
		}
	case "contributing":
		r.contributing(l, list)
	default:
		hints := hintOf(l.name, leaves)
		if slices.Contains(containers, l.name) {
			hints = []string{fmt.Sprintf(`%q holds text: open it with three colons and close it`, l.name)}
		}
		r.problem(l.Pos(), "unknown-directive", fmt.Sprintf("unknown directive %q", l.name), hints...)
	}
}

// contributing is a part of what a contributor looks up: an explained row, the kinds of
// sources, the rules. They say what the program says in its messages, in English.
func (r *resolving) contributing(l *leaf, list []attribute) {
	p := r.parameters(l.name, l.Pos(), list, 1)
	if len(p.words) == 0 {
		r.problem(l.Pos(), "missing-parameter", `"contributing" needs the name of a part`, "write :: contributing rules")
		return
	}
	if r.chart.Contributing == nil {
		return
	}
	made, err := r.chart.Contributing(p.words[0].value)
	if err != nil {
		r.refuse(p.words[0].at, err)
		return
	}
	l.html = rendered(made, r.spoken)
	if cmp.Or(r.language, English) != English {
		l.html = `<div lang="` + English + `">` + l.html + "</div>"
	}
}

// table is a shipped table, or the rows of it that are named.
func (r *resolving) table(l *leaf, list []attribute) {
	p := r.parameters(l.name, l.Pos(), list, 1, "rows")
	if len(p.words) == 0 {
		r.problem(l.Pos(), "missing-parameter", `"table" needs the id of a table`, "write :: table joints-wing")
		return
	}
	var rows []string
	if a, given := p.keyed["rows"]; given {
		rows = strings.Split(a.value, ",")
	}
	if r.chart.Table == nil {
		return
	}
	made, err := r.chart.Table(p.words[0].value, rows)
	if err != nil {
		r.refuse(p.words[0].at, err)
		return
	}
	l.html = string(made)
}

// answer puts a query to the core. The verdict the text counts on is written beside
// it: when the core concludes something else, the page is wrong and does not build.
func (r *resolving) answer(l *leaf, list []attribute) {
	p := r.parameters(l.name, l.Pos(), list, 0, "expect", "rows", "query")
	expect, expected := p.oneOf("expect", verdicts)
	query, asked := p.need("query")
	if !expected || !asked || r.chart.Answer == nil {
		return
	}
	answer, err := r.chart.Answer(query.value)
	if err != nil {
		r.refuse(query.at, err)
		return
	}
	if answer.Verdict != expect {
		r.problem(p.keyed["expect"].at, "stale-answer", fmt.Sprintf("the text counts on %q and the core says %q", expect, answer.Verdict),
			"mend the text around it, then the word")
	}
	if rows, given := p.keyed["rows"]; given {
		for _, row := range strings.Split(rows.value, ",") {
			if !slices.Contains(answer.Rows, row) {
				r.problem(rows.at, "stale-answer", fmt.Sprintf("the text counts on row %q, and the core leaves %q", row, answer.Rows))
			}
		}
	}
	l.html = string(answer.HTML)
}

// verdicts are what the core concludes.
var verdicts = []string{"identified", "possible", "between", "not-in-chart", "measure-again"}

// inline makes a length in both units, or a link to a row with its figures.
func (r *resolving) inline(n *inline) {
	switch n.name {
	case "reading":
		if r.chart.Reading == nil {
			return
		}
		reading, err := r.chart.Reading(n.rest)
		if err != nil {
			r.refuse(n.at, err)
			return
		}
		n.html = fmt.Sprintf(`<span class="num">%s (≈ %s)</span>`,
			html.EscapeString(unbroken(reading.Given)), html.EscapeString(unbroken(reading.Converted)))
	case "row":
		if r.chart.Row == nil {
			return
		}
		row, err := r.chart.Row(n.rest)
		if err != nil {
			r.refuse(n.at, err)
			return
		}
		n.html = fmt.Sprintf(`<a href="%s">%s</a> (%s)`, html.EscapeString(row.Href), html.EscapeString(row.Name), html.EscapeString(row.Figures))
	default:
		r.problem(n.from, "unknown-directive", fmt.Sprintf("unknown directive %q", n.name), hintOf(n.name, inlines)...)
	}
}

// unbroken keeps a number and its unit on one line.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }

// ordinal names the prefix of a figure's ids.
func ordinal(n int) string { return "fig" + strconv.Itoa(n) }
