package compare

import (
	"slices"
	"strings"

	"capspan/tables"
)

// exact finds a row by its id as it is written: an id that changed its capitals is
// another one in print, though its address is the same.
func exact(set *tables.Set, id string) *tables.Row {
	if row := set.Find(id); row != nil && row.ID == id {
		return row
	}
	return nil
}

func retiredEntry(set *tables.Set, id string) *tables.Retired {
	for i := range set.Retired {
		if set.Retired[i].ID == id {
			return &set.Retired[i]
		}
	}
	return nil
}

// pairRenamed finds rows that live on under another id: retired.yaml leads from the old
// id to a row that is new; or, where it is silent, the one new row of the same table that
// says just the same. Two old rows never become one by this: that is a merger.
func (d *Diff) pairRenamed() {
	taken := map[string]bool{}
	silent := map[string][]*tables.Row{} // new rows by what they say
	for _, t := range d.newer.Tables {
		for _, row := range t.Rows {
			if exact(d.older, row.ID) == nil {
				key := t.ID + "\x00" + content(row)
				silent[key] = append(silent[key], row)
			}
		}
	}
	for _, byEntry := range []bool{true, false} {
		for _, t := range d.older.Tables {
			for _, row := range t.Rows {
				if exact(d.newer, row.ID) != nil || d.renamed[row.ID] != "" {
					continue
				}
				to := ""
				entry := retiredEntry(d.newer, row.ID)
				switch {
				case byEntry && entry != nil && len(entry.To) == 1 && exact(d.older, entry.To[0]) == nil:
					to = entry.To[0]
				case !byEntry && entry == nil && len(silent[t.ID+"\x00"+content(row)]) == 1:
					to = silent[t.ID+"\x00"+content(row)][0].ID
				}
				if to != "" && !taken[to] {
					d.renamed[row.ID], taken[to] = to, true
				}
			}
		}
	}
}

// content is all that a row says but its id.
func content(row *tables.Row) string {
	var b strings.Builder
	for _, c := range row.Table.Columns {
		b.WriteString(evidence(row.Values[c.ID]) + "\x00")
	}
	for _, e := range row.Ends {
		if e.Like != nil {
			b.WriteString("like " + e.Like.ID + "\x00")
		}
	}
	return b.String()
}

// rows compares the rows of one table: old rows in their order, then those that are new.
func (d *Diff) rows(older, newer *tables.Table) {
	came := map[string]bool{}
	for _, row := range older.Rows {
		now := exact(d.newer, row.ID)
		if id := d.renamed[row.ID]; id != "" {
			now = exact(d.newer, id)
		}
		switch {
		case now == nil || now.Table.ID != newer.ID:
			d.gone(row)
			continue
		case now.ID != row.ID:
			d.gone(row)
		}
		came[now.ID] = true
		d.row(row, now)
	}
	for _, row := range newer.Rows {
		if !came[row.ID] {
			d.newRow(row)
		}
	}
}

// gone is a row that is no longer where it was.
func (d *Diff) gone(row *tables.Row) {
	c := Change{Kind: Retired, Table: row.Table.ID, Row: row.ID, Bump: Major}
	if entry := retiredEntry(d.newer, row.ID); entry != nil {
		c.To, c.Why = entry.To, entry.Why
	}
	if to := d.renamed[row.ID]; to != "" {
		if now := exact(d.newer, to); now != nil && now.Table.ID == row.Table.ID {
			c.Kind, c.To = Renamed, []string{to}
		}
	} else if now := exact(d.newer, row.ID); now != nil {
		c.To = []string{now.Ref()} // another table has it now: its address stays
	}
	if c.Kind == Retired {
		c.Parts = said(row, func(s Said) Part { return Part{What: "value", Old: s} })
	}
	d.add(c)
}

