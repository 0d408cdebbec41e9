package build

import (
	"bytes"
	"encoding/json"
	"fmt"

	"capspan/build/diag"
	"capspan/tables"
)

// exportData writes the open tables under /data/: one CSV and one JSON a table, and
// the whole chart with its sources as one JSON.
func (s *site) exportData() diag.List {
	var problems diag.List
	fail := func(t *tables.Table, err error) {
		problems.Add(diag.Problem{Pos: t.Pos, Path: t.ID, Rule: "bad-export", Fact: fmt.Sprintf("table cannot be exported: %v", err)})
	}
	for _, t := range s.set.Tables {
		var csv, doc bytes.Buffer
		if err := tables.WriteCSV(&csv, t); err != nil {
			fail(t, err)
		}
		if err := tables.WriteJSON(&doc, t); err != nil {
			fail(t, err)
		}
		s.add("data/"+t.ID+".csv", csv.Bytes(), Pages)
		s.add("data/"+t.ID+".json", doc.Bytes(), Pages)
	}
	var whole bytes.Buffer
	if err := tables.WriteChartJSON(&whole, s.set); err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "tables"}, Rule: "bad-export", Fact: fmt.Sprintf("the chart cannot be exported: %v", err)})
	}
	// No table can take this name: an id has no underscore.
	s.add("data/whole_chart.json", whole.Bytes(), Pages)
	return problems
}

// chartJSON is the chart as the browser's core reads it.
func (s *site) chartJSON() []byte {
	b, err := json.Marshal(Chart(s.set))
	if err != nil {
		panic("internal error: " + err.Error()) // strings and numbers only
	}
	return b
}
