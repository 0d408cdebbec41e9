package build

import (
	"html/template"
	"slices"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/content/figure"
	"capspan/tables"
	"capspan/templates"
)

// largeSheet is the style of what only a large chart has.
const largeSheet = "large.css"

// sizeDrafts are the pages and paper sheets of a large chart's sizes.
func (s *site) sizeDrafts() []rowDraft {
	var list []rowDraft
	for _, z := range s.sizes().list {
		life := sync.OnceValue(func() template.HTML { return s.drawn().LifeSize("life", s.sizeDrawing(z)) })
		list = append(list,
			rowDraft{address: sizeAddress(z.key), from: z.rows[0].Pos, rows: z.rows, fill: func(s *site) (templates.Page, diag.Pos) { return s.sizePage(z, life) }},
			rowDraft{address: sizePaperAddress(z.key), from: z.rows[0].Pos, rows: z.rows, fill: func(s *site) (templates.Page, diag.Pos) { return s.sizePaper(z, life) }})
	}
	return list
}

// sizeDrawing is the size in the figures of its first row.
func (s *site) sizeDrawing(z *size) figure.JointDrawing {
	d := s.drawing(z.rows[0])
	d.Name = s.figuresOf(z.rows[0])
	return d
}

// sizePage is what /joint/<id>/ says, of all joints that are written with the same
// figures: each has an entry under its id.
func (s *site) sizePage(z *size, life func() template.HTML) (templates.Page, diag.Pos) {
	first := z.rows[0]
	title := capital(s.figuresOf(first))
	body := &templates.Size{
		ID: title, Converted: s.convertedOf(first), Kits: len(z.rows),
		TableLink: templates.Link{Href: s.at(tableAddress(first.Table)), Text: first.Table.Title},
		GroupLink: s.groupLink(first.Table, groupsOf(first)[0]),
		Confirm:   s.confirm(z.rows),
		Figures:   []templates.Figure{{SVG: s.drawn().Joint("joint", s.sizeDrawing(z)), Caption: s.caption(first)}},
		Life:      life(), Paper: s.at(sizePaperAddress(z.key)), OwnTitle: s.counter(),
	}
	for n, end := range first.Ends {
		for _, link := range s.jointEnd(first, n, end).Method {
			if slices.Contains(body.Method, link) {
				continue
			}
			if slices.ContainsFunc(body.Method, func(l templates.Link) bool { return l.Text == link.Text }) { // another way at the other end
				link.Text += " (" + s.facesWord(end.Across.Faces) + ")"
			}
			body.Method = append(body.Method, link)
		}
	}
	var named sources
	several := false
	for i, same := range alikeRows(z.rows) {
		several = several || i > 0 || len(same) > 1
		body.Writings = append(body.Writings, s.writing(same))
		for _, caution := range same[0].Table.Cautions {
			if !slices.Contains(body.Cautions, caution) {
				body.Cautions = append(body.Cautions, caution)
			}
		}
	}
	for _, row := range z.rows {
		named.add(row.AllSources())
		of := ""
		if len(z.rows) > 1 {
			of = row.ID + ": "
		}
		for _, change := range s.historyOf(row) {
			change.Line.What = of + change.Line.What
			body.History = append(body.History, change)
		}
		for _, measured := range s.measuredValues(row) {
			measured.Label = of + measured.Label
			body.Measured = append(body.Measured, measured)
		}
		for _, said := range s.ownOf(row) {
			said.Label = of + said.Label
			body.Own = append(body.Own, said)
		}
	}
	for i, src := range named.list {
		view := s.sourceView(src)
		if several {
			view.Mark = sourceMark(i + 1)
		}
		body.Sources = append(body.Sources, view)
	}
	if several {
		s.mark(body.Writings, named)
	}
	s.aroundSize(z, body)
	return templates.Page{Address: sizeAddress(z.key), Title: title, Sheet: title, About: s.word("size.about", "figures", s.figuresOf(first)),
		Scripts: []string{"lifesize.js"}, Sheets: []string{largeSheet}, Body: body}, first.Pos
}