func (d *Diff) newRow(row *tables.Row) {
	d.add(Change{Kind: Added, Table: row.Table.ID, Row: row.ID, Bump: Minor,
		Parts: said(row, func(s Said) Part { return Part{What: "value", New: s} })})
}

// said tells a whole row: what it is in its columns, or whose ends it has.
func said(row *tables.Row, part func(Said) Part) []Part {
	var out []Part
	for _, c := range row.Table.Columns {
		if v, own := row.Values[c.ID]; own {
			p := part(figure(v))
			p.What = c.ID
			out = append(out, p)
		}
	}
	if text := likes(row); text != "" {
		p := part(Said{Text: text})
		p.What = "ends"
		out = append(out, p)
	}
	p := part(Said{Text: string(row.Basis)})
	p.What = "basis"
	return append(out, p)
}

// row compares a row with itself: its own words first, then cell by cell.
func (d *Diff) row(older, newer *tables.Row) {
	if d.sayTheSame(older, newer) {
		return
	}
	var own parts
	own.text("also", strings.Join(older.Also, ", "), strings.Join(newer.Also, ", "))
	own.text("ends", d.likesNow(older), likes(newer))
	was, is := d.twinsNow(older), twins(newer)
	if own.text("order of twins", strings.Join(was, ", "), strings.Join(is, ", ")); !slices.Equal(sorted(was), sorted(is)) {
		own[len(own)-1].What = "twins"
	}
	ownBasis := len(older.Values) == 0 || len(newer.Values) == 0 || likes(older) != "" || likes(newer) != ""
	if ownBasis { // else it is the weakest of its values, which are compared below
		own.text("basis", string(older.Basis), string(newer.Basis))
		own.text("source", sources(older.Sources), sources(newer.Sources))
		own.text("at", older.At, newer.At)
	}
	own.text("note", older.Note, newer.Note)
	if len(own) > 0 {
		c := Change{Kind: Changed, Table: newer.Table.ID, Row: newer.ID, Parts: own, Bump: Patch}
		if own.has("ends", "twins") { // both say which size it is
			c.Bump = Minor
		}
		if ownBasis && raised(older.Basis, newer.Basis) && len(newer.Sources) == 0 {
			c.Calls = append(c.Calls, BasisUnsourced)
		}
		d.add(c)
	}
	for _, column := range newer.Table.Columns {
		v, was := older.Values[column.ID]
		w, is := newer.Values[column.ID]
		_, declared := older.Table.Column(column.ID)
		if !was && !is || !declared {
			continue // a new column is told once, not for each row
		}
		if c := cell(v, w, was, is); len(c.Parts) > 0 {
			c.Kind, c.Table, c.Row, c.Column = Changed, newer.Table.ID, newer.ID, column.ID
			d.add(c)
		}
	}
}

func likes(row *tables.Row) string {
	var ids []string
	for _, e := range row.Ends {
		if e.Like != nil {
			ids = append(ids, e.Like.ID)
		}
	}
	return strings.Join(ids, " and ")
}

// likesNow is [likes] with the names of today: a renamed row is no change of those that
// name it.
func (d *Diff) likesNow(row *tables.Row) string {
	var ids []string
	for _, e := range row.Ends {
		if e.Like != nil {
			ids = append(ids, d.NowCalled(e.Like.ID))
		}
	}
	return strings.Join(ids, " and ")
}

// NowCalled is what a row of the older chart is called in the newer.
func (d *Diff) NowCalled(id string) string {
	if to := d.renamed[id]; to != "" {
		return to
	}
	return id
}

func twins(row *tables.Row) []string {
	var ids []string
	for _, t := range row.Twins {
		ids = append(ids, t.ID)
	}
	return ids
}

func (d *Diff) twinsNow(row *tables.Row) []string {
	var ids []string
	for _, t := range row.Twins {
		ids = append(ids, d.NowCalled(t.ID))
	}
	return ids
}

func sorted(ids []string) []string { return slices.Sorted(slices.Values(ids)) }
