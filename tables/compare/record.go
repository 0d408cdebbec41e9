package compare

import (
	"strings"
	"unicode/utf8"

	"capspan/tables"
)

// longestText is what the loader reads of one text.
const longestText = 400

// Release is the entry for the history: every change in its own line, as it was printed.
// Places that rows or columns took are left out; nobody looks for them later.
func (d *Diff) Release(why string) tables.Release {
	version := d.newer.Version()
	r := tables.Release{Chart: version.Name(), From: d.older.Version().Name(), Date: version.Date, Why: why, Tables: []string{}}
	for _, s := range d.Steps {
		if s.New != "" && s.New != s.Old {
			r.Tables = append(r.Tables, s.Table+" "+s.New)
		}
	}
	for _, c := range d.Changes {
		of := strings.TrimSuffix(c.Path(), "."+c.Column)
		line := tables.Recorded{Of: of, Column: c.Column, What: string(c.Kind), Why: short(c.Why)}
		if c.Row == "" && c.Column != "" {
			line.Of = c.Table
		}
		switch {
		case c.Kind == Renamed:
			line.Of, line.Old, line.New = c.Table+"/"+c.To[0], c.Row, c.To[0]
			r.Changes = append(r.Changes, line)
		case c.Kind == Added || c.Kind == Retired:
			line.Old, line.New = told(c.Parts, true), told(c.Parts, false)
			if c.Kind == Retired && len(c.To) > 0 {
				line.New = strings.Join(c.To, ", ")
			}
			r.Changes = append(r.Changes, line)
		default:
			for _, p := range c.Parts {
				if strings.HasPrefix(p.What, "order of ") {
					continue
				}
				line.What, line.Old, line.New = p.What, short(p.Old.Text), short(p.New.Text)
				r.Changes = append(r.Changes, line)
			}
		}
	}
	return r
}

// told is one side of a whole row, without the words for it.
func told(all []Part, old bool) string {
	var words []string
	for _, p := range all {
		side := p.New
		if old {
			side = p.Old
		}
		if side.Text != "" {
			words = append(words, p.What+" "+side.Text)
		}
	}
	return short(strings.Join(words, "; "))
}

// short cuts a text that the loader would refuse.
func short(text string) string {
	if utf8.RuneCountInString(text) <= longestText {
		return text
	}
	return string([]rune(text)[:longestText-1]) + "…"
}