// aroundSize adds the sizes that belong to one, or could be taken for it.
func (s *site) aroundSize(z *size, body *templates.Size) {
	var same, conversions []*tables.Row
	first := z.rows[0]
	for _, row := range z.rows {
		if row == first || !slices.Contains(first.Twins, row) { // the twins of a row have the same
			conversions = append(conversions, s.ask("conversions", row)...)
		}
		if row == first || !sameEnds(row, first) {
			same = append(same, s.ask("same figures", row)...)
		}
	}
	body.Twins, body.SameFigures = s.sizeLinks(s.twinSizes(z)), s.sizeLinks(s.sizesOf(same, z))
	body.Near, body.Conversions = s.sizeLinks(s.sizesOf(s.ask("near sizes", first), z)), s.sizeLinks(s.sizesOf(conversions, z))
}

// twinSizes are those that are a size's own by another rounding.
func (s *site) twinSizes(z *size) []*size {
	var twins []*tables.Row
	for _, row := range z.rows {
		twins = append(twins, row.Twins...)
	}
	return s.sizesOf(twins, z)
}

// nearSizes are rows of the sizes nearest to the one that a row is the first of, but for its twins.
func (s *site) nearSizes(first *tables.Row) []*tables.Row {
	z := s.sizes().of[first]
	twins := s.twinSizes(z)
	return s.set.NearOthers(first, nearRows, func(row *tables.Row) any {
		if one := s.sizes().of[row]; one != z && !slices.Contains(twins, one) {
			return one
		}
		return nil
	})
}

// confirm says whether all of the rows, or some, rest on memory: themselves, or by a row that
// an end is like, whose figures are shown.
func (s *site) confirm(rows []*tables.Row) string {
	n := 0
	for _, row := range rows {
		like := func(end tables.End) bool { return end.Like != nil && end.Like.Basis == tables.Memory }
		if row.Basis == tables.Memory || slices.ContainsFunc(row.Ends, like) {
			n++
		}
	}
	switch n {
	case 0:
		return ""
	case len(rows):
		return templates.ConfirmAll
	}
	return templates.ConfirmSome
}

// convertedOf says the known figures of a row in the other unit: "26.97 mm × 81.76 mm".
func (s *site) convertedOf(row *tables.Row) string {
	var ends []string
	for _, end := range row.Ends {
		var figures []string
		for _, v := range []tables.Value{end.Cap, end.Across} {
			if v.State == tables.Given {
				figures = append(figures, s.figures(v.Quantity.Converted()))
			}
		}
		if len(figures) > 0 {
			ends = append(ends, strings.Join(figures, " × "))
		}
	}
	if len(ends) == 2 {
		return s.word("row.two-ends", "first", ends[0], "other", ends[1])
	}
	return strings.Join(ends, "")
}

// writing is rows that say the same of themselves, word for word.
func (s *site) writing(rows []*tables.Row) templates.Writing {
	first := rows[0]
	w := templates.Writing{
		Table:   templates.Link{Href: s.at(tableAddress(first.Table)), Text: first.Table.Title},
		Version: first.Table.Version.Number, Date: first.Table.Version.Date, Basis: s.basisSentence(first), First: first.ID,
	}
	alone := len(rows) == 1
	for n, end := range first.Ends {
		view := s.jointEnd(first, n, end)
		if alone || end.Like != nil {
			view = s.corrected(first, end, view)
		}
		w.Ends = append(w.Ends, view)
	}
	w.Values = s.valuesOf(first)
	if slices.ContainsFunc(rows, func(row *tables.Row) bool { return !sameSources(first, row) }) {
		w.Apart = true
		for i := range w.Ends {
			if w.Ends[i].Like.Href == "" {
				withoutSources(&w.Ends[i].Hold, &w.Ends[i].Cap, &w.Ends[i].Across)
			}
		}
		for i := range w.Values {
			withoutSources(&w.Values[i].Cell)
		}
	}
	common := !slices.ContainsFunc(rows, func(row *tables.Row) bool { return row.Note != first.Note })
	if common {
		w.Note = sentence(first.Note)
	}
	for _, row := range rows {
		kit := templates.Kit{ID: row.ID, Also: row.Also, Formerly: s.formerly(row)}
		if w.Apart {
			kit.From = s.restsOn(row)
		}
		if !common {
			kit.Note = sentence(row.Note)
		}
		if !alone {
			for _, c := range row.Table.Columns {
				if _, own := row.Values[c.ID]; own {
					kit.Correct = append(kit.Correct, templates.Link{Href: s.correctLink(row, c.ID), Text: c.Label,
						Note: s.word("correct.value-of", "column", c.Label, "row", row.ID)})
				}
			}
		}
		w.Kits = append(w.Kits, kit)
	}
	if !alone { // each entry has its own
		for i := range w.Values {
			w.Values[i].Cell.Correct = templates.Link{}
		}
	}
	return w
}

