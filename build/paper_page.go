package build

import (
	"html/template"
	"sync"

	"capspan/build/diag"
	"capspan/content/figure"
	"capspan/tables"
	"capspan/templates"
)

func paperAddress(id string) string { return rowAddress(id) + "paper/" }

// ruler is the same on every sheet.
var ruler = sync.OnceValue(func() template.HTML { return figure.Ruler("ruler") })

// paperPage is the sheet of one row, one to one. One page serves both papers: what
// stands on it keeps to the width of A4 (210 mm) and the height of Letter (279.4 mm),
// so nobody has to know which paper the printer holds.
func (s *site) paperPage(row *tables.Row, life func() template.HTML) (templates.Page, diag.Pos) {
	body := &templates.Paper{
		ID: row.ID, Row: s.rowLink(row), Lead: capital(figuresOf(row)),
		Drawing: life(), Ruler: ruler(),
		Truth: truth(row), Basis: basisSentence(row),
	}
	for n, end := range row.Ends {
		view := s.jointEnd(row, n, end)
		if len(row.Ends) == 2 {
			view.Title = []string{"Level end", "Upright end"}[n] // as on the drawing
		}
		body.Ends = append(body.Ends, view)
	}
	return templates.Page{Address: paperAddress(row.ID), Title: row.ID + " on paper, life size", Sheet: row.ID + ", one to one",
		About: "Joint " + row.ID + " one to one on one page of A4 or Letter, with a ruler to check the print.",
		Body:  body}, row.Pos
}

// truth says what on a row's life-size drawing follows the chart; the rest is habit.
func truth(row *tables.Row) string {
	cap, across, wings := true, true, false
	for _, end := range row.Ends {
		cap = cap && end.Cap.State == tables.Given
		across = across && end.Across.State == tables.Given
		wings = wings || end.Hold.State == tables.Given && end.Hold.Hold() == tables.Wing
	}
	switch {
	case wings:
		return "On a wing joint the marked faces follow the chart; the shape of the wings does not."
	case cap && across:
		return "Cap diameter and across follow the chart; clips, the length of the caps and the body of the cross do not."
	case cap:
		return "Cap diameters follow the chart; an across that is not known is drawn by habit, as is the rest."
	case across:
		return "Acrosses follow the chart; a cap that is not known is drawn by habit, as is the rest."
	}
	return "Only the figures given below follow the chart; the rest is drawn by habit."
}
