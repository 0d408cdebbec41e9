package build

import (
	"encoding/json"
	"slices"

	"capspan/static/matcher"
	"capspan/tables"
)

// recordName is where a page finds the record of changes when a link was made with another
// chart than its own.
const recordName = "changes/history.json"

// addRecord writes it.
func (s *site) addRecord() {
	text, err := json.Marshal(Record(s.set))
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	s.add(recordName, text, Pages)
}

// Record is the history of the tables with, beside each change, the rows of today that it
// bears on.
func Record(set *tables.Set) matcher.Record {
	record := matcher.Record{Format: 1, Chart: set.Version().Name(), Issues: []matcher.Issue{}}
	now := map[string]string{} // what an id was called later, by what it was called before
	for _, r := range set.History {
		issue := matcher.Issue{Chart: r.Chart, From: r.From, Date: r.Date, Why: r.Why, Changes: []matcher.IssuedChange{}}
		for _, c := range r.Changes {
			if c.What == "renamed" {
				now[c.Old] = c.New
			}
		}
		for _, c := range r.Changes {
			issue.Changes = append(issue.Changes, matcher.IssuedChange{Of: c.Of, Column: c.Column, What: c.What,
				Old: c.Old, New: c.New, Why: c.Why, Rows: bearsOn(set, c.RowID(), now)})
		}
		record.Issues = append(record.Issues, issue)
	}
	return record
}

// bearsOn lists the rows of today that a change of a row bears on: the row, under the name
// it has now, or what took its place; and the conversion joints whose ends are like it.
func bearsOn(set *tables.Set, id string, now map[string]string) []string {
	refs := []string{}
	if id == "" {
		return refs
	}
	for range len(now) {
		if later, renamed := now[id]; renamed {
			id = later
		}
	}
	rows := []*tables.Row{set.Find(id)}
	for _, r := range set.Retired {
		if rows[0] == nil && r.ID == id {
			for _, to := range r.To {
				rows = append(rows, set.Find(to))
			}
		}
	}
	for _, row := range rows {
		if row == nil {
			continue
		}
		refs = append(refs, row.Ref())
		for _, conversion := range set.Conversions(row) {
			if !slices.Contains(refs, conversion.Ref()) && slices.ContainsFunc(conversion.Ends, func(e tables.End) bool { return e.Like == row }) {
				refs = append(refs, conversion.Ref())
			}
		}
	}
	return refs
}