// withoutSources leaves figures that stand for several rows, each of which names its own.
func withoutSources(cells ...*templates.Cell) {
	for _, c := range cells {
		c.Sources, c.At = nil, ""
		for i := range c.Others {
			withoutSources(&c.Others[i])
		}
	}
}

// restsOn says which sources a row's values rest on; those with the same are named together.
func (s *site) restsOn(row *tables.Row) []templates.KitSource {
	var list []templates.KitSource
	add := func(label string, from []*tables.Source, at string) {
		if len(from) == 0 {
			return
		}
		one := templates.KitSource{Of: label, Sources: s.sourceLinks(from), At: at}
		for i := range list {
			if list[i].At == at && slices.Equal(list[i].Sources, one.Sources) {
				list[i].Of += ", " + label
				return
			}
		}
		list = append(list, one)
	}
	for _, c := range row.Table.Columns {
		v := row.Values[c.ID]
		add(c.Label, v.Sources, v.At)
		for _, other := range v.Others {
			add(s.word("cell.elsewhere", "figure", s.cell(other).Text), other.Sources, other.At)
		}
	}
	if len(list) == 0 {
		add("", row.Sources, row.At)
	}
	return list
}

// sources are named in the order in which they come, each once.
type sources struct{ list []*tables.Source }

func (n *sources) add(more []*tables.Source) {
	for _, src := range more {
		if !slices.Contains(n.list, src) {
			n.list = append(n.list, src)
		}
	}
}

// mark puts the marks of sources in the place of their titles, which stand at the foot of
// the page.
func (s *site) mark(writings []templates.Writing, named sources) {
	marks := map[string]templates.Link{}
	for i, src := range named.list {
		marks[s.at(sourcesAddress+"#source-"+src.ID)] = templates.Link{Href: "#source-" + src.ID, Text: sourceMark(i + 1)}
	}
	for _, w := range writings {
		for i := range w.Ends {
			end := &w.Ends[i]
			markCells(marks, &end.Hold, &end.Cap, &end.Across)
		}
		for i := range w.Values {
			markCells(marks, &w.Values[i].Cell)
		}
		for i := range w.Kits {
			for j := range w.Kits[i].From {
				markLinks(marks, w.Kits[i].From[j].Sources)
			}
		}
	}
}

func markCells(marks map[string]templates.Link, cells ...*templates.Cell) {
	for _, c := range cells {
		markLinks(marks, c.Sources)
		for i := range c.Others {
			markCells(marks, &c.Others[i])
		}
	}
}

func markLinks(marks map[string]templates.Link, links []templates.Link) {
	for i, link := range links {
		if mark, is := marks[link.Href]; is {
			links[i] = mark
		}
	}
}

// sizePaperAddress is where the life-size sheet of a size is.
func sizePaperAddress(key string) string { return sizeAddress(key) + "paper/" }

// sizePaper is the sheet of a size: that of its first row, under the names of all.
func (s *site) sizePaper(z *size, life func() template.HTML) (templates.Page, diag.Pos) {
	page, pos := s.paperPage(z.rows[0], life)
	title := capital(s.figuresOf(z.rows[0]))
	body := page.Body.(*templates.Paper)
	body.ID, body.Size, body.Lead = title, true, capital(s.kitsOf(z.rows))
	body.Row = templates.Link{Href: s.at(sizeAddress(z.key)), Text: title}
	body.Basis = s.basisSentence(weakest(z.rows))
	page.Address, page.Title, page.Sheet = sizePaperAddress(z.key), s.word("paper.title", "id", title), s.word("paper.sheet", "id", title)
	page.About = s.word("paper.about", "id", s.figuresOf(z.rows[0]))
	return page, pos
}
