package build

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"capspan/tables"
	"capspan/templates"
)

// cell puts a value into words: the chart's own digits, the converted ones, and why
// it is believed.
func (s *site) cell(v tables.Value) templates.Cell {
	c := templates.Cell{Basis: s.basisWord(v.Basis), At: v.At, Sources: s.sourceLinks(v.Sources), Measured: s.measuredShort(v.Measured, v.Quantity.Unit)}
	switch {
	case v.State == tables.Unknown:
		c.Text = s.word("cell.not-known")
	case v.State == tables.None:
		c.Text = s.word("cell.none")
	case v.Quantity.Text != "":
		c.Text, c.Converted = s.figures(v.Figure()), s.figures(v.Converted())
	default:
		c.Text = v.Text
	}
	if v.Faces != "" {
		c.Note = s.facesWord(v.Faces)
		if v.FacesBasis != "" && v.FacesBasis != v.Basis {
			c.Note = s.word("cell.faces-basis", "faces", c.Note, "basis", s.basisWord(v.FacesBasis))
		}
	}
	for _, other := range v.Others {
		c.Others = append(c.Others, s.cell(other))
	}
	return c
}

// holdCell is the cell of a hold, in a reader's words.
func (s *site) holdCell(v tables.Value) templates.Cell {
	c := s.cell(v)
	if v.State == tables.Given {
		c.Text = s.holdWord(v.Hold())
	}
	return c
}

func (s *site) sourceLinks(sources []*tables.Source) []templates.Link {
	var links []templates.Link
	for _, src := range sources {
		links = append(links, templates.Link{Href: s.at(sourcesAddress + "#source-" + src.ID), Text: src.Title})
	}
	return links
}

// sourceView gives a registry entry to a page.
func (s *site) sourceView(src *tables.Source) templates.SourceView {
	return templates.SourceView{ID: src.ID, Kind: s.word("sources.kind-" + src.Kind), Title: src.Title, Publisher: src.Publisher,
		Edition: src.Edition, Date: src.Date, Where: src.Where, Trust: src.Trust}
}

// capital starts a sentence or label with a capital letter.
func capital(s string) string {
	if s == "" {
		return s
	}
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// sentence makes a note of the tables, written without a capital or full stop, one.
func sentence(note string) string {
	if note == "" || strings.HasSuffix(note, ".") {
		return capital(note)
	}
	return capital(note) + "."
}
