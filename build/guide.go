package build

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"capspan/content"
	"capspan/content/figure"
	"capspan/tables"
)

// resolver answers what the guide's directives ask. It is made once tables and scripts
// are loaded; package content knows neither.
func (s *site) resolver(core *exampleCore) content.Resolver {
	return content.Resolver{Row: s.guideRow, Table: s.guideTable, Figure: s.guideFigure,
		Reading: s.guideReading, Answer: core.answer, Apart: core.apart, Contributing: s.guideContributing}
}

// guideContributing is a part of what a contributor looks up, the same as in the README.
func (s *site) guideContributing(part string) (string, error) {
	switch part {
	case "row":
		return "```yaml\n" + s.contributing.Row + "```\n", nil
	case "sources":
		return s.contributing.Sources, nil
	case "rules":
		return s.contributing.Rules, nil
	}
	return "", &content.Refusal{Rule: "unknown-part", Fact: fmt.Sprintf("no part is called %q", part), Name: part, Known: []string{"row", "sources", "rules"}}
}

// joint finds a row with ends by its id.
func (s *site) joint(id string) (*tables.Row, error) {
	row := s.set.Find(id)
	if row != nil && len(row.Ends) > 0 {
		return row, nil
	}
	var known []string
	for _, t := range s.set.Tables {
		for _, r := range t.Rows {
			if len(r.Ends) > 0 {
				known = append(known, r.ID)
			}
		}
	}
	return nil, &content.Refusal{Rule: "unknown-row", Fact: fmt.Sprintf("no joint of the chart is called %q", id), Name: id, Known: known}
}

func (s *site) guideRow(id string) (content.Row, error) {
	row, err := s.joint(id)
	if err != nil {
		return content.Row{}, err
	}
	link := s.rowLink(row)
	return content.Row{Name: link.Text, Href: link.Href, Figures: link.Note}, nil
}

func (s *site) guideFigure(id string) (figure.JointDrawing, error) {
	row, err := s.joint(id)
	if err != nil {
		return figure.JointDrawing{}, err
	}
	return s.drawing(row), nil
}

// guideReading reads a length with its unit, as the tables do, and converts it exactly.
func (s *site) guideReading(text string) (content.Reading, error) {
	digits, unit := text, ""
	if i := strings.LastIndexByte(text, ' '); i >= 0 {
		digits, unit = strings.TrimSpace(text[:i]), text[i+1:]
	}
	if unit != string(tables.Inch) && unit != string(tables.Millimetre) {
		return content.Reading{}, &content.Refusal{Rule: "bad-reading",
			Fact: fmt.Sprintf("%q has no unit: end it with in or mm, as in 1.062 in", text)}
	}
	q, err := tables.ParseQuantity(digits, tables.Unit(unit))
	if err != nil {
		return content.Reading{}, &content.Refusal{Rule: "bad-reading", Fact: err.Error()}
	}
	return content.Reading{Given: s.figures(q.String()), Converted: s.figures(q.Converted())}, nil
}

// guideTable is a table of the chart, or some rows of it, as a guide page shows it:
// every column, both units, and the basis of each row.
func (s *site) guideTable(id string, rows []string) (template.HTML, error) {
	var known []string
	for _, t := range s.set.Tables {
		known = append(known, t.ID)
	}
	at := slices.Index(known, id)
	if at < 0 {
		return "", &content.Refusal{Rule: "unknown-table", Fact: fmt.Sprintf("no table is called %q", id), Name: id, Known: known}
	}
	t := s.set.Tables[at]
	shown := t.Rows
	if len(rows) > 0 {
		shown = nil
		var ids []string
		for _, row := range t.Rows {
			ids = append(ids, row.ID)
		}
		for _, want := range rows {
			n := slices.Index(ids, want)
			if n < 0 {
				return "", &content.Refusal{Rule: "unknown-row", Fact: fmt.Sprintf("table %q has no row %q", id, want), Name: want, Known: ids}
			}
			shown = append(shown, t.Rows[n])
		}
	}
	w := &guideWriter{}
	w.tableHead(t.Title, s.at(tableAddress(t)), s.lang(t.Title))
	w.raw(`<th scope="col">`).text(s.word("table.row")).raw("</th>")
	for _, c := range t.Columns {
		w.raw(`<th scope="col"` + s.lang(c.Label) + ">").text(c.Label).raw("</th>")
	}
	w.raw(`<th scope="col">`).text(s.word("table.basis")).raw("</th></tr></thead><tbody>")
	for _, row := range shown {
		w.raw(`<tr><th scope="row">`)
		if len(row.Ends) > 0 {
			w.link(s.at(s.placeOf(row)), row.ID)
		} else {
			w.text(row.ID)
		}
		w.raw("</th>")
		for _, c := range t.Columns {
			w.raw("<td>")
			for n, cell := range s.columnCells(row, c) {
				if n > 0 {
					w.raw("<br>")
				}
				if lang := s.lang(cell.Text); lang != "" {
					w.raw("<span" + lang + ">").text(cell.Text).raw("</span>")
				} else {
					w.text(unbroken(cell.Text))
				}
				if cell.Converted != "" {
					w.text(" (≈\u00a0" + unbroken(cell.Converted) + ")")
				}
				if cell.Note != "" {
					w.text(", " + cell.Note)
				}
			}
			w.raw("</td>")
		}
		w.raw("<td>").text(s.basisWord(row.Basis)).raw("</td></tr>")
	}
	w.raw("</tbody></table></div>")
	if len(t.Cautions) > 0 {
		w.raw(`<aside class="caution">`)
		for _, caution := range t.Cautions {
			w.raw("<p" + s.lang(caution) + ">").text(caution).raw("</p>")
		}
		w.raw("</aside>")
	}
	return w.html(), nil
}

// unbroken keeps a number and its unit on one line; words may break.
func unbroken(s string) string {
	if s != "" && s[0] >= '0' && s[0] <= '9' {
		return strings.ReplaceAll(s, " ", "\u00a0")
	}
	return s
}

// guideWriter writes what a directive shows. Words go through text, addresses through
// link; the literals are the only markup.
type guideWriter struct{ b strings.Builder }

func (w *guideWriter) raw(markup string) *guideWriter { w.b.WriteString(markup); return w }

func (w *guideWriter) text(words string) *guideWriter {
	template.HTMLEscape(&w.b, []byte(words))
	return w
}

func (w *guideWriter) link(href, words string) *guideWriter {
	return w.raw(`<a href="`).text(href).raw(`">`).text(words).raw("</a>")
}

// tableHead opens a table in its own scroller, with a caption that leads to the whole.
func (w *guideWriter) tableHead(title, href, lang string) {
	w.raw(`<div class="scroll" role="group" tabindex="0" aria-label="`).text(title).raw(`"><table><caption` + lang + ">")
	w.link(href, title).raw("</caption><thead><tr>")
}

func (w *guideWriter) html() template.HTML { return template.HTML(w.b.String()) }
