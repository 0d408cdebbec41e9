// Package compare says what changed in meaning between two issues of the chart: not
// which lines differ, but which rows, figures, reasons and sources do. It reads two
// loaded sets ([Sets]) and knows no disk, no git and no matcher.
//
// A [Diff] is a list of [Change]s in the chart's order; each belongs to a table, a row
// or a cell and holds [Part]s, old and new. [Diff.Groups] puts equal parts together,
// [Diff.Problems] judges the tables' versions and the ids that went, [Shifts] says what
// the change does to sizes and to conversion joints, [Diff.Release] makes the entry for
// the history. text.go and markdown.go put it into words.
//
// One invariant: a diff is empty exactly when both charts have the same hash, because
// both rest on what [tables.Set] says, never on comments, order of keys or spacing.
package compare

import (
	"capspan/tables"
)

// Bump is the step a table's version must make, from none to greatest.
type Bump int

const (
	NoBump Bump = iota
	Patch       // a source, a wording, a status
	Minor       // a value corrected; a row or a column added
	Major       // a row retired; a meaning or a unit changed
)

// String is the step's word.
func (b Bump) String() string { return [...]string{"none", "patch", "minor", "major"}[b] }

// MarshalText writes the word.
func (b Bump) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// Kind says what happened to a table, a row or a cell.
type Kind string

const (
	Added   Kind = "added"
	Retired Kind = "retired" // no longer in the chart
	Renamed Kind = "renamed" // the same row under another id
	Changed Kind = "changed"
)

// Call is something a keeper must look at before merging.
type Call string

const (
	SourceUnchanged Call = "value changed, source unchanged"
	BasisUnsourced  Call = "basis raised without a source"
)

// Said is one side of a part. Converted is empty where there is nothing to convert.
type Said struct {
	Text      string `json:"text"`
	Converted string `json:"converted,omitempty"`
}

// Part is one thing of a change: the value, its basis, its source ...
type Part struct {
	What string `json:"what"` // value, faces, basis, source, at, others, note, title ...
	Old  Said   `json:"old"`
	New  Said   `json:"new"`
}

// Change is what happened to one table, row or cell.
type Change struct {
	Kind   Kind     `json:"kind"`
	Table  string   `json:"table,omitempty"`  // empty for the registry and the retired ids
	Row    string   `json:"row,omitempty"`    // its id; the old one when it is retired or renamed
	Column string   `json:"column,omitempty"` // of a cell, or of a declaration
	To     []string `json:"to,omitempty"`     // where a row went
	Why    string   `json:"why,omitempty"`    // as retired.yaml says
	Parts  []Part   `json:"parts,omitempty"`
	Calls  []Call   `json:"calls,omitempty"`
	Bump   Bump     `json:"bump"`
}

// Path names what changed as the problems do: table/row.column.
func (c Change) Path() string {
	path := c.Table
	if c.Row != "" {
		if path != "" {
			path += "/"
		}
		path += c.Row
	}
	switch {
	case c.Column == "":
		return path
	case c.Row == "":
		return path + ".columns." + c.Column
	}
	return path + "." + c.Column
}

// Step is what one table's version did and what it had to do.
type Step struct {
	Table    string `json:"table"`
	Old      string `json:"old,omitempty"` // empty for a table that is new
	New      string `json:"new,omitempty"` // empty for one that is gone
	Needs    Bump   `json:"needs"`
	AtLeast  string `json:"atLeast,omitempty"` // the lowest version that is high enough
	Enough   bool   `json:"enough"`
	position *tables.Table
}

// Diff is the difference in meaning between two charts.
type Diff struct {
	Old     string   `json:"old"` // the charts' names
	New     string   `json:"new"`
	Changes []Change `json:"changes"`
	Steps   []Step   `json:"versions"` // of tables whose meaning or version changed
	Form    []string `json:"formatting"`

	older, newer *tables.Set
	renamed      map[string]string // old id to new id
}

// Empty reports that nothing changed in meaning.
func (d *Diff) Empty() bool { return len(d.Changes) == 0 }

// Sets compares two charts that loaded without errors.
func Sets(older, newer *tables.Set) *Diff {
	d := &Diff{Old: older.Version().Name(), New: newer.Version().Name(), Changes: []Change{}, Steps: []Step{}, Form: []string{},
		older: older, newer: newer, renamed: map[string]string{}}
	d.pairRenamed()
	for _, t := range newer.Tables {
		before := tableOf(older, t.ID)
		if before == nil {
			d.add(Change{Kind: Added, Table: t.ID, Parts: []Part{{What: "title", New: Said{Text: t.Title}}}, Bump: Minor})
			for _, row := range t.Rows {
				d.newRow(row)
			}
			continue
		}
		d.heads(before, t)
		d.rows(before, t)
	}
	for _, t := range older.Tables {
		if tableOf(newer, t.ID) != nil {
			continue
		}
		d.add(Change{Kind: Retired, Table: t.ID, Parts: []Part{{What: "title", Old: Said{Text: t.Title}}}, Bump: Major})
		for _, row := range t.Rows {
			d.gone(row)
		}
	}
	d.order()
	d.registry()
	d.retiredEntries()
	d.steps()
	return d
}

func (d *Diff) add(c Change) { d.Changes = append(d.Changes, c) }

func tableOf(set *tables.Set, id string) *tables.Table {
	for _, t := range set.Tables {
		if t.ID == id {
			return t
		}
	}
	return nil
}

// parts gathers what differs.
type parts []Part

// text adds a part when both sides differ.
func (p *parts) text(what, old, new string) {
	if old != new {
		*p = append(*p, Part{What: what, Old: Said{Text: old}, New: Said{Text: new}})
	}
}

// has reports whether one of the parts is about one of these.
func (p parts) has(what ...string) bool {
	for _, part := range p {
		for _, w := range what {
			if part.What == w {
				return true
			}
		}
	}
	return false
}
