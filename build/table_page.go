package build

import (
	"fmt"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

func tableAddress(t *tables.Table) string { return "/chart/" + t.ID + "/" }

// chartIndex lists the tables.
func (s *site) chartIndex() (templates.Page, diag.Pos) {
	body := &templates.Chart{Data: []templates.Link{
		{Href: s.atRoot(dataAddress(packageName)), Text: s.word("chart.newest")},
		{Href: s.atRoot("/" + s.versionFolder() + packageName), Text: s.word("chart.stays", "version", s.version.Name())},
	}}
	for _, t := range s.set.Tables {
		body.Tables = append(body.Tables, templates.TableCard{
			Link: templates.Link{Href: s.at(tableAddress(t)), Text: t.Title, Note: t.About},
			Rows: len(t.Rows), Version: t.Version.Number, Basis: s.basisCount(t),
		})
	}
	return templates.Page{Address: "/chart/", Title: s.word("chart.title"), Sheet: s.word("chart.sheet"), About: s.word("chart.about"),
		Head: templates.Head{Data: s.chartData()}, Body: body}, diag.Pos{File: "tables"}
}

// basisCount says how well a table is founded: "4 published, 30 common practice".
func (s *site) basisCount(t *tables.Table) string {
	count := map[tables.Basis]int{}
	for _, row := range t.Rows {
		count[row.Basis]++
	}
	var parts []string
	for _, b := range []tables.Basis{tables.Published, tables.Measured, tables.CommonPractice, tables.Memory} {
		if count[b] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", count[b], s.basisWord(b)))
		}
	}
	return strings.Join(parts, ", ")
}

// tablePage is one table in full. A conversion joint fills the cells of a joint's
// columns with one line for each end.
func (s *site) tablePage(t *tables.Table) (templates.Page, diag.Pos) {
	body := s.tableView(t)
	for _, row := range t.Rows {
		body.Rows = append(body.Rows, s.tableRow(t, row))
	}
	return templates.Page{Address: tableAddress(t), Title: t.Title, About: t.About, Sheet: t.Title,
		Scripts: []string{"table.js"}, Head: templates.Head{Data: s.tableData(t)}, Body: body}, t.Pos
}

// tableView is a table without its rows.
func (s *site) tableView(t *tables.Table) *templates.Table {
	body := &templates.Table{
		Title: t.Title, About: t.About, Cautions: t.Cautions, Version: t.Version.Number, Date: t.Version.Date,
		Data: []templates.Link{
			{Href: s.atRoot(dataAddress(t.ID + ".csv")), Text: s.word("table.as", "format", "CSV")},
			{Href: s.atRoot(dataAddress(t.ID + ".json")), Text: s.word("table.as", "format", "JSON")},
		},
	}
	if len(t.Matched()) > 0 {
		body.Identify = s.at(partAddress(t))
	}
	for _, c := range t.Columns {
		column := templates.Column{ID: c.ID, Label: c.Label, Unit: string(c.Unit)}
		if c.Method != "" {
			column.Method = templates.Link{Href: s.at("/measure/" + c.Method + "/"), Text: s.word("table.method")}
		}
		body.Columns = append(body.Columns, column)
	}
	return body
}

func (s *site) tableRow(t *tables.Table, row *tables.Row) templates.TableRow {
	view := templates.TableRow{Row: templates.Link{Text: row.ID}, Also: row.Also, Basis: s.basisWord(row.Basis)}
	if t.Joint() {
		view.Row = s.rowLink(row)
	} else {
		view.Anchor = rowAnchor(row.ID)
		view.Note = strings.Join(append([]string{sentence(row.Note)}, s.formerly(row)...), " ")
		view.Note = strings.TrimSpace(view.Note)
		view.Correct = templates.Link{Href: s.correctLink(row, ""), Text: s.word("correct.row"), Note: s.word("correct.row-of", "row", row.ID)}
		for _, measured := range s.measuredValues(row) {
			view.Says = append(view.Says, measured.Label+": "+strings.Join(measured.Says, " "))
		}
	}
	view.Says = append(view.Says, s.ownLines(row)...)
	words := append([]string{row.ID, row.Note, view.Basis}, slices.Concat(row.Also, s.ownLines(row))...)
	for _, end := range row.Ends {
		if end.Cap.State == tables.Given {
			view.Caps = append(view.Caps, end.Cap.Quantity.MM())
		}
		if end.Across.State == tables.Given {
			view.Acrosses = append(view.Acrosses, end.Across.Quantity.MM())
		}
		words = append(words, s.holdWord(end.Hold.Hold()))
		words = append(words, s.typed(end.Cap.Quantity.String())...)
		words = append(words, s.typed(end.Across.Quantity.String())...)
	}
	for _, c := range t.Columns {
		cells := s.columnCells(row, c)
		view.Cells = append(view.Cells, cells)
		if !t.Joint() { // a joint's words are those of its ends
			if v := row.Values[c.ID]; v.State == tables.Given && v.Quantity.Text != "" {
				words = append(words, s.typed(v.Figure())...)
			} else {
				words = append(words, cells[0].Text)
			}
		}
	}
	view.Search = strings.ToLower(strings.Join(words, " "))
	return view
}

// columnCells is what a row says in a column: one cell, or one for each end of a
// conversion joint.
func (s *site) columnCells(row *tables.Row, c tables.Column) []templates.Cell {
	if _, own := row.Values[c.ID]; own || len(row.Ends) == 0 {
		v := row.Values[c.ID]
		if c.Kind == tables.Holds {
			return []templates.Cell{s.holdCell(v)}
		}
		return []templates.Cell{s.cell(v)}
	}
	var cells []templates.Cell
	for _, end := range row.Ends {
		var cell templates.Cell
		switch c.ID {
		case "hold":
			cell = s.holdCell(end.Hold)
		case "cap":
			cell = s.cell(end.Cap)
		case "across":
			cell = s.cell(end.Across)
		}
		cell.Others = nil // they belong to the row this end is like, which shows them
		cells = append(cells, cell)
	}
	return cells
}
