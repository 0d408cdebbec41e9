package build

import (
	"html/template"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

func paperAddress(id string) string { return rowAddress(id) + "paper/" }

// paperPage is the sheet of one row, one to one. One page serves both papers: what
// stands on it keeps to the width of A4 (210 mm) and the height of Letter (279.4 mm),
// so nobody has to know which paper the printer holds.
func (s *site) paperPage(row *tables.Row, life func() template.HTML) (templates.Page, diag.Pos) {
	body := &templates.Paper{
		ID: row.ID, Row: s.rowLink(row), Lead: capital(s.figuresOf(row)),
		Drawing: life(), Ruler: s.ruler(),
		Truth: s.truth(row), Basis: s.basisSentence(row),
	}
	for n, end := range row.Ends {
		view := s.jointEnd(row, n, end)
		if len(row.Ends) == 2 {
			view.Title = []string{s.word("paper.level-end"), s.word("paper.upright-end")}[n] // as on the drawing
		}
		body.Ends = append(body.Ends, view)
	}
	return templates.Page{Address: paperAddress(row.ID), Title: s.word("paper.title", "id", row.ID), Sheet: s.word("paper.sheet", "id", row.ID),
		About: s.word("paper.about", "id", row.ID),
		Body:  body}, row.Pos
}

// truth says what on a row's life-size drawing follows the chart; the rest is habit.
func (s *site) truth(row *tables.Row) string {
	cap, across, wings := true, true, false
	for _, end := range row.Ends {
		cap = cap && end.Cap.State == tables.Given
		across = across && end.Across.State == tables.Given
		wings = wings || end.Hold.State == tables.Given && end.Hold.Hold() == tables.Wing
	}
	switch {
	case wings:
		return s.word("paper.true-wing")
	case cap && across:
		return s.word("paper.true-both")
	case cap:
		return s.word("paper.true-cap")
	case across:
		return s.word("paper.true-across")
	}
	return s.word("paper.true-none")
}
