package build

import (
	"html/template"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/content/figure"
	"capspan/tables"
	"capspan/templates"
)

// nearRows is how many neighbours a row's page names.
const nearRows = 5

func rowAddress(id string) string { return "/joint/" + id + "/" }

// rowAnchor marks a row that has no page of its own on the page of its table.
func rowAnchor(id string) string { return "row-" + id }

// placeOf is where a row stands: the page of a joint, its entry on the page of its size
// where the chart is a large one, or the line of another row.
func (s *site) placeOf(row *tables.Row) string {
	switch {
	case !row.Table.Joint():
		return tableAddress(row.Table) + "#" + rowAnchor(row.ID)
	case s.large():
		return sizeAddress(s.keyOf(row)) + "#" + row.ID
	}
	return rowAddress(row.ID)
}

// rowLink points to a row and says its figures.
func (s *site) rowLink(row *tables.Row) templates.Link {
	return templates.Link{Href: s.at(s.placeOf(row)), Text: row.ID, Note: s.figuresOf(row)}
}

// figuresOf says a row in one line: "1.062 in x 3.219 in, clip outside".
func (s *site) figuresOf(row *tables.Row) string {
	s.see(row)
	ends := make([]string, 0, len(row.Ends))
	for _, end := range row.Ends {
		ends = append(ends, s.word("row.figures", "cap", s.amount(end.Cap), "across", s.amount(end.Across), "hold", s.holdOf(end.Hold)))
	}
	if len(ends) == 2 {
		return s.word("row.two-ends", "first", ends[0], "other", ends[1])
	}
	return strings.Join(ends, "")
}

func (s *site) amount(v tables.Value) string {
	switch v.State {
	case tables.Unknown:
		return s.word("cell.not-known")
	case tables.None:
		return s.word("row.no-cap")
	}
	return s.figures(v.Quantity.String())
}

func (s *site) holdOf(v tables.Value) string {
	if v.State != tables.Given {
		return s.word("hold.not-known")
	}
	return s.holdWord(v.Hold())
}

// jointPage is one row: drawing, figures, what shares them, and why they are believed.
// The life-size drawing is the one of its sheet.
func (s *site) jointPage(row *tables.Row, life func() template.HTML) (templates.Page, diag.Pos) {
	figures := s.figuresOf(row)
	body := &templates.Joint{
		ID: row.ID, Title: row.ID, Lead: capital(figures), Table: row.Table.Title, Also: row.Also, Note: sentence(row.Note),
		TableLink:   templates.Link{Href: s.at(tableAddress(row.Table)), Text: row.Table.Title},
		Basis:       s.basisSentence(row),
		Confirm:     row.Basis == tables.Memory,
		Twins:       s.rowLinks(row.Twins),
		SameFigures: s.rowLinks(s.set.SameFigures(row)),
		Near:        s.rowLinks(s.set.Near(row, nearRows)),
		Conversions: s.rowLinks(s.set.Conversions(row)),
		Figures:     []templates.Figure{{SVG: s.drawn().Joint("joint", s.drawing(row)), Caption: s.caption(row)}},
		Life:        life(), Paper: s.at(paperAddress(row.ID)),
		History: s.historyOf(row), Formerly: s.formerly(row), Values: s.valuesOf(row),
		Measured: s.measuredValues(row), Own: s.ownOf(row), OwnTitle: s.counter(),
	}
	for n, end := range row.Ends {
		body.Ends = append(body.Ends, s.corrected(row, end, s.jointEnd(row, n, end)))
	}
	for _, src := range row.AllSources() {
		body.Sources = append(body.Sources, s.sourceView(src))
	}
	return templates.Page{Address: rowAddress(row.ID), Title: s.word("joint.title", "id", row.ID, "figures", figures), Sheet: row.ID,
		About:   s.word("joint.about", "id", row.ID, "figures", figures),
		Scripts: []string{"lifesize.js"}, Body: body}, row.Pos
}

// formerly says which retired rows this one took the place of: who is led here by an old
// address may not have seen the page that stood there.
func (s *site) formerly(row *tables.Row) []string {
	var list []string
	for _, r := range s.set.Retired {
		if slices.Contains(r.To, row.ID) {
			list = append(list, s.word("row.formerly", "id", r.ID, "why", sentence(r.Why)))
		}
	}
	return list
}

