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
	for _, r := range set.History {
		issue := matcher.Issue{Chart: r.Chart, From: r.From, Date: r.Date, Why: r.Why, Changes: []matcher.IssuedChange{}}
		for _, c := range r.Changes {
			issue.Changes = append(issue.Changes, matcher.IssuedChange{Of: c.Of, Column: c.Column, What: c.What,
				Old: c.Old, New: c.New, Why: c.Why, Rows: bearsOn(set, c.RowID())})
		}
		record.Issues = append(record.Issues, issue)
	}
	return record
}

// bearsOn lists the rows of today that a change of a row bears on: the row, or what took its
// place when it was renamed, split or retired; and the conversion joints whose ends are like it.
func bearsOn(set *tables.Set, id string) []string {
	refs := []string{}
	if id == "" {
		return refs
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
