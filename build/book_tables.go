package build

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"capspan/tables"
	"capspan/templates"
)

func sourceMark(n int) string { return fmt.Sprintf("[%d]", n) }

// chartChapter is every table with every row.
func (b *book) chartChapter() templates.BookChapter {
	chapter := templates.BookChapter{ID: "chart", Title: b.word("book.chart"), About: b.word("chart.about")}
	b.places["/chart/"] = chapter.ID
	for _, t := range b.set.Tables {
		id := "table-" + t.ID
		b.places[tableAddress(t)] = id
		chapter.Sections = append(chapter.Sections, templates.BookSection{ID: id, Title: t.Title, About: t.About, Table: b.table(t)})
	}
	return chapter
}

func (b *book) table(t *tables.Table) *templates.BookTable {
	view := &templates.BookTable{Cautions: t.Cautions, Version: t.Version.Number, Date: t.Version.Date, Basis: b.basisCount(t)}
	for _, c := range t.Columns {
		view.Columns = append(view.Columns, c.Label)
	}
	for _, row := range t.Rows {
		b.places[b.placeOf(row)] = rowPlace(row)
		if t.Joint() {
			view.Joints = append(view.Joints, b.joint(row))
			continue
		}
		line := templates.BookRow{Anchor: rowPlace(row), ID: row.ID, Also: row.Also, Note: strings.Join(b.remarks(row), " ")}
		for _, c := range t.Columns {
			line.Cells = append(line.Cells, b.numberedCell(b.columnCells(row, c)[0]))
		}
		view.Rows = append(view.Rows, line)
	}
	return view
}

// remarks are what a line of a table says below its figures.
func (b *book) remarks(row *tables.Row) []string {
	var says []string
	if row.Note != "" {
		says = append(says, sentence(row.Note))
	}
	says = append(says, b.formerly(row)...)
	for _, measured := range b.measuredValues(row) {
		says = append(says, measured.Label+": "+strings.Join(measured.Says, " "))
	}
	return says
}

// joint is one joint: its drawing, figures, and what shares them.
func (b *book) joint(row *tables.Row) templates.BookJoint {
	view := templates.BookJoint{Anchor: rowPlace(row), Joint: templates.Joint{
		ID: row.ID, Lead: capital(b.figuresOf(row)), Also: row.Also, Note: sentence(row.Note),
		Confirm: row.Basis == tables.Memory, Formerly: b.formerly(row), Measured: b.measuredValues(row),
		Twins: b.rowLinks(row.Twins), SameFigures: b.rowLinks(b.set.SameFigures(row)), Conversions: b.rowLinks(b.set.Conversions(row)),
		Figures: []templates.Figure{{SVG: b.drawn().Joint("drawing-"+row.ID, b.drawing(row))}},
	}}
	if row.Basis == tables.CommonPractice { // what is published or measured names its sources at each figure
		view.Basis = b.basisSentence(row)
	}
	for n, end := range row.Ends {
		if end.Like != nil && end.Like.Basis == tables.Memory {
			view.Confirm = true // the figures printed here are that row's
		}
		e := b.jointEnd(row, n, end)
		if end.Like != nil { // what is printed elsewhere stands at the row it is like
			e.Hold.Others, e.Cap.Others, e.Across.Others = nil, nil, nil
		}
		e.Hold, e.Cap, e.Across = b.numberedCell(e.Hold), b.numberedCell(e.Cap), b.numberedCell(e.Across)
		view.Ends = append(view.Ends, e)
	}
	for _, value := range b.valuesOf(row) {
		value.Cell.Correct = templates.Link{}
		value.Cell = b.numberedCell(value.Cell)
		view.Values = append(view.Values, value)
	}
	return view
}

// sizesChapter finds a joint by what a caliper says: every end, by cap and then across.
func (b *book) sizesChapter() templates.BookChapter {
	type line struct {
		end  tables.End
		view templates.BookSize
	}
	var lines []line
	for _, t := range b.set.Tables {
		for _, row := range t.Rows {
			for _, end := range row.Ends {
				lines = append(lines, line{end, templates.BookSize{Cap: b.bothUnits(end.Cap), Across: b.bothUnits(end.Across),
					Hold: capital(b.holdOf(end.Hold)), Row: templates.Link{Href: b.at(b.placeOf(row)), Text: row.ID}, Basis: b.basisWord(row.Basis)}})
			}
		}
	}
	slices.SortStableFunc(lines, func(p, q line) int {
		return cmp.Or(bySize(p.end.Cap, q.end.Cap), bySize(p.end.Across, q.end.Across))
	})
	chapter := templates.BookChapter{ID: "sizes", Title: b.word("book.sizes"), About: b.word("book.sizes-about")}
	for _, l := range lines {
		chapter.Sizes = append(chapter.Sizes, l.view)
	}
	return chapter
}

// bySize orders lengths; what has no figure comes last.
func bySize(p, q tables.Value) int {
	if p.State != tables.Given || q.State != tables.Given {
		return cmp.Compare(p.State, q.State)
	}
	return cmp.Compare(p.Quantity.Float(), q.Quantity.Float())
}

// bothUnits is a figure as it is printed and converted.
func (b *book) bothUnits(v tables.Value) string {
	if v.State != tables.Given {
		return b.amount(v)
	}
	return unbroken(v.Quantity.String()) + " (≈\u00a0" + unbroken(v.Quantity.Converted()) + ")"
}

// namesChapter lists every name, and what became of those that are gone.
func (b *book) namesChapter() templates.BookChapter {
	chapter := templates.BookChapter{ID: "names", Title: b.word("book.names"), About: b.word("book.names-about")}
	b.places["/a-z/"] = chapter.ID
	for _, t := range b.set.Tables {
		for _, row := range t.Rows {
			href := b.at(b.placeOf(row))
			chapter.Names = append(chapter.Names, templates.Link{Href: href, Text: row.ID})
			for _, name := range row.Also {
				chapter.Names = append(chapter.Names, templates.Link{Href: href, Text: name, Note: b.word("a-z.also", "name", row.ID)})
			}
		}
	}
	slices.SortStableFunc(chapter.Names, func(p, q templates.Link) int { return natural(p.Text, q.Text) })
	for _, r := range b.set.Retired {
		chapter.Gone = append(chapter.Gone, b.word("book.no-longer", "id", r.ID, "why", sentence(r.Why)))
	}
	return chapter
}

// natural orders names as a reader does: numbers in them by size, letter case ignored.
func natural(p, q string) int {
	p, q = strings.ToLower(p), strings.ToLower(q)
	for p != "" && q != "" {
		m, n := digits(p), digits(q)
		if m > 0 && n > 0 {
			a, b := strings.TrimLeft(p[:m], "0"), strings.TrimLeft(q[:n], "0")
			if order := cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b)); order != 0 {
				return order
			}
			p, q = p[m:], q[n:]
			continue
		}
		if p[0] != q[0] {
			return cmp.Compare(p[0], q[0])
		}
		p, q = p[1:], q[1:]
	}
	return cmp.Compare(len(p), len(q))
}

// digits counts those a text begins with.
func digits(text string) int { return len(text) - len(strings.TrimLeft(text, "0123456789")) }
