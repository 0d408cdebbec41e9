package compare

import (
	"fmt"
	"slices"
	"strings"

	"capspan/tables"
)

// heads compares what two issues of a table say before their rows.
func (d *Diff) heads(older, newer *tables.Table) {
	var own parts
	own.text("title", older.Title, newer.Title)
	own.text("about", older.About, newer.About)
	own.text("unit", string(older.Unit), string(newer.Unit))
	own.text("cautions", strings.Join(older.Cautions, " "), strings.Join(newer.Cautions, " "))
	if len(own) > 0 {
		d.add(Change{Kind: Changed, Table: newer.ID, Parts: own, Bump: grave(own)})
	}
	for _, c := range newer.Columns {
		before, there := older.Column(c.ID)
		if !there {
			d.add(Change{Kind: Added, Table: newer.ID, Column: c.ID, Parts: []Part{{What: "label", New: Said{Text: c.Label}}}, Bump: Minor})
			continue
		}
		var p parts
		p.text("label", before.Label, c.Label)
		p.text("kind", string(before.Kind), string(c.Kind))
		p.text("unit", string(before.Unit), string(c.Unit))
		p.text("range", ranges[before.Range], ranges[c.Range])
		p.text("least", before.Least.Text, c.Least.Text)
		p.text("greatest", before.Greatest.Text, c.Greatest.Text)
		p.text("method", before.Method, c.Method)
		p.text("match", string(before.Match), string(c.Match))
		p.text("below", before.Below.Text, c.Below.Text)
		if len(p) > 0 {
			d.add(Change{Kind: Changed, Table: newer.ID, Column: c.ID, Parts: p, Bump: grave(p)})
		}
	}
	for _, c := range older.Columns {
		if _, there := newer.Column(c.ID); !there {
			d.add(Change{Kind: Retired, Table: newer.ID, Column: c.ID, Parts: []Part{{What: "label", Old: Said{Text: c.Label}}}, Bump: Major})
		}
	}
}

// ranges is what a declaration says of ranges.
var ranges = map[bool]string{true: "true"}

// grave is the bump of a change of a head: a kind or a unit changes what every figure means,
// how a column is matched what readings lead to.
func grave(p parts) Bump {
	switch {
	case p.has("kind", "unit"):
		return Major
	case p.has("match", "below"):
		return Minor
	}
	return Patch
}

// order tells rows and columns that only changed places: no value changed, but pages
// and exports show another order.
func (d *Diff) order() {
	for _, t := range d.newer.Tables {
		before := tableOf(d.older, t.ID)
		if before == nil {
			continue
		}
		var was, is, columns, columnsNow []string
		for _, row := range before.Rows {
			was = append(was, d.NowCalled(row.ID))
		}
		for _, row := range t.Rows {
			is = append(is, row.ID)
		}
		for _, c := range before.Columns {
			columns = append(columns, c.ID)
		}
		for _, c := range t.Columns {
			columnsNow = append(columnsNow, c.ID)
		}
		if moved(was, is) {
			d.add(Change{Kind: Changed, Table: t.ID, Parts: []Part{{What: "order of rows"}}, Bump: Patch})
		}
		if moved(columns, columnsNow) {
			d.add(Change{Kind: Changed, Table: t.ID, Parts: []Part{{What: "order of columns", Old: Said{Text: strings.Join(columns, ", ")},
				New: Said{Text: strings.Join(columnsNow, ", ")}}}, Bump: Patch})
		}
	}
}

// moved reports whether those that both lists have stand in another order.
func moved(was, is []string) bool {
	inBoth := func(list, other []string) []string {
		has := make(map[string]bool, len(other))
		for _, id := range other {
			has[id] = true
		}
		return slices.DeleteFunc(slices.Clone(list), func(id string) bool { return !has[id] })
	}
	return !slices.Equal(inBoth(was, is), inBoth(is, was))
}

// registry compares the sources: they belong to no table, and no version rises with them.
func (d *Diff) registry() {
	find := func(list []*tables.Source, id string) *tables.Source {
		if i := slices.IndexFunc(list, func(s *tables.Source) bool { return s.ID == id }); i >= 0 {
			return list[i]
		}
		return nil
	}
	var was, is []string
	for _, s := range d.older.Sources {
		was = append(was, s.ID)
	}
	for _, s := range d.newer.Sources {
		is = append(is, s.ID)
		before := find(d.older.Sources, s.ID)
		if before == nil {
			d.add(Change{Kind: Added, Row: "sources/" + s.ID, Parts: []Part{{What: "title", New: Said{Text: s.Title}}}})
			continue
		}
		var p parts
		p.text("kind", before.Kind, s.Kind)
		p.text("title", before.Title, s.Title)
		p.text("publisher", before.Publisher, s.Publisher)
		p.text("edition", before.Edition, s.Edition)
		p.text("date", before.Date, s.Date)
		p.text("where", before.Where, s.Where)
		p.text("trust", before.Trust, s.Trust)
		if len(p) > 0 {
			d.add(Change{Kind: Changed, Row: "sources/" + s.ID, Parts: p})
		}
	}
	for _, s := range d.older.Sources {
		if find(d.newer.Sources, s.ID) == nil {
			d.add(Change{Kind: Retired, Row: "sources/" + s.ID, Parts: []Part{{What: "title", Old: Said{Text: s.Title}}}})
		}
	}
	if moved(was, is) {
		d.add(Change{Kind: Changed, Row: "sources", Parts: []Part{{What: "order of entries"}}})
	}
}

// retiredEntries tells entries of retired.yaml that do not come with a row that went in
// the same change: that is told with the row.
func (d *Diff) retiredEntries() {
	say := func(r tables.Retired) string {
		if len(r.To) == 0 {
			return "withdrawn: " + r.Why
		}
		return fmt.Sprintf("to %s: %s", strings.Join(r.To, ", "), r.Why)
	}
	var was, is []string
	for _, r := range d.older.Retired {
		was = append(was, r.ID)
		if retiredEntry(d.newer, r.ID) == nil {
			d.add(Change{Kind: Retired, Row: "retired/" + r.ID, Parts: []Part{{What: "entry", Old: Said{Text: say(r)}}}})
		}
	}
	for _, r := range d.newer.Retired {
		is = append(is, r.ID)
		before := retiredEntry(d.older, r.ID)
		switch {
		case before == nil && exact(d.older, r.ID) != nil: // told with its row
		case before == nil:
			d.add(Change{Kind: Added, Row: "retired/" + r.ID, Parts: []Part{{What: "entry", New: Said{Text: say(r)}}}})
		case say(*before) != say(r):
			d.add(Change{Kind: Changed, Row: "retired/" + r.ID, Parts: []Part{{What: "entry", Old: Said{Text: say(*before)}, New: Said{Text: say(r)}}}})
		}
	}
	if moved(was, is) {
		d.add(Change{Kind: Changed, Row: "retired", Parts: []Part{{What: "order of entries"}}})
	}
}