// valuesOf are a row's figures beyond hold, cap and across.
func (s *site) valuesOf(row *tables.Row) []templates.NamedCell {
	var list []templates.NamedCell
	for _, c := range row.Table.Columns {
		if v, ok := row.Values[c.ID]; ok && !slices.Contains([]string{"hold", "cap", "across"}, c.ID) {
			list = append(list, templates.NamedCell{Label: c.Label, Cell: s.toCorrect(s.cell(v), row, c)})
		}
	}
	return list
}

// corrected adds to an end's cells where each is corrected: of a conversion joint in the
// row that the end is like.
func (s *site) corrected(row *tables.Row, end tables.End, view templates.JointEnd) templates.JointEnd {
	if end.Like != nil {
		row = end.Like
	}
	for id, cell := range map[string]*templates.Cell{"hold": &view.Hold, "cap": &view.Cap, "across": &view.Across} {
		column, _ := row.Table.Column(id)
		*cell = s.toCorrect(*cell, row, column)
	}
	return view
}

func (s *site) toCorrect(cell templates.Cell, row *tables.Row, c tables.Column) templates.Cell {
	cell.Correct = templates.Link{Href: s.correctLink(row, c.ID), Text: s.word("correct.value"),
		Note: s.word("correct.value-of", "column", c.Label, "row", row.ID)}
	return cell
}

func (s *site) rowLinks(rows []*tables.Row) []templates.Link {
	links := make([]templates.Link, 0, len(rows))
	for _, row := range rows {
		links = append(links, s.rowLink(row))
	}
	return links
}

func (s *site) jointEnd(row *tables.Row, n int, end tables.End) templates.JointEnd {
	view := templates.JointEnd{Title: s.word("joint.both-ends"), Hold: s.holdCell(end.Hold), Cap: s.cell(end.Cap), Across: s.cell(end.Across)}
	if len(row.Ends) == 2 {
		view.Title = []string{s.word("joint.one-end"), s.word("joint.other-end")}[n]
		view.Like = s.rowLink(end.Like)
	}
	for _, c := range row.Table.Columns {
		if c.Method != "" {
			view.Method = append(view.Method, templates.Link{Href: s.at("/measure/" + methodOf(c, end) + "/"), Text: c.Label})
		}
	}
	return view
}

// methodOf is the guide page for a column: for a distance across the page of the
// row's own faces, where the guide has one.
func methodOf(c tables.Column, end tables.End) string {
	switch faces := end.Across.Faces; {
	case c.ID != "across":
	case end.Hold.Hold() == tables.Strap:
		return "half-round"
	case faces == tables.OverCaps, faces == tables.GrooveInner, faces == tables.GrooveOuter, faces == tables.UnderPlates:
		return string(faces)
	}
	return c.Method
}

// basisSentence says why a row is believed, and what that allows.
func (s *site) basisSentence(row *tables.Row) string {
	switch row.Basis {
	case tables.Published:
		return s.word("row.basis-published")
	case tables.Measured:
		return s.word("row.basis-measured")
	case tables.CommonPractice:
		return s.word("row.basis-common-practice")
	}
	return s.word("row.basis-memory")
}

func (s *site) caption(row *tables.Row) string {
	if len(row.Ends) == 2 {
		return s.word("joint.caption-two")
	}
	return s.word("joint.caption")
}

// drawing hands a row's numbers to the figure maker.
func (s *site) drawing(row *tables.Row) figure.JointDrawing {
	d := figure.JointDrawing{Name: row.ID}
	for _, end := range row.Ends {
		d.Ends = append(d.Ends, figure.End{Hold: holdKind(end.Hold), Faces: string(end.Across.Faces),
			Cap: s.dimension(end.Cap), Across: s.dimension(end.Across)})
	}
	return d
}

func holdKind(v tables.Value) string {
	if v.State != tables.Given {
		return string(tables.UnknownHold)
	}
	return v.Text
}

// dimension is a figure for the drawing board: a float is exact enough for a line,
// the label keeps the digits.
func (s *site) dimension(v tables.Value) figure.Dimension {
	if v.State != tables.Given {
		return figure.Dimension{Text: s.amount(v)}
	}
	return figure.Dimension{MM: v.Quantity.Float(), Text: s.figures(v.Quantity.String()), Converted: s.figures(v.Quantity.Converted())}
}
