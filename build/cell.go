package build

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"capspan/tables"
	"capspan/templates"
)

// basisWords are what the pages call a basis.
var basisWords = map[tables.Basis]string{
	tables.Published:      "published",
	tables.Measured:       "measured",
	tables.CommonPractice: "common practice",
	tables.Memory:         "memory",
}

// holdWords and facesWords say the design's words as a reader would.
var holdWords = map[tables.Hold]string{
	tables.OutsideClip: "clip outside",
	tables.InsideClip:  "clip inside",
	tables.Plate:       "bolted plate",
	tables.Strap:       "strap or U-bolt (half-round)",
	tables.Wing:        "bolted wing",
	tables.Injected:    "injected plastic",
	tables.Staked:      "staked",
	tables.UnknownHold: "not known",
}

var facesWords = map[tables.Faces]string{
	tables.OverCaps:     "over the caps",
	tables.GrooveInner:  "between the inner groove faces",
	tables.GrooveOuter:  "between the outer groove faces",
	tables.UnderPlates:  "under the plates",
	tables.HoleCentres:  "between the hole centres",
	tables.WingOuter:    "over the wings",
	tables.UnknownFaces: "faces not known",
}

// cell puts a value into words: the chart's own digits, the converted ones, and why
// it is believed.
func (s *site) cell(v tables.Value) templates.Cell {
	c := templates.Cell{Basis: basisWords[v.Basis], At: v.At, Sources: s.sourceLinks(v.Sources)}
	switch {
	case v.State == tables.Unknown:
		c.Text = "not known"
	case v.State == tables.None:
		c.Text = "none"
	case v.Quantity.Text != "":
		c.Text, c.Converted = v.Quantity.String(), v.Quantity.Converted()
	default:
		c.Text = v.Text
	}
	if v.Faces != "" {
		c.Note = facesWords[v.Faces]
		if v.FacesBasis != "" && v.FacesBasis != v.Basis {
			c.Note += " (faces: " + basisWords[v.FacesBasis] + ")"
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
		c.Text = holdWords[v.Hold()]
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
func sourceView(src *tables.Source) templates.SourceView {
	return templates.SourceView{ID: src.ID, Kind: src.Kind, Title: src.Title, Publisher: src.Publisher,
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
