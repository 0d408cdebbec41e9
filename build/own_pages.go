package build

import (
	"encoding/json"
	"io/fs"
	"slices"
	"strings"

	"capspan/tables"
	"capspan/templates"
)

// What a keeper's folder puts on the pages: name, contact and logo in the title block, the
// keeper's pages and tables on the front page, and what the overlay says of a row wherever
// the row is shown. A site without such a folder has none of it, not a byte.

// ownScript shows the overlay in verdicts; it fetches ownData when the first one is there.
const (
	ownScript = "own.js"
	ownSheet  = "own.css"
	ownData   = "own.json"
)

// ownCounter is what static/parts/own/own.ts reads.
type ownCounter struct {
	Format  int                 `json:"format"`
	Title   string              `json:"title"`
	Columns []string            `json:"columns"`
	Rows    map[string][]string `json:"rows"` // by id; "" where nothing is said
}

// addOwn writes the sheet with the keeper's colours, the logo, and what pages fetch of the overlay.
func (s *site) addOwn() {
	if s.own == nil {
		return
	}
	sheet := slices.Concat([]byte(s.own.colours.css()), s.assets.Bytes(ownSheet))
	s.own.style = s.addAsset("assets/own", ".css", sheet)
	if s.own.overlay == nil {
		return
	}
	data := ownCounter{Format: 1, Title: s.counter(), Rows: map[string][]string{}}
	for _, c := range s.own.overlay.Columns {
		data.Columns = append(data.Columns, c.Label)
	}
	for _, t := range s.set.Tables {
		for _, row := range t.Rows {
			said := make([]string, len(data.Columns))
			for _, v := range s.own.overlay.Of(row) {
				said[slices.Index(s.own.overlay.Columns, v.Column)] = v.String()
				data.Rows[row.ID] = said
			}
		}
	}
	text, err := json.Marshal(data)
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	s.own.data = s.addAsset("assets/own", ".json", text)
}

// counter is what the keeper's own words stand under.
func (s *site) counter() string {
	if s.keeper.Name == "" {
		return s.word("own.counter-unnamed")
	}
	return s.word("own.counter", "name", s.keeper.Name)
}

// ownView is the keeper as every page shows it; nil without a keeper's folder.
func (s *site) ownView() *templates.Own {
	if s.own == nil {
		return nil
	}
	view := &templates.Own{Keeper: s.keeper, From: s.word("own.from-unnamed"), Style: s.at(s.own.style)}
	if s.keeper.Name != "" {
		view.From = s.word("own.from", "name", s.keeper.Name)
	}
	if logo := s.own.logo; logo.bytes != nil {
		view.Logo, view.Width, view.Height = s.at(s.addAsset("assets/logo", logo.ending, logo.bytes)), logo.width, logo.height
	}
	return view
}

// ownOf is what the overlay says of a row.
func (s *site) ownOf(row *tables.Row) []templates.NamedCell {
	var list []templates.NamedCell
	if s.own == nil {
		return nil
	}
	for _, v := range s.own.overlay.Of(row) {
		list = append(list, templates.NamedCell{Label: v.Column.Label, Cell: templates.Cell{Text: v.String()}})
	}
	return list
}

// ownNames are what rows are found by besides their own names.
func (s *site) ownNames(row *tables.Row) []string {
	var list []string
	if s.own == nil {
		return nil
	}
	for _, v := range s.own.overlay.Of(row) {
		if v.Column.Find {
			list = append(list, v.Text)
		}
	}
	return list
}

// ownLines is the same for a line of a table: "Part number: SW-0131".
func (s *site) ownLines(row *tables.Row) []string {
	var list []string
	for _, c := range s.ownOf(row) {
		list = append(list, c.Label+": "+c.Cell.Text)
	}
	return list
}

// slipOwn is the same on an enquiry slip, under the name of who says it.
func (s *site) slipOwn(row *tables.Row) []slipCell {
	var list []slipCell
	for _, c := range s.ownOf(row) {
		list = append(list, slipCell{Label: c.Label, Text: c.Cell.Text, Note: s.counter()})
	}
	return list
}

// ownLinks are the keeper's pages and tables, for the front page.
func (s *site) ownLinks() []templates.Link {
	if s.own == nil {
		return nil
	}
	var list []templates.Link
	for _, p := range s.pages {
		if strings.HasPrefix(p.Pos.File, "pages/") {
			list = append(list, s.nextLink(p.Slug))
		}
	}
	shipped := s.tables.(layers).ours
	for _, t := range s.set.Tables {
		if _, err := fs.Stat(shipped, t.ID+".yaml"); err != nil {
			list = append(list, templates.Link{Href: s.at(tableAddress(t)), Text: t.Title, Note: t.About})
		}
	}
	return list
}
