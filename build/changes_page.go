package build

import (
	"strings"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

const changesAddress = "/changes/"

// changesPage is every issue of the chart that was recorded, newest first, and the ids
// that are retired.
func (s *site) changesPage() (templates.Page, diag.Pos) {
	body := &templates.Changes{Now: s.version.Name(), Feed: s.feedAddress()}
	for _, r := range s.set.History {
		view := templates.Release{ID: releaseID(r), Name: r.Chart, Date: r.Date, Why: sentence(r.Why), Tables: r.Tables}
		for _, c := range r.Changes {
			view.Changes = append(view.Changes, s.recordedLine(c))
		}
		body.Releases = append(body.Releases, view)
	}
	for _, r := range s.set.Retired {
		view := templates.RetiredRow{ID: r.ID, Href: s.at(rowAddress(r.ID)), Why: sentence(r.Why)}
		for _, id := range r.To {
			view.To = append(view.To, s.rowLink(s.set.Find(id)))
		}
		body.Retired = append(body.Retired, view)
	}
	return templates.Page{Address: changesAddress, Title: s.word("changes.title"), Sheet: s.word("changes.title"), About: s.word("changes.about"),
		Body: body}, diag.Pos{File: "tables/history.yaml"}
}

// releaseID is where a release stands on the page of changes.
func releaseID(r tables.Release) string { return "chart-" + r.Chart }

// recordedLine is one change in a reader's words, with a link to its row if there is one.
func (s *site) recordedLine(c tables.Recorded) templates.ChangeLine {
	line := templates.ChangeLine{Of: templates.Link{Text: c.Of}, What: c.What, Old: s.recordedCell(c.Old), New: s.recordedCell(c.New), Why: sentence(c.Why)}
	if c.Column != "" {
		line.What = c.Column + ", " + c.What
		if c.What == "value" {
			line.What = c.Column
		}
	}
	if id := c.RowID(); id != "" {
		line.Of.Text = id
		row := s.set.Find(id)
		switch {
		case row != nil:
			line.Of.Href = s.at(s.placeOf(row))
		case s.retiredID(id):
			line.Of.Href = s.at(rowAddress(id))
		}
	}
	return line
}

func (s *site) retiredID(id string) bool {
	for _, r := range s.set.Retired {
		if r.ID == id {
			return true
		}
	}
	return false
}

// recordedCell reads a figure or a range out of what was recorded, so that it is shown in both
// units; anything else stays the text it is.
func (s *site) recordedCell(text string) templates.Cell {
	cell := templates.Cell{Text: text}
	if i := strings.LastIndexByte(text, ' '); i > 0 {
		var v tables.Value
		least, greatest, ranged := strings.Cut(text[:i], "-")
		unit := tables.Unit(text[i+1:])
		var err error
		if v.Quantity, err = tables.ParseQuantity(least, unit); err == nil && ranged {
			v.To, err = tables.ParseQuantity(greatest, unit)
		}
		if err == nil && unit != tables.NoUnit {
			cell.Text, cell.Converted = s.figures(text), s.figures(v.Converted())
		}
	}
	return cell
}

// historyOf lists what changed in a row, newest first, also under the names it had.
func (s *site) historyOf(row *tables.Row) []templates.RowChange {
	names := map[string]bool{row.ID: true}
	var out []templates.RowChange
	for _, r := range s.set.History {
		for _, c := range r.Changes {
			if !names[c.RowID()] {
				continue
			}
			if c.What == "renamed" {
				names[c.Old] = true
			}
			out = append(out, templates.RowChange{
				Release: templates.Link{Href: s.at(changesAddress) + "#" + releaseID(r), Text: r.Date}, Line: s.recordedLine(c)})
		}
	}
	return out
}
